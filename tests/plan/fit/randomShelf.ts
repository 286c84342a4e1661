import fc from 'fast-check';
import { type Files, limitsOf, sessionOf } from '../../shopOf.ts';
import { type Aim, costBetween, leastCost, orWithout, type Way } from './bestOf.ts';

/** An engine of two mains and two cylinders and the stock for it. Lengths in whole micrometres, weights in whole grams. */
export interface Shelf {
  readonly rooms: readonly Room[];
  readonly shells: readonly Shell[];
  readonly mixing: { readonly differBy: number; readonly thicker: 'upper' | 'lower' } | undefined;
  /** Along the thrust axis, at the top and at the bottom. */
  readonly bores: readonly (readonly [number, number])[];
  readonly pistons: readonly Piston[];
  readonly weightSpread: number | undefined;
  /** How far each liner stands out, on one side and on the other. */
  readonly liners: readonly (readonly [number, number])[];
  readonly shims: readonly Shim[];
}

interface Room {
  readonly hole: readonly [number, number];
  readonly shaft: number;
  /** The class of shells that the maker's table names for it. */
  readonly asksFor: Class | undefined;
}

type Class = 'red' | 'blue';

interface Shell {
  readonly wall: readonly [number, number];
  readonly count: number;
  readonly class: Class;
}

interface Piston {
  readonly diameter: number;
  readonly weight: number;
  readonly ranIn: number | undefined;
}

interface Shim {
  readonly thickness: number;
  readonly count: number;
}

const whole = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });

const twoOf = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<T[]> => fc.array(of, { minLength: 2, maxLength: 2 });

/** From one figure up to another that lies little farther. */
const ends = (min: number, max: number, apart: number): fc.Arbitrary<readonly [number, number]> =>
  fc.tuple(whole(min, max), whole(0, apart)).map(([from, by]) => [from, from + by]);

const aClass: fc.Arbitrary<Class> = fc.constantFrom('red', 'red', 'red', 'blue');

export const aShell: fc.Arbitrary<Shell> = fc.record({
  wall: ends(2460, 2488, 2),
  count: whole(0, 3),
  class: aClass,
});
export const aPiston: fc.Arbitrary<Piston> = fc.record({
  diameter: whole(79_950, 79_990),
  weight: whole(400, 406),
  ranIn: fc.option(whole(1, 2), { nil: undefined, freq: 5 }),
});
export const aShim: fc.Arbitrary<Shim> = fc.record({ thickness: whole(90, 150), count: whole(1, 2) });

export const randomShelf: fc.Arbitrary<Shelf> = fc.record({
  rooms: twoOf(
    fc.record({
      hole: ends(54_990, 55_010, 4),
      shaft: whole(49_995, 50_005),
      asksFor: fc.option(aClass, { nil: undefined, freq: 5 }),
    }),
  ),
  shells: fc.array(aShell, { minLength: 1, maxLength: 4 }),
  mixing: fc.option(
    fc.record({ differBy: whole(2, 12), thicker: fc.constantFrom('upper' as const, 'lower' as const) }),
    { nil: undefined, freq: 3 },
  ),
  bores: twoOf(ends(80_000, 80_015, 5)),
  pistons: fc.array(aPiston, { minLength: 3, maxLength: 5 }),
  weightSpread: fc.option(whole(2, 4), { nil: undefined, freq: 2 }),
  liners: twoOf(ends(-110, -70, 10)),
  shims: fc.array(aShim, { minLength: 2, maxLength: 4 }),
});

const CLEARANCE: Aim = { min: 30, max: 70, twiceMiddle: 90 };
const PISTON: Aim = { min: 20, max: 60, twiceMiddle: 80 };
const PROTRUSION: Aim = { min: 10, max: 60, twiceMiddle: 70 };

const LIMITS = `main_bearing_clearance: { new: 0.030 to 0.070, target: 0.030 to 0.060 }
piston_clearance: { new: 0.020 to 0.060 }
liner_protrusion: { new: 0.010 to 0.060 }`;

