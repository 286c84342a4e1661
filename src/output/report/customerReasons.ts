import { type EngineReport, unitsFor } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import { type Box, isOpenBox } from '../../plan/closing/boxes.ts';
import type { Closing } from '../../plan/closing/closing.ts';
import { outText } from '../../plan/closing/outText.ts';
import { plural } from '../../quantity/words.ts';
import { measuredSentence, testedSentence } from '../plan/handover/customerPage.ts';

/** What is open for the person whose engine it is: no guesses, no statistics, no words of our own records. */
export function customerReasons(closing: Closing, report: EngineReport): readonly string[] {
  const { broken, findings, unproven, undecided } = closing;
  const ours = broken.length + findings.length + unproven.length + undecided.length;
  return [
    ...closing.rows.flatMap((row) => rowSentence(row, report)),
    ...closing.found.map(({ on, is }) => `Seen on ${on.join(', ')}: ${is}. It is still to be dealt with.`),
    ...closing.untightened.map(({ joint }) => `Not tightened yet: ${joint.sequence.joint}.`),
    ...closing.boxes.filter(isOpenBox).map(boxSentence),
    ...(ours === 0 ? [] : [`${plural(ours, 'point')} of our own records to be cleared up.`]),
  ];
}

/** Why something was left out is between the shop and its notes. */
const boxSentence = ({ what, leftOut }: Box): string =>
  leftOut === undefined ? `Not confirmed yet: ${what}.` : leftOutSentence(leftOut);

/** What was not measured on purpose, said whether anybody has confirmed it or not. */
export const leftOutSentences = ({ boxes }: Closing): readonly string[] =>
  boxes.flatMap(({ leftOut }) => (leftOut === undefined ? [] : [leftOutSentence(leftOut)]));

const leftOutSentence = (what: string): string => `Left out on purpose, not measured: ${what}.`;

function rowSentence(row: Row, { engine }: EngineReport): readonly string[] {
  const unitFor = unitsFor(engine);
  const measured = [...testedSentence(row, engine), ...measuredSentence(row, unitFor)];
  if (measured.length > 0) return measured;
  return [
    row.judgement.verdict === 'undecided'
      ? `To be measured again with a finer instrument: ${outText(row, unitFor)}.`
      : `To be measured: ${outText(row, unitFor)}.`,
  ];
}
