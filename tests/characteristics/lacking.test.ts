import { describe, expect, it } from 'vitest';
import { isGap, isNeverBelowZero } from '../../src/characteristics/belowZero.ts';
import { cylinderOf, meanOf, totalOf } from '../../src/characteristics/block/volume.ts';
import { type Derivation, isExact } from '../../src/characteristics/characteristic.ts';
import { bothHalves, clearance, lessAll } from '../../src/characteristics/clearance.ts';
import { hasDistances, journalTaper } from '../../src/characteristics/form.ts';
import { columnsNamed, type Grid, gridOfOne, summary, valuesOf } from '../../src/characteristics/grid.ts';
import { parts } from '../../src/characteristics/parts.ts';
import {
  behindWhatTheyFollow,
  characteristics,
  registryWith,
  usualCharacteristics,
} from '../../src/characteristics/registry.ts';
import { exactly, standardUncertainty } from '../../src/measurement/value.ts';
import { fraction, toNumber } from '../../src/quantity/fraction.ts';
import { asWritten, gridOfRows, INCH, MILLIMETRE } from './exampleGrid.ts';

const inches = (rows: readonly (readonly string[])[], stations?: readonly string[]): Grid =>
  gridOfRows(rows, INCH, stations);

const ONE = inches([['3.2500']]);
const NOT_TAKEN = inches([['~']]);

/** Those that take readings beside others, each by its name: a sum takes what there is, and is asked for all. */
const ofReadings = characteristics.flatMap(({ id, derivations }) =>
  derivations
    .filter(({ problem, places }) => problem === undefined && places === undefined)
    .filter(({ inputs }) => inputs.length > 1 && id !== 'clearance_volume')
    .map((derivation): [string, Derivation] => [`${id}: ${derivation.route}`, derivation]),
);

describe('what lacks a reading gives nothing', () => {
  it.each(ofReadings)('%s', (_, { inputs, compute }) => {
    for (const lacking of inputs.keys()) {
      const withoutOne = inputs.map((_id, index) => (index === lacking ? undefined : ONE));
      expect(compute(withoutOne as readonly Grid[], {}), inputs[lacking]).toBeUndefined();
      const notTaken = inputs.map((_id, index) => (index === lacking ? NOT_TAKEN : ONE));
      expect(compute(notTaken, {}), inputs[lacking]).toBeUndefined();
    }
  });

  it('and so do a width without one of its rods, a mean of nothing and a sum of nothing', () => {
    expect(lessAll(ONE, [ONE, NOT_TAKEN])).toBeUndefined();
    expect(lessAll(NOT_TAKEN, [ONE])).toBeUndefined();
    expect(meanOf(undefined)).toBeUndefined();
    expect(meanOf(NOT_TAKEN)).toBeUndefined();
    expect(totalOf([])).toBeUndefined();
    expect(totalOf([NOT_TAKEN])).toBeUndefined();
    expect(summary([])).toBeUndefined();
    const value = exactly(fraction(1));
    expect(cylinderOf(undefined, value)).toBeUndefined();
    expect(cylinderOf(value, undefined)).toBeUndefined();
  });
});

describe('a swept volume by the stroke as drawn', () => {
  const [, asDrawn] = characteristics.find(({ id }) => id === 'swept_volume')?.derivations ?? [];
  const bore = gridOfRows([['86']], MILLIMETRE);

  it('carries a tenth of a millimetre of doubt about the stroke, spread evenly', () => {
    const stroke = fraction(86 * 10_000_000);
    const found = asDrawn?.compute([bore], { sizes: new Map([['stroke', stroke]]) });
    if (found === undefined) throw new Error('no volume');
    const area = (Math.PI / 4) * 8.6 ** 2;
    expect(toNumber(found.mean.amount)).toBeCloseTo(area * 8.6, 6);
    expect(standardUncertainty(found.mean)).toBeCloseTo((area * 0.01) / Math.sqrt(3), 6);
    expect([...found.mean.terms.keys()]).toEqual(['stroke as drawn']);
    expect(found.lastDigit).toEqual(fraction(1, 100));
  });

  it('is none where the engine document gives none', () => {
    expect(asDrawn?.compute([bore], { sizes: new Map() })).toBeUndefined();
    expect(asDrawn?.compute([bore], {})).toBeUndefined();
  });
});

