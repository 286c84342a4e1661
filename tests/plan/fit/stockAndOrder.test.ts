import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fitsOf } from '../../../src/plan/fit/fits.ts';
import { runs } from '../../propertyRuns.ts';
import type { Files } from '../../shopOf.ts';
import { shuffled } from '../../shuffled.ts';
import { contextOf } from '../planOf.ts';
import {
  aPiston,
  aShell,
  aShim,
  type Choice,
  type Costs,
  costsOf,
  indexOf,
  randomShelf,
  type Shelf,
  shelfFiles,
} from './randomShelf.ts';

const KINDS = ['shells', 'pistons', 'shims'] as const satisfies readonly (keyof Costs)[];

function chosenBy(files: Files): Choice {
  const { shells, pistons, thicknesses } = fitsOf(contextOf(files));
  const all = <T>(things: readonly (T | undefined)[]): readonly T[] | undefined => {
    const known = things.flatMap((each) => (each === undefined ? [] : [each]));
    return known.length < things.length || known.length === 0 ? undefined : known;
  };
  return {
    shells: shells.flatMap(({ places }) =>
      places.map(({ chosen }) => chosen && [chosen.upper, chosen.lower].map(({ code }) => indexOf(code))),
    ),
    pistons: all((pistons?.places ?? []).map(({ piston }) => indexOf(piston.mark))),
    shims: thicknesses.flatMap(({ places }) =>
      places.map(({ code }) => (code === undefined ? undefined : indexOf(code))),
    ),
  };
}

const costsFrom = (shelf: Shelf, files = shelfFiles(shelf)): Costs => costsOf(shelf, chosenBy(files));

type More = (shelf: Shelf) => Shelf;

/** One more of what lies there, or something that did not. */
const more: fc.Arbitrary<More> = fc.oneof(
  fc.nat(3).map((which) => (shelf: Shelf) => ({
    ...shelf,
    shells: shelf.shells.map((each, index) =>
      index === which % shelf.shells.length ? { ...each, count: each.count + 1 } : each,
    ),
  })),
  aShell.map((shell) => (shelf: Shelf) => ({ ...shelf, shells: [...shelf.shells, shell] })),
  aPiston.map((piston) => (shelf: Shelf) => ({ ...shelf, pistons: [...shelf.pistons, piston] })),
  aShim.map((shim) => (shelf: Shelf) => ({ ...shelf, shims: [...shelf.shims, shim] })),
);

/** Blue serves both places, and the table asks for red at both: then two halves of red come in. */
const TABLE_FOR_TWO: readonly [Shelf, More[]] = [
  {
    rooms: [
      { hole: [55_000, 55_000], shaft: 50_000, asksFor: 'red' },
      { hole: [55_000, 55_000], shaft: 50_000, asksFor: 'red' },
    ],
    shells: [{ wall: [2480, 2480], count: 4, class: 'blue' }],
    mixing: undefined,
    bores: [
      [80_000, 80_000],
      [80_000, 80_000],
    ],
    pistons: [{ diameter: 79_960, weight: 400, ranIn: undefined }],
    weightSpread: undefined,
    liners: [
      [-90, -90],
      [-90, -90],
    ],
    shims: [{ thickness: 120, count: 2 }],
  },
  [(shelf) => ({ ...shelf, shells: [...shelf.shells, { wall: [2475, 2475], count: 2, class: 'red' }] })],
];

it('more stock never worsens a choice: no fewer places are served, and as many no worse', () => {
  let better = 0;
  fc.assert(
    fc.property(randomShelf, fc.array(more, { minLength: 1, maxLength: 4 }), (shelf, added) => {
      const fuller = added.reduce((each, add) => add(each), shelf);
      const [before, after] = [costsFrom(shelf), costsFrom(fuller)];
      for (const kind of KINDS) {
        const [cost, then] = [before, after].map((each) => each[kind] ?? Number.POSITIVE_INFINITY);
        if (cost === undefined || then === undefined) throw new Error('two costs');
        expect(then, kind).toBeLessThanOrEqual(cost + 1e-9);
        if (then < cost - 1e-9) better += 1;
      }
    }),
    { ...runs(300, 100), examples: [[...TABLE_FOR_TWO]] },
  );
  expect(better).toBeGreaterThan(2);
});

it('no cost of what is chosen depends on the order of stock, blocks, positions and limits', () => {
  let moved = 0;
  fc.assert(
    fc.property(randomShelf, fc.integer({ min: 1, max: 2 ** 31 }), (shelf, seed) => {
      const order = <T>(things: readonly T[]): readonly T[] => shuffled(things, seed);
      const [before, after] = [shelfFiles(shelf), shelfFiles(shelf, order)];
      if (JSON.stringify(before) !== JSON.stringify(after)) moved += 1;
      const [costs, then] = [costsFrom(shelf, before), costsFrom(shelf, after)];
      for (const kind of KINDS) {
        const cost = costs[kind];
        if (cost === undefined) expect(then[kind], kind).toBeUndefined();
        else expect(then[kind], kind).toBeCloseTo(cost, 9);
      }
    }),
    runs(300, 25),
  );
  expect(moved).toBeGreaterThan(12);
});
