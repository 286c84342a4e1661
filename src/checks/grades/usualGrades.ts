import type { Characteristic } from '../../characteristics/characteristic.ts';
import { type Grade, STANDARD } from '../../documents/grades/grade.ts';
import { movement, wholly } from '../../documents/grades/movement.ts';
import { FITS, SIZED_PARTS } from '../../documents/grades/sizedParts.ts';
import { negate, parseDecimal, toNumber } from '../../quantity/fraction.ts';
import { toBase, unitNamed } from '../../quantity/units.ts';

const stepsIn = (name: string, sizes: readonly string[]): readonly Grade[] => {
  const unit = unitNamed(name);
  return sizes.map((written) => ({
    by: toBase(parseDecimal(written), unit),
    size: { written, unit },
    of: undefined,
  }));
};

/** Steps in which journals are ground and cylinders bored (TM 9-2815-225-34&P, p. 183, and common practice). */
const STEPS: readonly Grade[] = [
  ...stepsIn('in', ['0.010', '0.020', '0.030', '0.040', '0.050', '0.060']),
  ...stepsIn('mm', ['0.25', '0.50', '0.75', '1.00', '1.25', '1.50']),
];

/** The grades in which the part that is measured is usually made, standard first; that alone where it is made in no other. */
export function usualGrades({ graded }: Pick<Characteristic, 'graded'>): readonly Grade[] {
  const made = SIZED_PARTS.find(({ id }) => id === graded?.part)?.made;
  if (graded === undefined || made === undefined || graded.dimension === 'shell housing') return [STANDARD];
  return [STANDARD, ...STEPS.map((step) => (made === 'over' ? step : { ...step, by: negate(step.by) }))];
}

/** How far a part's size may lie from standard: nought, and each service size. In the base unit. */
export const serviceShifts = (of: Pick<Characteristic, 'graded'>): readonly number[] => {
  const { graded } = of;
  return graded === undefined
    ? [0]
    : usualGrades(of).map((grade) => toNumber(movement(graded.dimension, wholly(grade))));
};

/** Bored together with it: one cylinder takes its piston along, and no other. */
export const isBoredWith = (
  one: Pick<Characteristic, 'graded'>,
  other: Pick<Characteristic, 'graded'>,
): boolean =>
  FITS.some((fit) => [one, other].every(({ graded }) => graded !== undefined && fit.includes(graded.part))) &&
  [one, other].every(isBored);

export const isBored = ({ graded }: Pick<Characteristic, 'graded'>): boolean =>
  SIZED_PARTS.find(({ id }) => id === graded?.part)?.made === 'over';
