import { characteristics, type Registry } from '../characteristics/registry.ts';
import { findingKinds } from '../checks/catalogue.ts';
import { type EngineReport, type ReportedSession, reportEngine } from '../checks/report.ts';
import type { Row } from '../checks/row.ts';
import { DOCUMENT_CODES } from '../diagnostic/catalogue.ts';
import type { DocumentCode } from '../diagnostic/diagnostic.ts';
import { didYouMean } from '../diagnostic/suggestion.ts';
import { findPosition, WHOLE_ENGINE } from '../documents/layout.ts';
import { characteristicText } from '../output/explainCharacteristic.ts';
import { documentCodeText, findingKindText } from '../output/explainCode.ts';
import { valueText } from '../output/explainValue.ts';
import { revisionText } from '../output/revision.ts';
import { textStyle } from '../shell/terminal.ts';
import type { World } from '../shell/world.ts';
import { sessionNamed } from './chooseSessions.ts';
import { openEngine } from './shopAt.ts';
import { UsageError } from './usage.ts';

export interface ExplainOptions {
  readonly session?: string | undefined;
  /** A revision whose documents are read instead of those on disk. */
  readonly at?: string | undefined;
}

/** Explains a finding code, a characteristic, or one value of an engine; the exit code. */
export function explain(words: readonly string[], options: ExplainOptions, world: World): number {
  const [first = '', measure, position = WHOLE_ENGINE] = words;
  return measure === undefined
    ? explainName(first, world)
    : explainValue(first, measure, position, options, world);
}

function explainName(name: string, world: World): number {
  const style = textStyle(world.out, world.environment, true);
  const kind = findingKinds.find(({ code }) => code === name);
  const code = name.replace(/^document\//, '');
  const characteristic = characteristics.find(({ id }) => id === name);
  if (kind !== undefined) world.out.write(findingKindText(kind, style));
  else if (characteristic !== undefined) world.out.write(characteristicText(characteristic, style));
  else if (isDocumentCode(code)) world.out.write(documentCodeText(code, style));
  else
    throw new UsageError(
      `nothing is known as ${name}`,
      didYouMean(name, knownNames()) ?? 'name a finding code or a characteristic',
    );
  return 0;
}

const isDocumentCode = (code: string): code is DocumentCode => Object.hasOwn(DOCUMENT_CODES, code);

const knownNames = (): readonly string[] => [
  ...findingKinds.map(({ code }) => code),
  ...characteristics.map(({ id }) => id),
  ...Object.keys(DOCUMENT_CODES).map((code) => `document/${code}`),
];

function explainValue(
  engine: string,
  measure: string,
  position: string,
  { session, at }: ExplainOptions,
  world: World,
): number {
  const opened = openEngine(engine, world, at);
  const report = reportEngine(opened.engine, opened.registry, {});
  const { row, of } = rowOf(report, opened.registry, measure, position, session);
  const style = textStyle(world.out, world.environment, true);
  if (opened.revision !== undefined) world.out.write(`${revisionText(opened.revision, style)}\n`);
  world.out.write(valueText(row, of, report, style));
  return opened.hasProblems ? 2 : 0;
}

/** In the session named, else in the latest that measured it there. */
function rowOf(
  report: EngineReport,
  registry: Registry,
  measure: string,
  position: string,
  session: string | undefined,
): { readonly row: Row; readonly of: ReportedSession } {
  const characteristic = registry.find(measure);
  if (characteristic === undefined) {
    throw new UsageError(`nothing is known as ${measure}`, didYouMean(measure, registry.ids()));
  }
  const at = findPosition(report.engine.document.layout, characteristic.family, position);
  const sessions = session === undefined ? report.sessions : sessionNamed(session, report.sessions);
  for (const of of sessions.toReversed()) {
    const row = of.rows.find((each) => each.characteristic.id === measure && each.position === at);
    if (row !== undefined) return { row, of };
  }
  const where = session === undefined ? 'any session' : `the session ${session}`;
  throw new UsageError(
    `${measure} at ${position} is not in ${where}`,
    'tenths check shows what was measured',
  );
}
