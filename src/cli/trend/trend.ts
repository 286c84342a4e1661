import { unitOfRow } from '../../checks/judge/session.ts';
import { measuredSession } from '../../checks/value/measured.ts';
import { withPast } from '../../compare/past.ts';
import { type Trend, trendOf } from '../../compare/trend.ts';
import type { World } from '../../shell/world.ts';
import { measureNamed } from '../shop/measureNamed.ts';
import { howToGet } from '../shop/notMeasuredAt.ts';
import { type OpenedEngine, openEngine } from '../shop/resolveShop.ts';
import { readSubject } from '../shop/subjectWords.ts';
import { UsageError } from '../usage.ts';
import { onlyAt } from './onlyAt.ts';
import { trendOfPart } from './partTrend.ts';
import { printTrend } from './printTrend.ts';
import { statesBefore } from './statesBefore.ts';
import type { TrendOptions } from './trendOptions.ts';

/** Prints one characteristic across the sessions of an engine; the exit code. */
export async function trend(
  measure: string,
  words: readonly string[],
  options: TrendOptions,
  world: World,
): Promise<number> {
  const { part } = options;
  if (part !== undefined) return trendOfPart(measure, words, { ...options, part }, world);
  const subject = readSubject(measure, words, options, world);
  const opened = openEngine(subject.engine, world, options.at);
  const { engine, revision } = opened;
  const found = onlyAt(trendIn(measure, opened, options, world), subject.position, engine);
  const unitFor = (row: Parameters<typeof unitOfRow>[0]) => unitOfRow(row, engine);
  const exit = opened.hasProblems ? 2 : 0;
  const { name } = engine.document;
  const unknown = new Set(
    engine.sessions.flatMap(({ partChanges }) =>
      partChanges.flatMap(({ name, parts }) => (parts.length === 0 ? [name] : [])),
    ),
  );
  const about = { folder: engine.folder, name, part: undefined };
  await printTrend(
    { name, about, found, unknown: [...unknown], revision, exit, unitFor },
    options.format,
    world,
  );
  return exit;
}

function trendIn(
  measure: string,
  opened: OpenedEngine,
  { by, history = false }: TrendOptions,
  world: World,
): Trend {
  const { engine, registry } = opened;
  const characteristic = measureNamed(measure, registry);
  if (characteristic.quantity === 'pass or fail') {
    const message = `${measure} is a test: it is passed or failed, and has no trend`;
    throw new UsageError(message, 'tenths diff A B shows what passed before and fails now');
  }
  const present = engine.sessions.map((session) => measuredSession(engine, registry, session));
  const { sessions, past } = withPast(
    present,
    history ? statesBefore(opened.found, opened.revision, world) : [],
    characteristic.id,
  );
  const found = trendOf({ engine, sessions }, registry, characteristic, by, past);
  if (found.lines.length > 0) return found;
  const help =
    by === 'hours' ? 'write `hours:` in the sessions, or take --by date' : howToGet(characteristic);
  throw new UsageError(`${measure} has no readings to follow in ${engine.document.name}`, help);
}
