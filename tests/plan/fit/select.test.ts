import { describe, expect, it } from 'vitest';
import { type Bore, fitPistons, type Piston } from '../../../src/plan/fit/pistons.ts';
import { fitShells, type ShellHalf, type ShellPlace } from '../../../src/plan/fit/shells.ts';
import { type Fraction, fraction, parseDecimal } from '../../../src/quantity/fraction.ts';
import { effort } from '../../effort.ts';

const length = parseDecimal;
const band = (min: string, max: string) => ({
  min: length(min),
  max: length(max),
  middle: { n: length(min).n + length(max).n, d: 2n * length(min).d },
});

const NONE = fraction(0);
const EXACT = { below: NONE, above: NONE };

const alike = { mostDifference: fraction(0), thicker: 'lower' as const };

const half = (code: string, wall: Fraction, count = 20): ShellHalf => ({
  code,
  wall,
  within: NONE,
  undersize: 'std',
  count,
});

describe('halves of two sizes', () => {
  const placeFor = (min: string, max: string): ShellPlace => ({
    ...EXACT,
    room: length('0.2520'),
    wanted: band(min, max),
  });
  const stock = [half('thin', length('0.1245')), half('thick', length('0.1250'))];

  it('run together where that comes nearer to the middle, the thicker on the stated side', () => {
    const mixed = { mostDifference: length('0.0005'), thicker: 'lower' as const };
    const [chosen] = fitShells([placeFor('0.0020', '0.0030')], stock, mixed);
    expect([chosen?.upper.code, chosen?.lower.code]).toEqual(['thin', 'thick']);
    const upside = { ...mixed, thicker: 'upper' as const };
    const [other] = fitShells([placeFor('0.0020', '0.0030')], stock, upside);
    expect([other?.upper.code, other?.lower.code]).toEqual(['thick', 'thin']);
  });

  it('never do where the limits do not allow it, nor across undersizes', () => {
    const [chosen] = fitShells([placeFor('0.0020', '0.0030')], stock, alike);
    expect(chosen?.upper.code).toBe(chosen?.lower.code);
    const across = [
      stock[0] ?? half('', fraction(0)),
      { ...half('thick', length('0.1250')), undersize: '.002' },
    ];
    const free = { mostDifference: length('0.0005'), thicker: 'lower' as const };
    const [same] = fitShells([placeFor('0.0020', '0.0030')], across, free);
    expect(same?.upper.code).toBe(same?.lower.code);
  });

  it('are not chosen at all where none brings the clearance inside', () => {
    expect(fitShells([placeFor('0.0050', '0.0060')], stock, alike)).toEqual([undefined]);
  });
});

describe('pistons', () => {
  const piston = (mark: string, diameter: string, grams?: number): Piston => ({
    mark,
    diameter: length(diameter),
    weight: grams === undefined ? undefined : fraction(grams),
  });
  const wanted = band('0.0020', '0.0040');
  const bore = (size: string, name = ''): Bore => ({ ...EXACT, name, size: length(size), wanted });

  it('go to the bores that suit them all together, not one after another', () => {
    const set = fitPistons(
      [bore('4.1250'), bore('4.1260')],
      [piston('a', '4.1220'), piston('b', '4.1215')],
      undefined,
    );
    expect(set?.pistons.map(({ mark }) => mark)).toEqual(['b', 'a']);
  });

  it('are of one weight within the spread, and none that nobody weighed', () => {
    const stock = [
      piston('heavy', '4.1220', 900),
      piston('light', '4.1221', 880),
      piston('near', '4.1222', 882),
    ];
    const bores = [bore('4.1250'), bore('4.1250')];
    expect(
      fitPistons(bores, stock, fraction(5))
        ?.pistons.map(({ mark }) => mark)
        .sort(),
    ).toEqual(['light', 'near']);
    expect(fitPistons(bores, [piston('a', '4.1220'), piston('b', '4.1220')], fraction(5))).toBeUndefined();
  });

  it('that have run go back to their own bores, also where another would suit better', () => {
    const bores = [bore('4.1250', '1'), bore('4.1260', '2')];
    const [one, two] = [piston('a', '4.1220'), piston('b', '4.1215')];
    const chosen = (...stock: readonly Piston[]) => fitPistons(bores, stock, undefined)?.pistons;
    expect(chosen({ ...one, ranIn: '1' }, { ...two, ranIn: '2' })?.map(({ mark }) => mark)).toBeUndefined();
    expect(chosen({ ...one, ranIn: '1' }, two, piston('c', '4.1230'))?.map(({ mark }) => mark)).toEqual([
      'a',
      'c',
    ]);
    expect(chosen({ ...one, ranIn: '1' }, { ...two, ranIn: '1' })).toBeUndefined();
  });

  it('of 40 in stock go to twelve bores within a second', () => {
    const bores = Array.from({ length: 12 }, (_, index) => bore(`4.12${50 + index}`));
    const stock = Array.from({ length: 40 }, (_, index) =>
      piston(`${index}`, `4.12${10 + index}`, 880 + (index % 7)),
    );
    const set = fitPistons(bores, stock, fraction(3));
    expect(new Set(set?.pistons.map(({ mark }) => mark)).size).toBe(12);
    // A piece of that work takes about a millisecond.
    expect(effort(() => fitPistons(bores, stock, fraction(3)))).toBeLessThan(1000);
  });
});
