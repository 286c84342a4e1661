import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitPistons, type Piston } from '../../../src/plan/fit/pistons.ts';
import { fitShells, type ShellHalf } from '../../../src/plan/fit/shells.ts';
import { fitThicknesses, lashWith, protrusionWith } from '../../../src/plan/fit/thickness/thickness.ts';
import type { Wanted } from '../../../src/plan/fit/wanted.ts';
import { fraction } from '../../../src/quantity/fraction.ts';
import { runs } from '../../propertyRuns.ts';
import { type Aim, costBetween, isShort, leastCost, orWithout, type Way } from './bestOf.ts';

/** In every run: what a plan chooses stands or falls by it. */
const CASES = runs(2_000, 2_000);

const whole = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });
const listOf = <T>(of: fc.Arbitrary<T>, minLength: number, maxLength: number): fc.Arbitrary<T[]> =>
  fc.array(of, { minLength, maxLength });

/** A band, and a middle that is that of a target inside it. */
const aim: fc.Arbitrary<Aim> = fc
  .tuple(whole(10, 20), whole(0, 12), fc.nat(100))
  .map(([min, width, part]) => ({
    min,
    max: min + width,
    twiceMiddle: 2 * min + Math.round((part * 2 * width) / 100),
  }));

const wantedOf = ({ min, max, twiceMiddle }: Aim): Wanted => ({
  min: fraction(min),
  max: fraction(max),
  middle: fraction(twiceMiddle, 2),
});

/** How often stock served every place, and how often it did not: a property of one of the two alone would show little. */
class Met {
  served = 0;
  short = 0;

  count(best: number | undefined): void {
    if (isShort(best)) this.short += 1;
    else this.served += 1;
  }

  expectBoth(): void {
    expect(Math.min(this.served, this.short)).toBeGreaterThan(100);
  }
}

/** What was chosen costs what the best of all does; with squares of fractions, but for rounding. */
function expectBest(chosen: number | undefined, best: number | undefined): void {
  if (chosen === undefined || best === undefined) expect(chosen).toBe(best);
  else expect(chosen).toBeCloseTo(best, 9);
}

/** Of the way chosen for each place; undefined where a place has no such way or takes what others have taken. */
const costOfChoice = (
  ways: readonly (readonly Way[])[],
  chosen: readonly (readonly number[])[] | undefined,
  counts: readonly number[],
  mayGoTogether?: (taken: readonly number[]) => boolean,
): number | undefined =>
  chosen &&
  leastCost(
    ways.map((each, place) => each.filter(({ takes }) => takes.join() === chosen[place]?.join())),
    counts,
    mayGoTogether,
  );

