import type { HalfClasses } from '../../documents/limits/choices.ts';
import { sum } from '../../measurement/sample.ts';
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
  /** Its letter, number or colour in a maker's table. */
  readonly class?: string | undefined;
  /** How many halves there are. */
  readonly count: number;
}

/** What shells are chosen for: the room between a housing and its journal, and the clearance that is wanted. */
export interface ShellPlace extends Spread {
  readonly room: Fraction;
  readonly wanted: Wanted;
  /** Of the size of its journal these codes alone. */
  readonly only?: readonly string[] | undefined;
  /** Those that a maker's table names: others go in only where too few of these are left. */
  readonly classes?: HalfClasses | undefined;
}

export interface MixingRule {
  /** The greatest difference of wall between the halves of one bearing; nought where halves must be alike. */
  readonly mostDifference: Fraction;
  /** Where the thicker half goes: up in rods, down in mains. */
  readonly thicker: 'upper' | 'lower';
}

interface Halves {
  readonly upper: ShellHalf;
  readonly lower: ShellHalf;
}

export interface ChosenShells extends Halves {
  readonly clearance: Fraction;
}

/**
 * Shells for as many places as stock serves, as few of these as can be beside their maker's table, and all taken together as
 * near to the middle as that allows; undefined for the others.
 */
export function fitShells(
  places: readonly ShellPlace[],
  stock: readonly ShellHalf[],
  mixing: MixingRule,
): readonly (ChosenShells | undefined)[] {
  const pairs = pairsOf(stock, mixing);
  const choices = places.map((place) => choicesFor(place, pairs));
  // One place more by its table counts more than the nearness of all.
  const besideTable = sum(choices.map((each) => Math.max(0, ...each.map(({ option }) => option.cost)))) + 1;
  const { options } = allocate(
    choices.map((each, place) =>
      each.map(({ option, chosen }) =>
        isByTable(chosen, places[place]?.classes) ? option : { ...option, cost: option.cost + besideTable },
      ),
    ),
    stock.map(({ count }) => count),
  );
  return options.map((option, place) => choices[place]?.[option ?? -1]?.chosen);
}

/** Whether a table has its will, where there is one. */
export const isByTable = ({ upper, lower }: Halves, classes: HalfClasses | undefined): boolean =>
  classes === undefined || (upper.class === classes.upper && lower.class === classes.lower);

interface Choice {
  readonly option: Option;
  readonly chosen: ChosenShells;
}

interface Pair extends Halves {
  readonly takes: Option['takes'];
  readonly mayRunAnywhere: boolean;
}

/** Halves of one undersize, and whether they may run together where no table asks for it. */
const pairsOf = (stock: readonly ShellHalf[], mixing: MixingRule): readonly Pair[] =>
  stock.flatMap((upper, above) =>
    stock.flatMap((lower, below): readonly Pair[] =>
      upper.undersize === lower.undersize
        ? [
            {
              upper,
              lower,
              takes: [
                [above, 1],
                [below, 1],
              ],
              mayRunAnywhere: mayPair(upper, lower, mixing),
            },
          ]
        : [],
    ),
  );

function mayPair(upper: ShellHalf, lower: ShellHalf, { mostDifference, thicker }: MixingRule): boolean {
  const order = compare(upper.wall, lower.wall);
  const isRightWayUp = order === 0 || order > 0 === (thicker === 'upper');
  return isRightWayUp && compare(absolute(subtract(upper.wall, lower.wall)), mostDifference) <= 0;
}

function choicesFor(place: ShellPlace, pairs: readonly Pair[]): readonly Choice[] {
  const { room, below, above, wanted, only } = place;
  return pairs.flatMap((pair) => {
    const { upper, lower, takes, mayRunAnywhere } = pair;
    if (only !== undefined && !(only.includes(upper.code) && only.includes(lower.code))) return [];
    if (!mayRunAnywhere && !isMixedByTable(pair, place)) return [];
    const clearance = subtract(room, add(upper.wall, lower.wall));
    const within = add(upper.within, lower.within);
    const cost = costOf(clearance, { below: add(below, within), above: add(above, within) }, wanted);
    return cost === undefined ? [] : [{ option: { cost, takes }, chosen: { upper, lower, clearance } }];
  });
}

/** What a maker prints as one above and another below runs together by his word. */
const isMixedByTable = (pair: Halves, { classes }: ShellPlace): boolean =>
  classes !== undefined && classes.upper !== classes.lower && isByTable(pair, classes);
