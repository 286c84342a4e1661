import { planSession } from '../../bench/plan.ts';
import { keyOf, pointsOfPlan } from '../../bench/points.ts';
import type { RecordStart } from '../../bench/record/journalText.ts';
import { openBlocks } from '../../bench/record/openPlaces.ts';
import { schemaPath } from '../../bench/scaffold/madeFile.ts';
import type { SessionHead } from '../../bench/sessionText.ts';
import { openDocument } from '../../documents/opened.ts';
import { pointsOf } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { STAGES, type Stage } from '../../documents/session/stage.ts';
import { workTree } from '../../shell/discover/store.ts';
import type { World } from '../../shell/world.ts';
import { unfinishedEntries } from '../../shell/write/journal.ts';
import { documentsNamed } from '../check/chooseSessions.ts';
import { checkedDate, knownMeasures } from '../new/new.ts';
import { UsageError } from '../usage.ts';
import { type BenchEngine, inEngine } from './benchEngine.ts';

export interface TargetOptions {
  readonly session?: string;
  readonly stage?: Stage;
  readonly date?: string;
  readonly by?: string;
  readonly measure?: readonly string[];
}

/** The session that readings go into: its name, without ending, and what stands there now. */
export interface RecordTarget {
  readonly name: string;
  /** Relative to the root. */
  readonly path: string;
  readonly existing: SessionDocument | undefined;
}

/** Named; else the one that an entry was cut off in; else the one of the day, which is made where there is none. */
export function recordTarget(opened: BenchEngine, options: TargetOptions, world: World): RecordTarget {
  const name = options.session ?? cutOff(opened, options) ?? nameOfDay(opened, options, world);
  const { sessions } = opened.engine;
  const [existing] =
    options.session === undefined
      ? sessions.filter((each) => each.name === name)
      : documentsNamed(name, sessions);
  if (options.session !== undefined && existing === undefined) {
    const names = opened.engine.sessions.map((each) => each.name).join(', ');
    throw new UsageError(
      `there is no session ${name}`,
      names === '' ? 'make one with --stage' : `it has ${names}`,
    );
  }
  if (existing === undefined) return { name, path: inEngine(opened, `sessions/${name}.yaml`), existing };
  return { name: existing.name, path: pathOf(existing, opened, world), existing };
}

function pathOf(session: SessionDocument, { root, folder }: BenchEngine, world: World): string {
  const store = workTree(root, world.workingDirectory);
  const found = store.list([folder]).find((path) => store.shown(path) === session.path);
  if (found === undefined) throw new Error(`${session.path} was read and is not listed`);
  return found;
}

/** The session of an unfinished entry, unless a call says which one it wants. */
function cutOff(opened: BenchEngine, options: TargetOptions): string | undefined {
  if (options.stage !== undefined) return undefined;
  const names = unfinishedEntries(opened.root, inEngine(opened, 'sessions')).filter((each) =>
    isOfDay(each, options.date, opened),
  );
  if (names.length > 1) {
    throw new UsageError(`several entries were cut off: ${names.join(', ')}`, 'name one with --session');
  }
  return names[0];
}

/** Whether an unfinished entry is of the day that a call asks for: of an existing session its date, else its name says. */
function isOfDay(name: string, date: string | undefined, { engine }: BenchEngine): boolean {
  const existing = engine.sessions.find((each) => each.name === name);
  return date === undefined || (existing === undefined ? name.startsWith(date) : existing.date === date);
}

function nameOfDay(opened: BenchEngine, options: TargetOptions, world: World): string {
  const date = checkedDate(options.date, world);
  if (options.stage !== undefined) return `${date}-${options.stage}`;
  const ofDay = sessionsOfDay(opened, date);
  const [first, second] = ofDay;
  if (first === undefined) {
    throw new UsageError(
      `there is no session of ${date} yet`,
      `say what it is with --stage: ${STAGES.join(', ')}`,
    );
  }
  if (second === undefined) return first.name;
  throw new UsageError(
    `there are several sessions of ${date}: ${ofDay.map((each) => each.name).join(', ')}`,
    'name one with --session',
  );
}

const sessionsOfDay = ({ engine }: BenchEngine, date: string): readonly SessionDocument[] =>
  engine.sessions.filter((each) => each.date === date);

/** A session would have to be made, and nothing says of which stage. */
export const lacksStage = (opened: BenchEngine, options: TargetOptions, world: World): boolean =>
  options.stage === undefined &&
  options.session === undefined &&
  cutOff(opened, options) === undefined &&
  sessionsOfDay(opened, checkedDate(options.date, world)).length === 0;

/** What is to be measured: the open places of an existing session, then what the limits name and it lacks. */
export function recordStart(
  opened: BenchEngine,
  { path, existing }: RecordTarget,
  options: TargetOptions,
  world: World,
): RecordStart {
  const { engine, registry } = opened;
  const stage = existing?.stage ?? options.stage ?? 'service';
  const head: SessionHead = {
    stage,
    date: existing?.date ?? checkedDate(options.date, world),
    by: existing?.by ?? options.by,
    schema: schemaPath(inEngine(opened, 'sessions'), 'session'),
  };
  const plan = planSession(engine, registry, { stage, only: knownMeasures(options, opened) });
  const open = existing === undefined ? [] : openIn(path, existing, opened);
  const filled = open.flatMap((each) => each.places.map(({ point }) => point));
  const known = new Set([...filled.map(keyOf), ...takenIn(existing)]);
  const more = pointsOfPlan(plan).filter(
    (point) => !known.has(keyOf(point)) && !known.has(`${point.measure} ${point.position.key}`),
  );
  const ownBlocks = open.map((each) => each.block);
  const measures = new Set(ownBlocks.map((each) => each.measure));
  const blocks = [...ownBlocks, ...plan.blocks.filter((each) => !measures.has(each.measure))];
  const asked = knownMeasures(options, opened);
  return {
    record: 1,
    head,
    plan: { blocks },
    points: [...filled, ...more].filter((point) => asked === undefined || asked.includes(point.measure)),
    instruments: blocks.flatMap((each) =>
      each.instrument === undefined ? [] : [[each.measure, each.instrument] as const],
    ),
    zeros: open.flatMap((each) =>
      each.zero === undefined ? [] : [[each.block.measure, each.zero] as const],
    ),
  };
}

/** Positions that a session has a reading of, or a reason why it has none, need not be asked for. */
const takenIn = (session: SessionDocument | undefined): readonly string[] =>
  (session?.blocks ?? []).flatMap((block) =>
    block.positions
      .filter((each) => pointsOf(each).length > 0 || each.notes.length > 0)
      .map((each) => `${block.measure.id} ${each.position.key}`),
  );

function openIn(path: string, session: SessionDocument, { engine, registry, loaded }: BenchEngine) {
  const text = loaded.texts.get(session.path) ?? '';
  const { root } = openDocument(path, session.path, Buffer.from(text));
  return root === undefined ? [] : openBlocks(root, session, engine, registry);
}
