import { type EngineReport, unitsFor } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import { openBoxes } from '../../plan/closing/boxes.ts';
import type { Closing } from '../../plan/closing/closing.ts';
import { outText } from '../../plan/closing/outText.ts';
import { plural } from '../../quantity/words.ts';
import { measuredSentence } from '../plan/customerPage.ts';

/** What is open for the person whose engine it is: no guesses, no statistics, no words of our own records. */
export function customerReasons(closing: Closing, { engine }: EngineReport): readonly string[] {
  const unitFor = unitsFor(engine);
  const { broken, findings, unproven, undecided } = closing;
  const ours = broken.length + findings.length + unproven.length + undecided.length;
  return [
    ...closing.rows.flatMap((row) => rowSentence(row, unitFor)),
    ...closing.found.map(({ on, is }) => `Seen on ${on.join(', ')}: ${is}. It is still to be dealt with.`),
    ...closing.untightened.map(({ joint }) => `Not tightened yet: ${joint.sequence.joint}.`),
    ...openBoxes(closing.boxes).map((what) => `Not confirmed yet: ${what}.`),
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
