import type { Characteristic } from '../../characteristics/characteristic.ts';
import { type Grade, STANDARD } from '../../documents/grades/grade.ts';
import { movement, wholly } from '../../documents/grades/movement.ts';
import type { Part, Parts } from '../../layout/part.ts';
import { negate, parseDecimal, toNumber } from '../../quantity/fraction.ts';
import { toBase, unitNamed } from '../../quantity/units.ts';
import { oncePer } from '../once.ts';

const stepsIn = (name: string, sizes: readonly string[]): readonly Grade[] => {
  const unit = unitNamed(name);
  return sizes.map((written) => ({
    by: toBase(parseDecimal(written), unit),
    size: { written, unit },
    of: undefined,
  }));
};

/** Steps in which journals are ground and cylinders bored (TM 9-2815-225-34&P, sheet 183, and common practice). */
const STEPS: readonly Grade[] = [
  ...stepsIn('in', ['0.010', '0.020', '0.030', '0.040', '0.050', '0.060']),
  ...stepsIn('mm', ['0.25', '0.50', '0.75', '1.00', '1.25', '1.50']),
];

/** The grades in which the part that is measured is usually made, standard first; that alone where it is made in no other. */
export function usualGrades({ of, dimension }: Sized, parts: Parts): readonly Grade[] {
  const made = partOf(of, parts)?.sized?.made;
  if (dimension === undefined || made === undefined) return [STANDARD];
  return [STANDARD, ...STEPS.map((step) => (made === 'over' ? step : { ...step, by: negate(step.by) }))];
}

type Sized = Pick<Characteristic, 'of' | 'dimension'>;

const partOf = (id: string | undefined, parts: Parts): Part | undefined =>
  id === undefined ? undefined : parts.find(id);

/** How far a part's size may lie from standard: nought, and each service size. In the base unit. */
export const serviceShifts = (of: Sized, parts: Parts): readonly number[] => shiftsIn(parts)(of);

/** Every reading is held against them. */
const shiftsIn = oncePer((parts: Parts) =>
  oncePer((of: Sized): readonly number[] => {
    const { dimension } = of;
    return dimension === undefined
      ? [0]
      : usualGrades(of, parts).map((grade) => toNumber(movement(dimension, wholly(grade))));
  }),
);

/** Bored together with it: one cylinder takes its piston along, and no other. */
export const isBoredWith = (one: Sized, other: Sized, parts: Parts): boolean => {
  const [a, b] = [partOf(one.of, parts), partOf(other.of, parts)];
  return (
    isBored(one, parts) && isBored(other, parts) && (a?.sized?.fits === b?.id || b?.sized?.fits === a?.id)
  );
};

export const isBored = ({ of, dimension }: Sized, parts: Parts): boolean =>
  dimension !== undefined && partOf(of, parts)?.sized?.made === 'over';