describe('of 2,000 small cases the set that is chosen costs what the best of all does, found by trying them', () => {
  it('of shell halves, where their sizes may be mixed and makers’ tables leave some out', () => {
    const half = fc.record({
      wall: whole(20, 26),
      within: whole(0, 1),
      undersize: fc.constantFrom('std', 'std', 'std', '0.25 under'),
      count: whole(0, 5),
    });
    const place = fc.record({
      room: whole(55, 70),
      below: whole(0, 1),
      above: whole(0, 1),
      aim,
      leavesOut: fc.option(fc.nat(3), { freq: 3 }),
    });
    const mixing = fc.record({
      mostDifference: whole(0, 2),
      thicker: fc.constantFrom('upper' as const, 'lower' as const),
    });
    const met = new Met();
    fc.assert(
      fc.property(listOf(place, 1, 3), listOf(half, 1, 4), mixing, (places, halves, rule) => {
        const ways = orWithout(
          places.map(({ room, below, above, aim: wanted, leavesOut }) =>
            halves.flatMap((upper, up) =>
              halves.flatMap((lower, low): readonly Way[] => {
                const step = rule.thicker === 'upper' ? upper.wall - lower.wall : lower.wall - upper.wall;
                if (upper.undersize !== lower.undersize || step < 0 || step > rule.mostDifference) return [];
                if (up === leavesOut || low === leavesOut) return [];
                const clearance = room - upper.wall - lower.wall;
                const within = upper.within + lower.within;
                const ends = [clearance - below - within, clearance + above + within] as const;
                const cost = costBetween(ends[0], clearance, ends[1], wanted);
                return cost === undefined ? [] : [{ cost, takes: [up, low] }];
              }),
            ),
          ),
        );
        const counts = halves.map(({ count }) => count);
        const best = leastCost(ways, counts);
        met.count(best);
        const codes = halves.map((_, index) => `${index}`);
        const found = fitShells(
          places.map(({ room, below, above, aim: wanted, leavesOut }) => ({
            room: fraction(room),
            below: fraction(below),
            above: fraction(above),
            wanted: wantedOf(wanted),
            only: leavesOut === null ? undefined : codes.filter((code) => code !== `${leavesOut}`),
          })),
          halves.map(
            (each, index): ShellHalf => ({
              ...each,
              code: `${index}`,
              wall: fraction(each.wall),
              within: fraction(each.within),
            }),
          ),
          { ...rule, mostDifference: fraction(rule.mostDifference) },
        );
        const chosen = found.map((each) => (each ? [Number(each.upper.code), Number(each.lower.code)] : []));
        expectBest(costOfChoice(ways, chosen, counts), best);
      }),
      CASES,
    );
    met.expectBoth();
  });

  it('of pistons, of one weight and each that ran in its own bore', () => {
    const isNew = fc.constant(undefined);
    const mayHaveRun = fc.option(fc.nat(3), { nil: undefined, freq: 3 });
    const shelf = fc.constantFrom(isNew, mayHaveRun).chain((ranIn) => {
      const weight = fc.option(whole(0, 6), { freq: 20 });
      return listOf(fc.record({ diameter: whole(102, 108), weight, ranIn }), 4, 8);
    });
    const bore = fc.record({ size: whole(121, 127), below: whole(0, 1), above: whole(0, 1), aim });
    const spread = fc.option(whole(2, 5), { freq: 2 });
    const met = new Met();
    fc.assert(
      fc.property(listOf(bore, 2, 4), shelf, spread, (bores, pistons, most) => {
        const ways = bores.map(({ size, below, above, aim: wanted }, name) =>
          pistons.flatMap(({ diameter, ranIn }, index): readonly Way[] => {
            if (ranIn !== undefined && ranIn !== name) return [];
            const clearance = size - diameter;
            const cost = costBetween(clearance - below, clearance, clearance + above, wanted);
            return cost === undefined ? [] : [{ cost, takes: [index] }];
          }),
        );
        const counts = pistons.map(() => 1);
        const areOfOneWeight = (taken: readonly number[]): boolean => {
          const weights = taken.flatMap((index) => pistons[index]?.weight ?? []);
          return (
            most === null ||
            (weights.length === taken.length && Math.max(...weights) - Math.min(...weights) <= most)
          );
        };
        const best = leastCost(ways, counts, areOfOneWeight);
        met.count(best);
        const found = fitPistons(
          bores.map(({ size, below, above, aim: wanted }, name) => ({
            name: `${name}`,
            size: fraction(size),
            below: fraction(below),
            above: fraction(above),
            wanted: wantedOf(wanted),
          })),
          pistons.map(
            ({ diameter, weight, ranIn }, index): Piston => ({
              mark: `${index}`,
              diameter: fraction(diameter),
              weight: weight === null ? undefined : fraction(weight),
              ranIn: ranIn === undefined ? undefined : `${ranIn}`,
            }),
          ),
          most === null ? undefined : fraction(most),
        );
        const chosen = found?.pistons.map(({ mark }) => [Number(mark)]);
        expectBest(costOfChoice(ways, chosen, counts, areOfOneWeight), best);
      }),
      CASES,
    );
    met.expectBoth();
  });

  it.each([
    ['shims under liners', 1, protrusionWith],
    ['lash buckets', -1, (read: Parameters<typeof protrusionWith>[0]) => lashWith(fraction(0), read)],
  ])('of %s', (_, sign, withPiece) => {
    const piece = fc.record({ thickness: whole(0, 12), free: whole(0, 2) });
    const place = fc.record({ least: whole(0, 12), apart: whole(0, 2), aim });
    const met = new Met();
    fc.assert(
      fc.property(listOf(place, 1, 4), listOf(piece, 1, 5), (places, pieces) => {
        const read = places.map(({ least, apart }) => {
          const from = sign > 0 ? least : 30 - least;
          return { least: from, greatest: from + apart };
        });
        const ways = orWithout(
          places.map(({ aim: wanted }, at) =>
            pieces.flatMap(({ thickness }, index): readonly Way[] => {
              const [least = 0, greatest = 0] = [read[at]?.least, read[at]?.greatest].map(
                (each = 0) => each + sign * thickness,
              );
              const cost = costBetween(least, (least + greatest) / 2, greatest, wanted);
              return cost === undefined ? [] : [{ cost, takes: [index] }];
            }),
          ),
        );
        const counts = pieces.map(({ free }) => free);
        const best = leastCost(ways, counts);
        met.count(best);
        const found = fitThicknesses(
          places.map(({ aim: wanted }, at) => ({
            wanted: wantedOf(wanted),
            with: withPiece({
              least: fraction(read[at]?.least ?? 0),
              greatest: fraction(read[at]?.greatest ?? 0),
            }),
          })),
          pieces.map(({ thickness, free }, index) => ({ thickness: fraction(thickness), free, index })),
        );
        expectBest(
          costOfChoice(
            ways,
            found.map((each) => (each ? [each.index] : [])),
            counts,
          ),
          best,
        );
      }),
      CASES,
    );
    met.expectBoth();
  });
});
