import type { GasketBand } from '../../../documents/limits/choices.ts';
import { add, compare, type Fraction, mean, subtract } from '../../../quantity/fraction.ts';
import { allocate } from '../allocate/allocate.ts';
import type { Option } from '../allocate/option.ts';
import { costOf, type Wanted } from '../wanted.ts';

/**
 * The gasket for the largest mean protrusion of a cylinder. On a border that two share, and in a gap between two, the
 * thicker one: it leaves the piston more room. Undefined beyond the last, and below the first.
 */
export function gasketFor(protrusion: Fraction, bands: readonly GasketBand[]): GasketBand | undefined {
  const rising = [...bands].sort((a, b) => compare(a.protrusion.least, b.protrusion.least));
  const [first] = rising;
  if (first === undefined || compare(protrusion, first.protrusion.least) < 0) return undefined;
  const isOn = ({ protrusion: { least, greatest } }: GasketBand): boolean =>
    compare(least, protrusion) <= 0 && compare(protrusion, greatest) <= 0;
  const holding = rising.filter(isOn).at(-1);
  return holding ?? rising.find(({ protrusion: { least } }) => compare(least, protrusion) > 0);
}

/** What would bring a lash to its target: a thicker one takes up what is measured too much. */
export const lashThickness = (fitted: Fraction, measured: Fraction, target: Fraction): Fraction =>
  add(fitted, subtract(measured, target));

interface Ends {
  readonly least: Fraction;
  readonly greatest: Fraction;
}

/** A place for which a thickness is chosen, and what each would make of it. */
export interface ThicknessPlace {
  readonly wanted: Wanted;
  readonly with: (thickness: Fraction) => Ends;
}

/** A lash with another bucket: thicker by so much, smaller by so much. */
export const lashWith =
  (fitted: Fraction, read: Ends): ThicknessPlace['with'] =>
  (thickness) => {
    const taken = subtract(thickness, fitted);
    return { least: subtract(read.least, taken), greatest: subtract(read.greatest, taken) };
  };

/** A liner with a shim under its flange. */
export const protrusionWith =
  (read: Ends): ThicknessPlace['with'] =>
  (thickness) => ({ least: add(read.least, thickness), greatest: add(read.greatest, thickness) });

/** A piece for as many places as stock serves, together as near to the middle as it allows; of two as near the thicker. */
export function fitThicknesses<T extends { readonly thickness: Fraction; readonly free: number }>(
  places: readonly ThicknessPlace[],
  stock: readonly T[],
): readonly (T | undefined)[] {
  const thickFirst = [...stock].sort((a, b) => compare(b.thickness, a.thickness));
  const choices = places.map((place) =>
    thickFirst.flatMap((piece, item): readonly { piece: T; option: Option }[] => {
      const cost = costWith(piece.thickness, place);
      return cost === undefined ? [] : [{ piece, option: { cost, takes: [[item, 1]] } }];
    }),
  );
  const { options } = allocate(
    choices.map((each) => each.map(({ option }) => option)),
    thickFirst.map(({ free }) => free),
  );
  return options.map((option, place) => choices[place]?.[option ?? -1]?.piece);
}

function costWith(thickness: Fraction, { wanted, with: made }: ThicknessPlace): number | undefined {
  const { least, greatest } = made(thickness);
  const middle = mean([least, greatest]);
  return costOf(middle, { below: subtract(middle, least), above: subtract(greatest, middle) }, wanted);
}
