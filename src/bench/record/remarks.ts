import { fromBase } from '../../quantity/units.ts';
import { keyOf, type PlannedPoint } from '../points.ts';
import { doubtOf } from './doubt.ts';
import { amountOf, expectationAt, typingUnit } from './expectation.ts';
import { type Judging, type Opinion, opinionsOf } from './opinion.ts';
import type { RecordState } from './state.ts';

/** All that is to be said of the reading just taken at a point: what it looks like, and how it is judged. */
export function remarksOn(
  point: PlannedPoint,
  text: string,
  state: RecordState,
  judging: Judging,
): readonly Opinion[] {
  const judged = opinionsOf(point, state.taken, judging);
  if (judged.some((each) => each.word === 'implausible')) return judged;
  const doubt = doubtAt(point, text, state, judging);
  return doubt === undefined ? judged : [doubt, ...judged];
}

/** Compared with what was known before it was typed. */
function doubtAt(
  point: PlannedPoint,
  text: string,
  state: RecordState,
  judging: Judging,
): Opinion | undefined {
  const quantity = judging.registry.find(point.measure)?.quantity;
  const unit = quantity && typingUnit(quantity, judging.engine);
  const amount = unit && amountOf(text, unit);
  // Deviations from a master are no sizes.
  if (unit === undefined || amount === undefined || state.zeros.has(point.measure)) return undefined;
  const taken = new Map([...state.taken].filter(([key]) => key !== keyOf(point)));
  const expected = expectationAt(point, { ...state, taken }, judging);
  return expected && doubtOf(fromBase(amount, unit), expected, unit);
}
