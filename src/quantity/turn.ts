import { add, divide, type Fraction, fraction, multiply, round, subtract } from './fraction.ts';

/** After how many degrees a crank angle comes round again: of two strokes, and of four. */
export const CYCLES = [360, 720] as const;

/**
 * The same place of a turning shaft, so many whole cycles on or back that it lies nearest another. An amount that does
 * not come round again stays.
 */
export function nearestTurn(amount: Fraction, to: Fraction, cycle: Fraction | undefined): Fraction {
  if (cycle === undefined) return amount;
  const turns = round(divide(subtract(to, amount), cycle));
  return add(amount, multiply(cycle, fraction(turns)));
}