describe('thicknesses of shells', () => {
  const both = (...figures: readonly string[]) => {
    const found = bothHalves(inches(figures.map((figure) => [figure])));
    return found && asWritten(found.amount, INCH, '0.0000');
  };

  it.each([
    [['0.1250'], '0.2500'],
    [['0.1250', '0.1252'], '0.2502'],
    [['0.1250', '0.1252', '0.1254'], '0.2504'],
    [['0.1250', '0.1252', '0.1254', '0.1256'], '0.2506'],
  ])('%j come to %s of both halves', (figures, expected) => {
    expect(both(...figures)).toBe(expected);
  });
});

describe('readings at the points of a part', () => {
  const grid: Grid = {
    ...gridOfRows(
      [
        ['1', '2', '3'],
        ['4', '~', '6'],
      ],
      INCH,
      ['front', 'rear'],
      ['a', 'b', 'a'],
    ),
  };
  const figures = (of: Grid) => valuesOf(of).map(({ amount }) => toNumber(amount) / 254_000_000);

  it('are taken row by row, without those that were not read', () => {
    expect(figures(grid)).toEqual([1, 2, 3, 4, 6]);
    expect(figures(gridOfOne(exactly(fraction(254_000_000))))).toEqual([1]);
    expect(gridOfOne(exactly(fraction(1)))).toMatchObject({ stations: [{}], directions: [undefined] });
  });

  it('are those of the directions that are named, or all', () => {
    const named = columnsNamed(grid, ['a']);
    expect(named).toMatchObject({ directions: ['a', 'a'], stations: grid.stations });
    expect(figures(named)).toEqual([1, 3, 4, 6]);
    expect(columnsNamed(grid, ['thrust'])).toBe(grid);
  });

  it('of like figures the first is the least and the greatest', () => {
    const [first, second] = [exactly(fraction(5)), exactly(fraction(5))];
    const found = summary([first, second]);
    expect(found?.least).toBe(first);
    expect(found?.greatest).toBe(first);
  });
});

describe('a shaft in a bore', () => {
  it('of a bore that was not read at a station nothing is taken there', () => {
    const bore = inches([['3.2510'], ['~']]);
    const journal = inches([['3.2490'], ['3.2400']]);
    const found = clearance(bore, journal);
    expect(found && asWritten(found.greatest.amount, INCH, '0.0000')).toBe('0.0020');
  });

  it('pairs stations by name though others have none', () => {
    const bore = inches([['3.2510'], ['3.2520']], ['front']);
    const journal = inches([['3.2490'], ['3.2400']], ['front']);
    const found = clearance(bore, journal);
    expect(found && asWritten(found.greatest.amount, INCH, '0.0000')).toBe('0.0020');
  });
});

describe('distances of stations', () => {
  const at = (...distances: readonly (number | undefined)[]): Grid => ({
    ...inches(distances.map((_, index) => [`3.24${80 + 2 * index}`])),
    stations: distances.map((distance) =>
      distance === undefined ? {} : { distance: fraction(distance * 254_000_000) },
    ),
  });

  it.each<[readonly (number | undefined)[], boolean]>([
    [[0, 1], true],
    [[0, 1, 2], true],
    [[0], false],
    [[0, undefined], false],
    [[undefined, 1], false],
    [[], false],
  ])('%j give a taper for a length: %s', (distances, expected) => {
    expect(hasDistances(at(...distances))).toBe(expected);
  });

  it('are nothing where nothing was read', () => {
    const grid = { ...at(0, 1), rows: [[undefined], [undefined]] };
    expect(hasDistances(grid)).toBe(false);
  });

  it.each<[readonly (number | undefined)[], string | undefined]>([
    [[0, 2], '0.0001'],
    [[2, 0], '0.0001'],
    [[undefined, 2], undefined],
    [[0, undefined], undefined],
    [[1, 1], '0.0002'],
  ])('%j: a taper of .0002 in is, for an inch, %s', (distances, expected) => {
    const found = journalTaper(at(...distances), { per: fraction(254_000_000) });
    expect(found && asWritten(found.greatest.amount, INCH, '0.0000')).toBe(expected);
  });
});

