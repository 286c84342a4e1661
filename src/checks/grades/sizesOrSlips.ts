import { type Finding, isCovered, type Reading } from '../finding.ts';
import type { Row } from '../judge/row.ts';
import { readingsOf } from '../slips/oneCause.ts';

/** What differs from a size that is stated is of another size; where none is stated a slip of the pen comes first. */
export function sizesOrSlips(
  sizes: readonly Finding[],
  slips: readonly Finding[],
  rows: readonly Row[],
): readonly [readonly Finding[], readonly Finding[]] {
  const isStated = ({ measure, at }: Pick<Finding, 'measure' | 'at'>): boolean =>
    rows.some((row) => row.characteristic.id === measure && row.position === at && row.size.isKnown);
  const isOfStatedSize = (reading: Reading): boolean =>
    isStated(reading) && sizes.some(({ measure, at }) => measure === reading.measure && at === reading.at);
  const isSaid = (slip: Finding): boolean => {
    const about = readingsOf(slip);
    return about.length > 0 && about.every(isOfStatedSize);
  };
  return [
    sizes.filter((each) => isStated(each) || !isCovered(each.measure ?? '', each.at, slips)),
    slips.filter((each) => !isSaid(each)),
  ];
}