/** The greatest difference that any limits may allow: 0.0005 in. */
const MOST_MIXED = 12.7;

/** In millimetres. */
export const millimetres = (micrometres: number): string => (micrometres / 1000).toFixed(3);

const range = ([from, to]: readonly [number, number]): string => `${millimetres(from)} to ${millimetres(to)}`;

/** In which order lines of a list stand, and entries of a map. */
export type Order = <T>(things: readonly T[]) => readonly T[];

const AS_DRAWN: Order = (things) => things;

/** A part is called by its place on the shelf as it was drawn, in whatever order the lines stand. */
export function shelfFiles(shelf: Shelf, order: Order = AS_DRAWN): Files {
  const { shells, pistons, shims, mixing, weightSpread } = shelf;
  const at = (texts: readonly string[]): string =>
    `{ ${order(texts.map((text, index) => `${index + 1}: ${text}`)).join(', ')} }`;
  const two = (pairs: readonly (readonly [number, number])[]): string =>
    at(pairs.map((pair) => `[${pair.map(millimetres).join(', ')}]`));
  const lines = (texts: readonly string[]): string =>
    order(texts)
      .map((text) => `\n  - ${text}`)
      .join('');
  const stock = [
    `shells:${lines(shells.map(({ wall, count, class: its }, index) => `{ code: S${index}, class: ${its}, fits: main shells, wall: ${range(wall)}, count: ${count} }`))}\n`,
    `pistons:${lines(
      pistons.map(
        ({ diameter, weight, ranIn }, index) =>
          `{ mark: P${index}, diameter: ${millimetres(diameter)}, weight: ${weight}${ranIn === undefined ? '' : `, ran_in: ${ranIn}`} }`,
      ),
    )}\n`,
    `liner_shims:${lines(shims.map(({ thickness, count }, index) => `{ code: L${index}, thickness: ${millimetres(thickness)}, count: ${count} }`))}\n`,
  ];
  const blocks = [
    `- { measure: main_housing_bore, stations: [front, rear], at: ${two(shelf.rooms.map(({ hole }) => hole))} }`,
    `- { measure: main_journal_diameter, at: ${at(shelf.rooms.map(({ shaft }) => millimetres(shaft)))} }`,
    `- { measure: cylinder_bore, stations: [top, bottom], at: ${two(shelf.bores)} }`,
    `- { measure: liner_protrusion, stations: [front, rear], at: ${two(shelf.liners)} }`,
  ];
  return {
    'shop.yaml': `kind: shop\nunits: { length: mm, mass: g }\n${weightSpread === undefined ? '' : `plan: { weight_spread: ${weightSpread} g }\n`}`,
    'stock.yaml': `kind: stock\n${order(stock).join('')}`,
    'e/engine.yaml': `kind: engine\nname: Pump\nlayout: { cylinders: 2, mains: 2 }\nstamps: { main_housings: { 1: H, 2: H }, main_journals: ${at(shelf.rooms.map(({ asksFor }) => asksFor ?? 'worn'))} }\n`,
    'e/limits.yaml': limitsOf(
      order(LIMITS.split('\n')).join('\n'),
      `select_fit: [{ fits: main shells, table: { H: { red: red, blue: blue } } }]\n${
        mixing === undefined
          ? ''
          : `mixing: [{ fits: main shells, differ_by: ${millimetres(mixing.differBy)}, thicker: ${mixing.thicker} }]\n`
      }`,
    ),
    'e/session.yaml': sessionOf('machined', order(blocks).join('\n')),
  };
}

/** `S2` is the third of its kind on the shelf. */
export const indexOf = (code: string): number => Number(code.slice(1));

/** Which of the shelf goes where, by its place on the shelf; undefined where a place goes without, and all pistons do. */
export interface Choice {
  readonly shells: readonly (readonly number[] | undefined)[];
  readonly pistons: readonly number[] | undefined;
  readonly shims: readonly (number | undefined)[];
}

export interface Costs {
  readonly shells: number | undefined;
  readonly pistons: number | undefined;
  readonly shims: number | undefined;
}

