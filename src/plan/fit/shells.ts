import { absolute, add, compare, type Fraction, subtract } from '../../quantity/fraction.ts';
import { allocate } from './allocate/allocate.ts';
import type { Option } from './allocate/option.ts';
import { costOf, type Spread, type Wanted } from './wanted.ts';

/** A shell half in stock. Lengths in the base unit. */
export interface ShellHalf {
  readonly code: string;
  readonly wall: Fraction;
  /** Half of what its wall may differ by, as it is sold. */
  readonly within: Fraction;
  /** Halves of different undersizes are never fitted together. */
  readonly undersize: string;
  /** How many halves there are. */
  readonly count: number;
}

/** What shells are chosen for: the room between a housing and its journal, and the clearance that is wanted. */
export interface ShellPlace extends Spread {
  readonly room: Fraction;
  readonly wanted: Wanted;
  /** By a maker's table these codes alone. */
  readonly only?: readonly string[] | undefined;
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

/** Shells for as many places as stock serves, as near to the middle as it allows taken together; undefined for the others. */
export function fitShells(
  places: readonly ShellPlace[],
  stock: readonly ShellHalf[],
  mixing: MixingRule,
): readonly (ChosenShells | undefined)[] {
  const pairs = pairsOf(stock, mixing);
  const choices = places.map((place) => choicesFor(place, pairs));
  const { options } = allocate(
    choices.map((each) => each.map(({ option }) => option)),
    stock.map(({ count }) => count),
  );
  return options.map((option, place) => choices[place]?.[option ?? -1]?.chosen);
}

interface Choice {
  readonly option: Option;
  readonly chosen: ChosenShells;
}

interface Pair {
  readonly upper: ShellHalf;
  readonly lower: ShellHalf;
  readonly takes: Option['takes'];
}

/** Halves that may run together. */
const pairsOf = (stock: readonly ShellHalf[], mixing: MixingRule): readonly Pair[] =>
  stock.flatMap((upper, above) =>
    stock.flatMap((lower, below): readonly Pair[] =>
      mayPair(upper, lower, mixing)
        ? [
            {
              upper,
              lower,
              takes: [
                [above, 1],
                [below, 1],
              ],
            },
          ]
        : [],
    ),
  );

function mayPair(upper: ShellHalf, lower: ShellHalf, { mostDifference, thicker }: MixingRule): boolean {
  if (upper.undersize !== lower.undersize) return false;
  const order = compare(upper.wall, lower.wall);
  const isRightWayUp = order === 0 || order > 0 === (thicker === 'upper');
  return isRightWayUp && compare(absolute(subtract(upper.wall, lower.wall)), mostDifference) <= 0;
}

function choicesFor(
  { room, below, above, wanted, only }: ShellPlace,
  pairs: readonly Pair[],
): readonly Choice[] {
  return pairs.flatMap(({ upper, lower, takes }) => {
    if (only !== undefined && !(only.includes(upper.code) && only.includes(lower.code))) return [];
    const clearance = subtract(room, add(upper.wall, lower.wall));
    const within = add(upper.within, lower.within);
    const cost = costOf(clearance, { below: add(below, within), above: add(above, within) }, wanted);
    return cost === undefined ? [] : [{ option: { cost, takes }, chosen: { upper, lower, clearance } }];
  });
}
