import type { Finding } from '../../checks/finding.ts';
import { type EngineReport, type StateReport, unitsFor } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { TorqueDocument } from '../../documents/tightening/torque.ts';
import { type Closing, closingOf } from '../../plan/closing/closing.ts';
import { planContext } from '../../plan/work/context.ts';
import { plural } from '../../quantity/words.ts';
import { measuredSentence } from '../plan/customerPage.ts';
import { outText } from '../plan/jobWords.ts';

/** What stands between an engine and its release; nothing where it may go. */
export interface OpenItems {
  readonly closing: Closing;
  /** What the check says and the page before closing up has no line for, such as a bearing that drags. */
  readonly reported: readonly Finding[];
  /** Documents that have problems: what they say was not judged. */
  readonly broken: readonly string[];
}

export function openItems(report: EngineReport, state: StateReport): OpenItems {
  const { engine, registry } = report;
  const closing = closingOf(planContext(engine, registry, state), report);
  const known = new Set<Finding>(closing.findings);
  const reported = state.findings.filter(
    (each) => each.severity !== 'remark' && !known.has(each) && !TOLD_BY_ROWS.includes(each.code),
  );
  return { closing, reported, broken: engine.notJudged };
}

const TOLD_BY_ROWS: readonly string[] = ['reading/out', 'reading/undecided', 'reading/missing', 'found/open'];

/** A sentence each, the gravest first. */
export function reasonTexts(open: OpenItems, report: EngineReport): readonly string[] {
  const { closing, reported, broken } = open;
  const unitFor = unitsFor(report.engine);
  return [
    ...broken.map((path) => `${path} has problems and was not judged`),
    ...reported.map(({ message }) => message),
    ...closing.rows.map((row) => `${outText(row, unitFor)}: ${row.judgement.verdict}`),
    ...closing.found.map(foundText),
    ...closing.findings.map(({ message }) => message),
    ...closing.untightened.map((each) => `${jointText(each)} is not tightened`),
    ...closing.unproven.map((row) => `${outText(row, unitFor)}: known by others' figures alone`),
    ...openBoxes(closing).map((what) => `not confirmed: ${what}`),
  ];
}

/** The same for the person whose engine it is: no guesses, no statistics, no words of our own records. */
export function customerReasons(
  { closing, reported, broken }: OpenItems,
  report: EngineReport,
): readonly string[] {
  const unitFor = unitsFor(report.engine);
  const ours = broken.length + reported.length + closing.findings.length + closing.unproven.length;
  return [
    ...closing.rows.flatMap((row) => rowSentence(row, unitFor)),
    ...closing.found.map(({ on, is }) => `Seen on ${on.join(', ')}: ${is}. It is still to be dealt with.`),
    ...closing.untightened.map(({ joint }) => `Not tightened yet: ${joint.sequence.joint}.`),
    ...openBoxes(closing).map((what) => `Not confirmed yet: ${what}.`),
    ...(ours === 0 ? [] : [`${plural(ours, 'point')} of our own records to be cleared up.`]),
  ];
}

function rowSentence(row: Row, unitFor: ReturnType<typeof unitsFor>): readonly string[] {
  const measured = measuredSentence(row, unitFor);
  if (measured.length > 0) return measured;
  return [
    row.judgement.verdict === 'undecided'
      ? `To be measured again with a finer instrument: ${outText(row, unitFor)}.`
      : `To be measured: ${outText(row, unitFor)}.`,
  ];
}

const foundText = ({ on, is, remedy }: Observation): string =>
  `${on.join(', ')}: ${is}${remedy === undefined ? '' : `, to ${remedy}`}`;

const jointText = ({ joint, name }: TorqueDocument): string => `${joint.sequence.joint} (${name})`;

export const openBoxes = ({ boxes }: Closing): readonly string[] =>
  boxes.flatMap(({ what, isRequired, by }) => (isRequired && by === undefined ? [what] : []));
