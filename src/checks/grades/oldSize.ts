import { absolute, compare, fraction, multiply } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import type { Row } from '../judge/row.ts';

type Sized = Pick<Row, 'size' | 'judgement'>;

/**
 * Whether a shell or piston is of the size before its journal was ground or its bore bored, and not worn: it misses the limits
 * of its mate's size by more than half of that step.
 */
export const isOfOldSize = ({ size: { assumedFrom, by }, judgement: { past } }: Sized): boolean =>
  assumedFrom !== undefined &&
  past !== undefined &&
  by.n !== 0n &&
  compare(multiply(past.by, fraction(2)), absolute(by)) > 0;

/** `: its size no longer fits the main journal, 0.25 under`, behind how far it is out; nothing of what is worn. */
export const oldSizeText = (row: Sized, unit: Unit): string =>
  isOfOldSize(row)
    ? `: its size no longer fits the ${row.size.assumedFrom?.label}, ${row.size.text(unit)}`
    : '';
