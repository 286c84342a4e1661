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

export type StepChoice =
  | { readonly kind: 'step'; readonly step: ServiceStep; readonly spare: Fraction; readonly next: NextStep }
  | {
      readonly kind: 'beyond the last step';
      readonly last: ServiceStep | undefined;
      readonly reach: Fraction;
    }
  | { readonly kind: 'not provable' };

/** The step after the one that cleans up, and what it leaves over. */
export type NextStep = { readonly step: ServiceStep; readonly spare: Fraction } | undefined;

const TWO = fraction(2);

/**
 * The smallest step to which a journal or crankpin cleans up all round. Steps stand in the order in which metal goes.
 * A pin's index or throw offset counts as `runout` does.
 */
export function regrindStep(wear: JournalWear, steps: readonly ServiceStep[]): StepChoice {
  const depth = depthOf(wear.damage);
  if (depth === undefined) return { kind: 'not provable' };
  const largestClean = subtract(
    wear.smallest,
    sum([wear.runout, multiply(TWO, depth), wear.expanded, wear.polish]),
  );
  return choose(steps, largestClean, ({ aim }) => subtract(largestClean, aim));
}

/** The smallest step to which a cylinder bored on its original centre cleans up. */
export function reboreStep(wear: BoreWear, steps: readonly ServiceStep[]): StepChoice {
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

function choose(
  steps: readonly ServiceStep[],
  reach: Fraction,
  spareOf: (step: ServiceStep) => Fraction,
): StepChoice {
  const enough = steps
    .map((step) => ({ step, spare: spareOf(step) }))
    .filter(({ spare }) => compare(spare, fraction(0)) >= 0);
  const [first, next] = enough;
  if (first === undefined) return { kind: 'beyond the last step', last: steps.at(-1), reach };
  return { kind: 'step', ...first, next };
}
