import { named, pastLimitText, printingOf, readingText } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Unit } from '../../quantity/units.ts';

export type UnitFor = (row: Row) => Unit;

/** `main journal diameter 3: 2.7465 to 2.7478 in, small by 5 tenths (wear min 2.7470)`. */
export function outText(row: Row, unitFor: UnitFor): string {
  const printing = printingOf(row, unitFor);
  const [judged] = row.routes;
  const { past } = row.judgement;
  if (judged === undefined) return named(row);
  const reading = `${named(row)}: ${readingText(judged, printing)} ${printing.unit.name}`.trim();
  return past === undefined ? reading : `${reading}, ${pastLimitText(row, past, printing)}`;
}
