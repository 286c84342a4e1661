import { namedAt } from '../../layout/naming.ts';
import type { WrittenNumber } from '../../measurement/slips/writtenNumber.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { SessionView } from '../judge/row.ts';
import { type ReadingPoint, readingPointsOfBlock } from '../value/readingPoints.ts';
import type { Expectations } from './plausible.ts';
import { isIn, type Range } from './plausibleSizes.ts';
import type { DoubtedPoint } from './slipContext.ts';

/** A number with what is to be expected of it. */
export interface SlipCandidate extends DoubtedPoint {
  readonly number: WrittenNumber;
  readonly amount: number;
  readonly ranges: readonly Range[];
  /** Expanded uncertainty of one such reading. */
  readonly expanded: number;
}

/** The very number that another part read: that of the same position, beside it on the sheet, comes first. */
export function readingOfAnother(suspect: SlipCandidate, view: SessionView): string | undefined {
  const same = others(suspect, view).filter(({ point }) => toNumber(point.amount) === suspect.amount);
  const { position } = suspect.reading;
  const source = same.find(({ reading }) => reading.position === position) ?? same[0];
  return source && `the reading of ${namedAt(labelOf(source, view), source.reading.position)}`;
}

/** What has another part's size without being its very number. */
export function sizeOfAnother(
  suspect: SlipCandidate,
  view: SessionView,
  expectations: Expectations,
): string | undefined {
  const source = others(suspect, view).find(({ block, reading }) => {
    const its = view.registry.find(block.measure.id);
    const ranges = its === undefined ? [] : expectations.ranges(its, reading.position);
    return ranges.some((range) => isIn(suspect.amount, range));
  });
  return source && `a ${labelOf(source, view)} by its size`;
}

/** Small numbers are alike by chance: a clearance says nothing of another. */
const others = (
  { characteristic, amount }: SlipCandidate,
  { session }: SessionView,
): readonly ReadingPoint[] =>
  amount < LEAST_COPIED
    ? []
    : session.blocks
        .filter(({ measure }) => measure.quantity === 'length' && measure.id !== characteristic.id)
        .flatMap((block) => readingPointsOfBlock(block, () => true));

const labelOf = ({ block: { measure } }: ReadingPoint, { registry }: SessionView): string =>
  registry.find(measure.id)?.label ?? measure.id;

/** 5 mm: below it are clearances and shells. */
const LEAST_COPIED = 50_000_000;
