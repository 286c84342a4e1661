import { limitText, named, printingOf, readingText } from '../../checks/findings/readings.ts';
import { leftToCut } from '../../checks/grades/cutDown.ts';
import type { Row } from '../../checks/judge/row.ts';
import { isTooThin, worstHeight } from '../../plan/work/heads/tooThin.ts';
import type { Job } from '../../plan/work/job.ts';
import type { Unit } from '../../quantity/units.ts';
import { leftToCutText } from '../check/view/leftToCutText.ts';
import type { CutWords } from './cutWords.ts';

type UnitFor = (row: Row) => Unit;

/** Of a head or block that is out of flat how much may still be cut, and that it is renewed where that is less than it takes. */
export const leftToSurface = (
  { thicknesses = [], rows, operation }: Job,
  unitFor: UnitFor,
): readonly CutWords[] =>
  thicknesses.map((row) => {
    const end = isTooThin(row, rows) ? tooThinText(row, rows, operation, unitFor) : [];
    const answer = [...leftText(row, unitFor), ...end];
    return { answer, size: answer, workings: [] };
  });

function leftText(row: Row, unitFor: UnitFor): readonly string[] {
  const printing = printingOf(row, unitFor);
  const [judged] = row.routes;
  const found = leftToCut(row.characteristic, row.limits.bands, judged?.least);
  if (judged === undefined || found === undefined) return [];
  const reading = `${named(row)}: ${readingText(judged, printing)} ${printing.unit.name}`;
  return [`${reading}, ${leftToCutText(row, printing)} (${limitText('min', found.least, printing)})`];
}

function tooThinText(
  { position }: Row,
  rows: readonly Row[],
  operation: Job['operation'],
  unitFor: UnitFor,
): readonly string[] {
  const worst = worstHeight(rows, position);
  const [judged] = worst?.routes ?? [];
  if (worst === undefined || judged === undefined) return [];
  const printing = printingOf(worst, unitFor);
  const out = `less than it is out (${readingText(judged, printing)} ${printing.unit.name})`;
  return [operation === 'renew' ? `${out}: renewed, and not surfaced` : `${out}: it does not clean up`];
}
