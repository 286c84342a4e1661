import type { Finding } from '../../checks/finding.ts';
import { printingOf } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Verdict } from '../../checks/judge/verdict.ts';
import { shortName } from '../../layout/naming.ts';
import { formatNumber } from '../../quantity/format.ts';
import { greatest, least } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';

const QUIET: readonly (Verdict | null)[] = ['ok', null];

/** Characteristics of which nothing is to be said beyond what was measured: by their ids. */
export function quietMeasures(rows: readonly Row[], findings: readonly Finding[]): ReadonlySet<string> {
  const told = new Set(
    findings.filter(({ severity }) => severity !== 'remark').map(({ measure }) => measure),
  );
  const isLoud = ({ characteristic, judgement }: Row): boolean =>
    told.has(characteristic.id) || judgement.marginal || !QUIET.includes(judgement.verdict);
  const loud = new Set(rows.filter(isLoud).map(({ characteristic }) => characteristic.id));
  return new Set(rows.map(({ characteristic }) => characteristic.id).filter((id) => !loud.has(id)));
}

/** `cylinder bore 1 to 6: 4.1250 to 4.1254 in, ok`: a whole table in a line. */
export function quietText(rows: readonly Row[], unitFor: (row: Row) => Unit): string {
  const [first] = rows;
  const judged = rows.flatMap(({ routes }) => routes[0] ?? []);
  if (first === undefined || judged.length === 0) return '';
  const { unit, decimals } = printingOf(first, unitFor);
  const ends = [least(judged.map((each) => each.least)), greatest(judged.map((each) => each.greatest))].map(
    (end) => formatNumber(end, unit, decimals),
  );
  const verdict = rows.every(({ judgement }) => judgement.verdict === null) ? 'without limits' : 'ok';
  const names = [first.characteristic.label, positionsText(rows)].filter(Boolean).join(' ');
  return `${names}: ${[...new Set(ends)].join(' to ')} ${unit.name}, ${verdict}`;
}

/** Of many the first and the last, in the order of the layout. */
function positionsText(rows: readonly Row[]): string {
  const names = [...new Set(rows.map(({ position }) => shortName(position)))];
  return names.length > 2 ? `${names[0]} to ${names.at(-1)}` : names.join(', ');
}
