import { limitText, named, printingOf, readingText } from '../../checks/findings/readings.ts';
import { leftToCut } from '../../checks/grades/cutDown.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Job } from '../../plan/work/job.ts';
import { compare, type Fraction, greatest } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { leftToCutText } from '../check/view/leftToCutText.ts';
import type { CutWords } from './cutWords.ts';

/** Of a head or block that is surfaced how much may still be cut, and whether that is as much as it has to be. */
export const leftToSurface = (
  { thicknesses = [], rows }: Job,
  unitFor: (row: Row) => Unit,
): readonly CutWords[] =>
  thicknesses.map((row) => {
    const answer = thicknessLines(
      row,
      rows.filter(({ position }) => position === row.position),
      unitFor,
    );
    return { answer, size: answer, workings: [] };
  });

function thicknessLines(row: Row, out: readonly Row[], unitFor: (row: Row) => Unit): readonly string[] {
  const printing = printingOf(row, unitFor);
  const [judged] = row.routes;
  const found = leftToCut(row.characteristic, row.limits.bands, judged?.least);
  if (judged === undefined || found === undefined) return [];
  const reading = `${named(row)}: ${readingText(judged, printing)} ${printing.unit.name}`;
  const line = `${reading}, ${leftToCutText(row, printing)} (${limitText('min', found.least, printing)})`;
  const needs = heightOut(out);
  return needs !== undefined && compare(needs, found.left) > 0
    ? [line, 'less than it is out: it does not clean up']
    : [line];
}

/** How far its face is out of flat or out of parallel, at the worst. */
function heightOut(rows: readonly Row[]): Fraction | undefined {
  const heights = rows
    .filter(({ characteristic: { quantity } }) => quantity === 'length')
    .flatMap(({ routes: [judged] }) => judged?.greatest ?? []);
  return heights.length === 0 ? undefined : greatest(heights);
}
