import { absolute, add, compare, type Fraction, subtract, toNumber } from '../../quantity/fraction.ts';
import { type Allocation, allocate, type Option } from './allocate.ts';

/** A shell half in stock. Lengths in the base unit. */
export interface ShellHalf {
  readonly code: string;
  readonly wall: Fraction;
  /** Halves of different undersizes are never fitted together. */
  readonly undersize: string;
  /** How many halves there are. */
  readonly count: number;
}

/** What shells are chosen for: the hole, the shaft in it, and the clearance that is wanted. */
export interface ShellPlace {
  readonly housing: Fraction;
  readonly journal: Fraction;
}

export interface ClearanceWanted {
  readonly min: Fraction;
  readonly max: Fraction;
  readonly middle: Fraction;
}

export interface MixingRule {
  /** The greatest difference of wall between the halves of one bearing; nought where halves must be alike. */
  readonly mostDifference: Fraction;
  /** Where the thicker half goes: up in rods, down in mains. */
  readonly thicker: 'upper' | 'lower';
}

export interface ChosenShells {
  readonly upper: ShellHalf;
  readonly lower: ShellHalf;
  readonly clearance: Fraction;
}

/** Shells for every place, as near to the middle as stock allows taken together; undefined where stock does not do. */
export function fitShells(
  places: readonly ShellPlace[],
  stock: readonly ShellHalf[],
  wanted: ClearanceWanted,
  mixing: MixingRule,
): readonly ChosenShells[] | undefined {
  const pairs = pairsOf(stock, mixing);
  const choices = places.map((place) => choicesFor(place, pairs, stock, wanted));
  const found: Allocation | undefined = allocate(
    choices.map((options) => options.map(({ option }) => option)),
    stock.map(({ count }) => count),
  );
  return found?.options.flatMap((option, place) => choices[place]?.[option]?.chosen ?? []);
}

interface Choice {
  readonly option: Option;
  readonly chosen: ChosenShells;
}

interface Pair {
  readonly upper: number;
  readonly lower: number;
}

/** Index pairs of halves that may run together. */
const pairsOf = (stock: readonly ShellHalf[], mixing: MixingRule): readonly Pair[] =>
  stock.flatMap((one, upper) =>
    stock.flatMap((other, lower) => (mayPair(one, other, mixing) ? [{ upper, lower }] : [])),
  );

function mayPair(upper: ShellHalf, lower: ShellHalf, { mostDifference, thicker }: MixingRule): boolean {
  if (upper.undersize !== lower.undersize) return false;
  const order = compare(upper.wall, lower.wall);
  const isRightWayUp = order === 0 || order > 0 === (thicker === 'upper');
  return isRightWayUp && compare(absolute(subtract(upper.wall, lower.wall)), mostDifference) <= 0;
}

function choicesFor(
  { housing, journal }: ShellPlace,
  pairs: readonly Pair[],
  stock: readonly ShellHalf[],
  wanted: ClearanceWanted,
): readonly Choice[] {
  return pairs.flatMap(({ upper, lower }) => {
    const [up, down] = [stock[upper], stock[lower]];
    if (up === undefined || down === undefined) return [];
    const clearance = subtract(subtract(housing, add(up.wall, down.wall)), journal);
    const cost = costOf(clearance, wanted);
    const takes: Option['takes'] =
      upper === lower
        ? [[upper, 2]]
        : [
            [upper, 1],
            [lower, 1],
          ];
    return cost === undefined
      ? []
      : [{ option: { cost, takes }, chosen: { upper: up, lower: down, clearance } }];
  });
}

/** How far a clearance lies from the middle, squared, in half widths of the band; undefined outside it. */
export function costOf(clearance: Fraction, { min, max, middle }: ClearanceWanted): number | undefined {
  if (compare(clearance, min) < 0 || compare(clearance, max) > 0) return undefined;
  const halfWidth = toNumber(subtract(max, min)) / 2;
  const off = toNumber(subtract(clearance, middle));
  return halfWidth === 0 ? 0 : (off / halfWidth) ** 2;
}
