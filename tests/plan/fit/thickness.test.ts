import { describe, expect, it } from 'vitest';
import type { GasketBand } from '../../../src/documents/limits/choices.ts';
import {
  fitThicknesses,
  gasketFor,
  lashThickness,
  lashWith,
  protrusionWith,
} from '../../../src/plan/fit/thickness/thickness.ts';
import {
  add,
  compare,
  type Fraction,
  fraction,
  parseDecimal,
  toDecimal,
} from '../../../src/quantity/fraction.ts';

const mm = parseDecimal;

const band = ([code, least, greatest, thickness]: readonly string[]): GasketBand => ({
  code: code ?? '',
  protrusion: { least: mm(least ?? ''), greatest: mm(greatest ?? '') },
  thickness: mm(thickness ?? ''),
});

// Isuzu NKR, 4JB1, p. 133: the bands share their borders.
const SHARED = [
  ['A', '0.758', '0.813', '1.60'],
  ['B', '0.813', '0.859', '1.65'],
  ['C', '0.859', '0.914', '1.70'],
].map(band);

// Suzuki XL-7 with the RHZ engine, p. 6A3-39: notches, with a hole of a micrometre between two bands.
const WITH_HOLES = [
  ['1', '0.470', '0.604', '1.24'],
  ['2', '0.605', '0.654', '1.29'],
  ['3', '0.655', '0.704', '1.34'],
  ['4', '0.705', '0.754', '1.39'],
  ['5', '0.755', '0.830', '1.44'],
].map(band);

describe('a head gasket by the largest mean protrusion', () => {
  it.each([
    ...[SHARED, WITH_HOLES].flatMap((bands) =>
      bands.map((each) => [each.code, bands, middle(each)] as const),
    ),
    ...[SHARED, WITH_HOLES].flatMap((bands) =>
      bands.map((each) => [each.code, bands, add(each.protrusion.least, mm('0.0001'))] as const),
    ),
  ])('is grade %s inside its band', (code, bands, protrusion) => {
    expect(gasketFor(protrusion, bands)?.code).toBe(code);
  });

  it.each([
    ['on a border that two share', SHARED, '0.813', 'B'],
    ['on the last of these', SHARED, '0.859', 'C'],
    ['in the hole between two bands', WITH_HOLES, '0.6045', '2'],
    ['on the edge before a hole', WITH_HOLES, '0.604', '1'],
    ['on the last edge', WITH_HOLES, '0.830', '5'],
  ])('is the thicker one %s', (_, bands, protrusion, code) => {
    expect(gasketFor(mm(protrusion), bands)?.code).toBe(code);
  });

  it.each([
    ['inside a band', '0.800', 'A'],
    ['on a border', '0.859', 'C'],
  ])('is the same %s, in whatever order a maker prints the bands', (_, protrusion, code) => {
    expect(gasketFor(mm(protrusion), SHARED.toReversed())?.code).toBe(code);
    expect(gasketFor(mm('0.6045'), WITH_HOLES.toReversed())?.code).toBe('2');
  });

  it('is none below the first band and beyond the last', () => {
    expect(gasketFor(mm('0.757'), SHARED)).toBeUndefined();
    expect(gasketFor(mm('0.915'), SHARED)).toBeUndefined();
  });
});

function middle({ protrusion: { least, greatest } }: GasketBand): Fraction {
  const sum = add(least, greatest);
  return { n: sum.n, d: 2n * sum.d };
}

const sizes = (from: string, step: string, count: number) =>
  Array.from({ length: count }, (_, index) => ({
    thickness: add(mm(from), { n: mm(step).n * BigInt(index), d: mm(step).d }),
    free: 1,
  }));

const chosenFor = (...places: Parameters<typeof fitThicknesses>[0][number][]): string | undefined => {
  const [chosen] = fitThicknesses(places, sizes('5.060', '0.020', 35));
  return chosen && toDecimal(chosen.thickness, 3);
};

const lash = (fitted: string, measured: string) =>
  lashWith(mm(fitted), { least: mm(measured), greatest: mm(measured) });

describe('a bucket for a valve lash', () => {
  // Scion xB 2008, valve clearance (W10): sizes by .020 from 5.060 to 5.740; of two as near the thicker.
  it('of .40 measured, .24 wanted and 5.250 fitted is 5.420', () => {
    expect(toDecimal(lashThickness(mm('5.250'), mm('0.40'), mm('0.24')), 3)).toBe('5.410');
    const wanted = { min: mm('0.19'), max: mm('0.29'), middle: mm('0.24') };
    expect(chosenFor({ wanted, with: lash('5.250', '0.40') })).toBe('5.420');
  });

  it('of an exhaust valve of .510 with 5.340 fitted and .38 to .48 wanted is 5.420, No. 42', () => {
    const wanted = { min: mm('0.38'), max: mm('0.48'), middle: mm('0.43') };
    expect(chosenFor({ wanted, with: lash('5.340', '0.510') })).toBe('5.420');
  });

  it('has 35 sizes to choose from', () => {
    expect(toDecimal(sizes('5.060', '0.020', 35).at(-1)?.thickness ?? mm('0'), 3)).toBe('5.740');
  });

  it('goes once round: two valves that want the one bucket get that and the next', () => {
    const wanted = { min: mm('0.19'), max: mm('0.29'), middle: mm('0.24') };
    const place = { wanted, with: lash('5.250', '0.41') };
    const found = fitThicknesses([place, place], sizes('5.060', '0.020', 35));
    expect(found.map((each) => each && toDecimal(each.thickness, 3)).sort()).toEqual(['5.420', '5.440']);
  });
});

describe('a shim under a liner', () => {
  // Mercury D4.2L, p. 3A-140: the liner stands .01 to .06 proud.
  const wanted = { min: mm('0.01'), max: mm('0.06'), middle: mm('0.035') };
  const shims = ['0.15', '0.20', '0.23'].map((text) => ({ thickness: mm(text), free: 8 }));

  it.each([
    ['0.14', '0.09', '0.15'],
    ['0.19', '0.14', '0.20'],
    ['0.22', '0.17', '0.23'],
  ])('of a recess from %s to %s is %s', (deepest, least, shim) => {
    const made = protrusionWith({ least: negative(deepest), greatest: negative(least) });
    const [found] = fitThicknesses([{ wanted, with: made }], shims);
    expect(found && toDecimal(found.thickness, 2)).toBe(shim);
    const ends = made(found?.thickness ?? mm('0'));
    expect([compare(ends.least, mm('0.01')), compare(ends.greatest, mm('0.06'))]).toEqual([0, 0]);
  });

  it('is none where no shim brings both ends inside', () => {
    const made = protrusionWith({ least: fraction(-1), greatest: fraction(-1) });
    expect(fitThicknesses([{ wanted, with: made }], shims)).toEqual([undefined]);
  });
});

const negative = (text: string): Fraction => ({ n: -mm(text).n, d: mm(text).d });