describe('the form of a journal in words', () => {
  const remark = (...figures: readonly string[]) =>
    journalTaper(
      inches(
        figures.map((figure) => [figure]),
        ['a', 'b', 'c', 'd'].slice(0, figures.length),
      ),
      {},
    )?.remark;

  it.each([
    [['3.2480', '3.2480', '3.2480'], undefined],
    [['3.2480', '3.2481', '3.2480'], 'barrel'],
    [['3.2480', '3.2479', '3.2480'], 'hollow'],
    [['3.2480', '3.2481', '3.2482'], 'c larger'],
    [['3.2480', '3.2481', '3.2481'], 'c larger'],
    [['3.2480', '3.2480', '3.2482', '3.2481'], 'd larger, barrel'],
    [['3.2482', '3.2480', '3.2481', '3.2481'], 'a larger, hollow'],
    [['3.2480', '3.2479', '3.2483', '3.2481'], 'd larger, barrel'],
  ])('%j is %s', (figures, expected) => {
    expect(remark(...figures)).toBe(expected);
  });

  it('a station without a name is not named', () => {
    expect(journalTaper(inches([['3.2480'], ['3.2481']]), {})?.remark).toBeUndefined();
  });
});

describe('figures of the registry', () => {
  const find = (id: string) => {
    const found = registryWith([]).find(id);
    if (found === undefined) throw new Error(id);
    return found;
  };

  it.each([
    ['main_bearing_clearance', true, true],
    ['crankshaft_end_play', true, true],
    ['main_journal_diameter', false, true],
    ['main_journal_out_of_round', false, true],
    ['main_journal_taper', false, false],
    ['liner_protrusion', false, false],
  ])('%s opens with wear: %s, is never below zero: %s', (id, gap, never) => {
    expect([isGap(find(id)), isNeverBelowZero(find(id))]).toEqual([gap, never]);
  });

  it('a test and a count are exact, a length is not', () => {
    expect(isExact({ quantity: 'pass or fail', usual: 'other' })).toBe(true);
    expect(isExact({ quantity: 'length', usual: 'micrometer' })).toBe(false);
    expect(isExact({ quantity: 'length', usual: 'by eye' })).toBe(true);
    expect(isExact({ quantity: 'count', usual: 'other' })).toBe(true);
  });

  it('what most overhauls measure stands first, and in the same order as in the whole', () => {
    const usual = usualCharacteristics.map(({ id }) => id);
    const all = characteristics.map(({ id }) => id);
    expect(usual[0]).toBe('main_journal_diameter');
    expect(usual).toContain('compression_pressure');
    expect(usual).toEqual(all.filter((id) => usual.includes(id)));
  });

  it('shops that add nothing share one registry', () => {
    expect(registryWith([])).toBe(registryWith([]));
    const built = { characteristics: characteristics.slice(0, 1), parts };
    expect(registryWith([], undefined, built).all).toHaveLength(1);
    expect(registryWith([]).all).toHaveLength(characteristics.length);
    expect(registryWith([]).ids()).toHaveLength(characteristics.length);
  });

  it('what follows another stands behind it, whatever follows nothing known is not lost', () => {
    const each = (id: string, after?: string) => ({
      ...find('cylinder_bore'),
      id,
      ...(after === undefined ? {} : { after }),
    });
    const placed = behindWhatTheyFollow([
      each('c', 'b'),
      each('a'),
      each('lost', 'nothing'),
      each('b', 'a'),
      each('z'),
      each('d', 'a'),
      each('self', 'self'),
    ]);
    expect(placed.map(({ id }) => id)).toEqual(['a', 'b', 'c', 'd', 'z', 'lost', 'self']);
  });
});