/** Of the best that can be done with a shelf, found by trying all of it. */
export function bestCosts(shelf: Shelf): Costs {
  return {
    shells: leastCost(
      shellWays(shelf),
      shelf.shells.map(({ count }) => count),
    ),
    pistons: leastCost(pistonWays(shelf), ONE_EACH(shelf.pistons), areOfOneWeight(shelf)),
    shims: leastCost(
      shimWays(shelf),
      shelf.shims.map(({ count }) => count),
    ),
  };
}

/** Of what was chosen; undefined where it may not be chosen so. */
export function costsOf(shelf: Shelf, { shells, pistons, shims }: Choice): Costs {
  const only = (ways: readonly Way[], takes: readonly number[]): readonly Way[] =>
    ways.filter((way) => way.takes.join() === takes.join());
  const shellChosen = shellWays(shelf).map((ways, place) => only(ways, shells[place] ?? []));
  const pistonChosen = pistonWays(shelf).map((ways, place) => only(ways, [pistons?.[place] ?? -1]));
  const shimChosen = shimWays(shelf).map((ways, place) => {
    const shim = shims[place];
    return only(ways, shim === undefined ? [] : [shim]);
  });
  return {
    shells: leastCost(
      shellChosen,
      shelf.shells.map(({ count }) => count),
    ),
    pistons: leastCost(pistonChosen, ONE_EACH(shelf.pistons), areOfOneWeight(shelf)),
    shims: leastCost(
      shimChosen,
      shelf.shims.map(({ count }) => count),
    ),
  };
}

const ONE_EACH = (things: readonly unknown[]): readonly number[] => things.map(() => 1);

/** What a place counts for beside its maker's table: more than the nearness of all, and less than to go without. */
const BESIDE_TABLE = 30;

const shellWays = ({ rooms, shells, mixing }: Shelf): readonly (readonly Way[])[] =>
  orWithout(
    rooms.map(({ hole, shaft, asksFor }) =>
      shells.flatMap(({ wall: up, class: above }, upper) =>
        shells.flatMap(({ wall: low, class: below }, lower): readonly Way[] => {
          const thicker = (up[0] + up[1] - low[0] - low[1]) / 2;
          const step = mixing?.thicker === 'upper' ? thicker : -thicker;
          if (step < 0 || step > Math.min(mixing?.differBy ?? 0, MOST_MIXED)) return [];
          const least = hole[0] - up[1] - low[1] - shaft;
          const greatest = hole[1] - up[0] - low[0] - shaft;
          const cost = costBetween(least, (least + greatest) / 2, greatest, CLEARANCE);
          if (cost === undefined) return [];
          const isByTable = asksFor === undefined || (above === asksFor && below === asksFor);
          return [{ cost: isByTable ? cost : cost + BESIDE_TABLE, takes: [upper, lower] }];
        }),
      ),
    ),
  );

const pistonWays = ({ bores, pistons }: Shelf): readonly (readonly Way[])[] =>
  bores.map(([from, to], bore) =>
    pistons.flatMap(({ diameter, ranIn }, index): readonly Way[] => {
      if (ranIn !== undefined && ranIn !== bore + 1) return [];
      const cost = costBetween(from - diameter, (from + to) / 2 - diameter, to - diameter, PISTON);
      return cost === undefined ? [] : [{ cost, takes: [index] }];
    }),
  );

const areOfOneWeight =
  ({ pistons, weightSpread }: Shelf) =>
  (taken: readonly number[]): boolean => {
    const weights = taken.map((index) => pistons[index]?.weight ?? 0);
    return weightSpread === undefined || Math.max(...weights) - Math.min(...weights) <= weightSpread;
  };

const shimWays = ({ liners, shims }: Shelf): readonly (readonly Way[])[] =>
  orWithout(
    liners.map(([from, to]) =>
      shims.flatMap(({ thickness }, index): readonly Way[] => {
        const cost = costBetween(from + thickness, (from + to) / 2 + thickness, to + thickness, PROTRUSION);
        return cost === undefined ? [] : [{ cost, takes: [index] }];
      }),
    ),
  );
