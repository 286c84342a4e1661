import { type Printing, readingText } from '../../checks/findings/readings.ts';
import type { Ends, JudgedRoute, Row } from '../../checks/judge/row.ts';
import type { HotFit } from '../../checks/value/hotFit.ts';
import { expandedFactor } from '../../measurement/conformance.ts';
import { standardUncertainty } from '../../measurement/value.ts';
import { formatNumber, formatUncertainty, withUnitName } from '../../quantity/format.ts';
import { absolute, add } from '../../quantity/fraction.ts';

/** What a fit measures in the running engine. */
export const hotEnds = ({ standard }: JudgedRoute, { more: { amount } }: HotFit): Ends => ({
  least: add(standard.least, amount),
  mean: add(standard.mean, amount),
  greatest: add(standard.greatest, amount),
});

/** By what the coefficients leave open; the temperatures are as stated. */
export const expandedOf = ({ more }: HotFit): number =>
  expandedFactor(Number.POSITIVE_INFINITY) * standardUncertainty(more);

/** `hot 0.0021 (estimate)`; empty where nothing is stated of the running engine. */
export function hotNote({ hot, routes: [judged] }: Row, printing: Printing): string {
  if (hot === undefined || judged === undefined) return '';
  return `hot ${readingText({ ...judged, ...hotEnds(judged, hot) }, printing)} (estimate)`;
}

/** The same at length, for `explain`. */
export function hotLines({ hot, routes: [judged] }: Row, printing: Printing): readonly string[] {
  if (hot === undefined || judged === undefined) return [];
  const { unit, decimals } = printing;
  const by = hot.more.amount;
  const moved = `${formatNumber(absolute(by), unit, decimals)} ±${formatUncertainty(expandedOf(hot), unit)} ${by.n < 0n ? 'less' : 'more'}`;
  const number = withUnitName(readingText({ ...judged, ...hotEnds(judged, hot) }, printing), unit);
  return [
    `  ${number}, ${moved} than at 20 degC, with ${hot.at.join(', ')}`,
    "  an estimate by expansion alone: no part of a running engine is of one temperature, and the maker's limits come first",
  ];
}
