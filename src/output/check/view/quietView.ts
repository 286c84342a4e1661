import type { Finding } from '../../../checks/finding.ts';
import { printingOf, readingText } from '../../../checks/findings/readings.ts';
import type { Row } from '../../../checks/judge/row.ts';
import type { Verdict } from '../../../checks/judge/verdict.ts';
import { shortName } from '../../../layout/naming.ts';
import { formatNumber } from '../../../quantity/format.ts';
import { greatest, least } from '../../../quantity/fraction.ts';
import type { Unit } from '../../../quantity/units.ts';
import { byMeasure } from '../byMeasure.ts';

const QUIET: readonly (Verdict | null)[] = ['ok', 'left out', null];
const TROUBLED: readonly (Verdict | null)[] = ['out', 'undecided', 'missing'];

/** Characteristics of which nothing is to be said beyond what was measured: by their ids. */
export function quietMeasures(rows: readonly Row[], findings: readonly Finding[]): ReadonlySet<string> {
  const reported = measuresOf(findings);
  const isLoud = ({ characteristic, judgement }: Row): boolean =>
    reported.has(characteristic.id) || judgement.marginal || !QUIET.includes(judgement.verdict);
  const loud = new Set(rows.filter(isLoud).map(({ characteristic }) => characteristic.id));
  return new Set(rows.map(({ characteristic }) => characteristic.id).filter((id) => !loud.has(id)));
}

/** Characteristics of which something is wrong: by their ids. */
export function troubledMeasures(rows: readonly Row[], findings: readonly Finding[]): ReadonlySet<string> {
  const reported = measuresOf(findings);
  return new Set(
    rows
      .filter(
        ({ characteristic: { id }, judgement }) => reported.has(id) || TROUBLED.includes(judgement.verdict),
      )
      .map(({ characteristic }) => characteristic.id),
  );
}

const measuresOf = (findings: readonly Finding[]): ReadonlySet<string | undefined> =>
  new Set(findings.filter(({ severity }) => severity !== 'remark').map(({ measure }) => measure));

/** Many rows of one characteristic in few words: `cylinder bore 1 to 6`, `4.1250 to 4.1254 in`, `ok`. */
export interface QuietView {
  readonly name: string;
  readonly range: string;
  readonly word: string;
}

export const quietViews = (
  rows: readonly Row[],
  unitFor: (row: Row) => Unit,
  wordOf: (rows: readonly Row[]) => string = verdictOfAll,
): readonly QuietView[] => byMeasure(rows).flatMap((group) => quietView(group, unitFor, wordOf(group)) ?? []);

const verdictOfAll = (rows: readonly Row[]): string =>
  rows.every(({ judgement }) => judgement.verdict === null) ? 'without limits' : 'ok';

/** What was measured at which positions, from least to greatest, and a word on all of it. */
function quietView(rows: readonly Row[], unitFor: (row: Row) => Unit, word: string): QuietView | undefined {
  const [first] = rows;
  const judged = rows.flatMap(({ routes }) => routes[0] ?? []);
  if (first === undefined || judged.length === 0) return undefined;
  const printing = printingOf(first, unitFor);
  const name = [first.characteristic.label, positionsText(rows)].filter(Boolean).join(' ');
  if (printing.outcomes !== undefined) {
    const outcomes = new Set(judged.map((each) => readingText(each, printing)));
    return { name, range: [...outcomes].join(', '), word };
  }
  const { unit, decimals } = printing;
  const ends = [least(judged.map((each) => each.least)), greatest(judged.map((each) => each.greatest))].map(
    (end) => formatNumber(end, unit, decimals),
  );
  return { name, range: `${[...new Set(ends)].join(' to ')} ${unit.name}`, word };
}

/** Of many the first and the last, in the order of the layout. */
function positionsText(rows: readonly Row[]): string {
  const names = [...new Set(rows.map(({ position }) => shortName(position)))];
  return names.length > 2 ? `${names[0]} to ${names.at(-1)}` : names.join(', ');
}
