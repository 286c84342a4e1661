import { describe, expect, it } from 'vitest';
import { fitPistons, type StockPiston } from '../../../src/plan/fit/pistons.ts';
import { fitShells, type ShellHalf } from '../../../src/plan/fit/shells.ts';
import { type Fraction, fraction, parseDecimal, toDecimal } from '../../../src/quantity/fraction.ts';

const length = parseDecimal;
const band = (min: string, max: string) => ({
  min: length(min),
  max: length(max),
  middle: { n: length(min).n + length(max).n, d: 2n * length(min).d },
});

const middleOf = (low: string, high: string): Fraction => band(low, high).middle;

const alike = { mostDifference: fraction(0), thicker: 'lower' as const };

const half = (code: string, wall: Fraction, count = 20): ShellHalf => ({
  code,
  wall,
  undersize: 'std',
  count,
});

describe('shells chosen by measured sizes are those of the published table', () => {
  // A maker's shop manual, January 1982, p. 12-10 (crankpin A B C by rod 1 2 3): millimetres, the middle of each class.
  const pins = { A: ['35.992', '36.000'], B: ['35.984', '35.992'], C: ['35.976', '35.984'] } as const;
  const rods = { 1: ['39.000', '39.008'], 2: ['39.008', '39.016'], 3: ['39.016', '39.024'] } as const;
  const shells = [
    half('A', middleOf('1.502', '1.506')),
    half('B', middleOf('1.498', '1.502')),
    half('C', middleOf('1.494', '1.498')),
    half('D', middleOf('1.490', '1.494')),
    half('E', middleOf('1.486', '1.490')),
  ];
  const MATRIX: readonly (readonly [rod: 1 | 2 | 3, pin: 'A' | 'B' | 'C', shell: string])[] = [
    [1, 'A', 'E'],
    [1, 'B', 'D'],
    [1, 'C', 'C'],
    [2, 'A', 'D'],
    [2, 'B', 'C'],
    [2, 'C', 'B'],
    [3, 'A', 'C'],
    [3, 'B', 'B'],
    [3, 'C', 'A'],
  ];

  it.each(MATRIX)('rod %s on pin %s takes shell %s', (rod, pin, shell) => {
    const place = {
      housing: middleOf(rods[rod][0], rods[rod][1]),
      journal: middleOf(pins[pin][0], pins[pin][1]),
    };
    const [chosen] = fitShells([place], shells, band('0.020', '0.044'), alike) ?? [];
    expect([chosen?.upper.code, chosen?.lower.code]).toEqual([shell, shell]);
    expect(toDecimal(chosen?.clearance ?? fraction(0), 3)).toBe('0.032');
  });
});

describe('halves of two sizes', () => {
  const place = { housing: length('3.2510'), journal: length('2.9990') };
  const stock = [half('thin', length('0.1245')), half('thick', length('0.1250'))];

  it('run together where that comes nearer to the middle, the thicker on the stated side', () => {
    const mixed = { mostDifference: length('0.0005'), thicker: 'lower' as const };
    const [chosen] = fitShells([place], stock, band('0.0020', '0.0030'), mixed) ?? [];
    expect([chosen?.upper.code, chosen?.lower.code]).toEqual(['thin', 'thick']);
    const upside = { ...mixed, thicker: 'upper' as const };
    const [other] = fitShells([place], stock, band('0.0020', '0.0030'), upside) ?? [];
    expect([other?.upper.code, other?.lower.code]).toEqual(['thick', 'thin']);
  });

  it('never do where the limits do not allow it, nor across undersizes', () => {
    const [chosen] = fitShells([place], stock, band('0.0020', '0.0030'), alike) ?? [];
    expect(chosen?.upper.code).toBe(chosen?.lower.code);
    const across = [
      stock[0] ?? half('', fraction(0)),
      { ...half('thick', length('0.1250')), undersize: '.002' },
    ];
    const free = { mostDifference: length('0.0005'), thicker: 'lower' as const };
    const [same] = fitShells([place], across, band('0.0020', '0.0030'), free) ?? [];
    expect(same?.upper.code).toBe(same?.lower.code);
  });

  it('are not chosen at all where none brings the clearance inside', () => {
    expect(fitShells([place], stock, band('0.0050', '0.0060'), alike)).toBeUndefined();
  });
});

describe('pistons', () => {
  const piston = (mark: string, diameter: string, grams?: number): StockPiston => ({
    mark,
    diameter: length(diameter),
    weight: grams === undefined ? undefined : fraction(grams),
  });
  const wanted = band('0.0020', '0.0040');

  it('go to the bores that suit them all together, not one after another', () => {
    const set = fitPistons(
      [length('4.1250'), length('4.1260')],
      [piston('a', '4.1220'), piston('b', '4.1215')],
      wanted,
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
    const bores = [length('4.1250'), length('4.1250')];
    expect(
      fitPistons(bores, stock, wanted, fraction(5))
        ?.pistons.map(({ mark }) => mark)
        .sort(),
    ).toEqual(['light', 'near']);
    expect(
      fitPistons(bores, [piston('a', '4.1220'), piston('b', '4.1220')], wanted, fraction(5)),
    ).toBeUndefined();
  });

  it('of 40 in stock go to twelve bores without a long search', () => {
    const bores = Array.from({ length: 12 }, (_, index) => length(`4.12${50 + index}`));
    const stock = Array.from({ length: 40 }, (_, index) =>
      piston(`${index}`, `4.12${10 + index}`, 880 + (index % 7)),
    );
    const set = fitPistons(bores, stock, wanted, fraction(3));
    expect(new Set(set?.pistons.map(({ mark }) => mark)).size).toBe(12);
  });
});
