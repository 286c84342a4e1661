import { add, compare, type Fraction, fraction, multiply, subtract, sum } from '../../quantity/fraction.ts';

/** A service size: what the part measures when it is finished to it. Lengths in the base unit. */
export interface ServiceStep {
  /** As the limits name it, such as `0.010 under` or `std`. */
  readonly name: string;
  /** The middle of the step's band for new parts: what the machine shop aims for. */
  readonly aim: Fraction;
}

/** What the first whole cut has to reach through, each a length in the base unit. */
export interface JournalWear {
  readonly smallest: Fraction;
  /** Full indicated runout, after straightening. */
  readonly runout: Fraction;
  readonly damage: Damage;
  /** Expanded uncertainty of the smallest diameter. */
  readonly expanded: Fraction;
  readonly polish: Fraction;
}

export interface BoreWear {
  readonly largest: Fraction;
  /** How far the bore's axis lies from where it was made, or the size that it never wore from. */
  readonly centre: { readonly offset: Fraction } | { readonly unworn: Fraction };
  readonly damage: Damage;
  readonly expanded: Fraction;
  readonly honeStock: Fraction;
}

/** How deep scores go; `not measured` where they are seen and nobody knows. */
export type Damage = Fraction | 'none' | 'not measured';

export type StepChoice<Step extends ServiceStep = ServiceStep> =
  | {
      readonly kind: 'step';
      readonly step: Step;
      readonly spare: Fraction;
      readonly next: StepWithSpare<Step> | undefined;
      /** The step before it, and what it lacks. */
      readonly short: StepWithSpare<Step> | undefined;
      /** The largest journal, or the smallest bore, that is clean all round. */
      readonly reach: Fraction;
    }
  | { readonly kind: 'beyond the last step'; readonly last: Step | undefined; readonly reach: Fraction }
  | { readonly kind: 'not provable' };

/** What a step leaves over; below nought what it lacks. */
export interface StepWithSpare<Step extends ServiceStep = ServiceStep> {
  readonly step: Step;
  readonly spare: Fraction;
}

const TWO = fraction(2);

/**
 * The smallest step to which a journal or crankpin cleans up all round. Steps stand in the order in which metal goes.
 * A pin's index or throw offset counts as `runout` does.
 */
export function regrindStep<Step extends ServiceStep>(
  wear: JournalWear,
  steps: readonly Step[],
): StepChoice<Step> {
  const depth = depthOf(wear.damage);
  if (depth === undefined) return { kind: 'not provable' };
  const largestClean = subtract(
    wear.smallest,
    sum([wear.runout, multiply(TWO, depth), wear.expanded, wear.polish]),
  );
  return choose(steps, largestClean, ({ aim }) => subtract(largestClean, aim));
}

/** The smallest step to which a cylinder bored on its original centre cleans up. */
export function reboreStep<Step extends ServiceStep>(
  wear: BoreWear,
  steps: readonly Step[],
): StepChoice<Step> {
  const depth = depthOf(wear.damage);
  if (depth === undefined) return { kind: 'not provable' };
  const smallestClean = sum([roundOnCentre(wear), multiply(TWO, depth), wear.expanded, wear.honeStock]);
  return choose(steps, smallestClean, ({ aim }) => subtract(aim, smallestClean));
}

/** A bore that wore to one side alone grew by twice as much about its old centre. */
const roundOnCentre = ({ largest, centre }: BoreWear): Fraction =>
  'offset' in centre
    ? add(largest, multiply(TWO, centre.offset))
    : subtract(multiply(TWO, largest), centre.unworn);

function depthOf(damage: Damage): Fraction | undefined {
  if (damage === 'not measured') return undefined;
  return damage === 'none' ? fraction(0) : damage;
}

function choose<Step extends ServiceStep>(
  steps: readonly Step[],
  reach: Fraction,
  spareOf: (step: Step) => Fraction,
): StepChoice<Step> {
  const all = steps.map((step) => ({ step, spare: spareOf(step) }));
  const index = all.findIndex(({ spare }) => compare(spare, fraction(0)) >= 0);
  const first = all[index];
  if (first === undefined) return { kind: 'beyond the last step', last: steps.at(-1), reach };
  return { kind: 'step', ...first, next: all[index + 1], short: all[index - 1], reach };
}
