import { describe, expect, it } from 'vitest';
import { toNumber } from '../../src/quantity/fraction.ts';
import { type Files, findingsOf, rowsOf, shopOf, verdictsOf } from '../shopOf.ts';

const ENGINE = `kind: engine
name: Bench engine
units: { length: in, volume: in3 }
layout: { cylinders: 3, mains: 4, crankpins: 3 }
sizes: { bore: 4.125, stroke: 5 }
`;

const VEE = `kind: engine
name: Bench engine
units: { length: in }
layout: { mains: 3, crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }
`;

const REGISTER = `kind: instruments
instruments:
  depth: { type: depth micrometer, resolution: 0.0001 in, max_error: 0.0002 in }
`;

const PROTRUSION =
  '  liner_protrusion: { label: liner protrusion, quantity: length, positions: cylinder, instrument: depth micrometer }\n';

const shop = (characteristics: string): string =>
  `kind: shop\nunits: { length: in, volume: in3 }\ncharacteristics:\n${PROTRUSION}${characteristics}`;

const figure = (id: string, positions: string, formula: string, quantity = 'length'): string =>
  `  ${id}: { label: ${id.replaceAll('_', ' ')}, quantity: ${quantity}, positions: ${positions}, formula: "${formula}" }\n`;

const files = (characteristics: string, limits: string, readings: string, engine = ENGINE): Files => ({
  'shop.yaml': shop(characteristics),
  'instruments.yaml': REGISTER,
  'e/engine.yaml': engine,
  'e/l.yaml': `kind: limits\nsource: Invented.\nlimits: { ${limits} }\n`,
  'e/s.yaml': `kind: session\nstage: trial\ndate: 2026-02-03\nreadings:\n  ${readings}\n`,
});

const PROTRUSIONS = '- { measure: liner_protrusion, with: depth, at: { 1: 0.0040, 2: 0.0022, 3: 0.0031 } }';

const figureAt = (all: Files, id: string, position: string): number | undefined => {
  const row = rowsOf(all).find((each) => each.characteristic.id === id && each.position.name === position);
  const mean = row?.routes[0]?.mean;
  return mean === undefined ? undefined : toNumber(mean) / 254_000_000;
};

const SPREAD = figure('protrusion_spread', 'engine', 'spread(liner_protrusion[*])');

describe('a formula over several positions', () => {
  it('takes all of them, exactly on the limit and beyond it', () => {
    const all = (max: string) => files(SPREAD, `protrusion_spread: { new: { max: ${max} } }`, PROTRUSIONS);
    expect(verdictsOf(all('0.0018'))).toMatchObject({ 'protrusion_spread engine': 'ok' });
    expect(verdictsOf(all('0.0017'))).toMatchObject({ 'protrusion_spread engine': 'out' });
  });

  it.each([
    ['engine', 'max(liner_protrusion[*]) - min(liner_protrusion[*])', 'engine', 0.0018],
    ['engine', 'mean(liner_protrusion[*])', 'engine', 0.0031],
    ['engine', 'liner_protrusion[1] - liner_protrusion[3]', 'engine', 0.0009],
    ['cylinder', 'liner_protrusion - mean(liner_protrusion[*])', '2', -0.0009],
    ['cylinder', 'abs(liner_protrusion - liner_protrusion[next])', '1', 0.0018],
    ['cylinder', 'liner_protrusion - liner_protrusion[previous]', '3', 0.0009],
    ['cylinder', 'spread(liner_protrusion, liner_protrusion[neighbours])', '3', 0.0009],
    ['cylinder', 'spread(liner_protrusion, liner_protrusion[neighbours])', '2', 0.0018],
    ['crankpin', 'max(liner_protrusion[*])', '3', 0.0031],
  ])('at a %s: %s', (positions, formula, at, expected) => {
    const all = files(figure('own_figure', positions, formula), '', PROTRUSIONS);
    expect(figureAt(all, 'own_figure', at)).toBeCloseTo(expected, 10);
  });

  it('goes from the engine to a cylinder: a figure of the engine stands in each', () => {
    const own = `${SPREAD}${figure('share', 'cylinder', 'liner_protrusion / protrusion_spread', 'number')}`;
    const row = rowsOf(files(own, '', PROTRUSIONS)).find(
      ({ characteristic, position }) => characteristic.id === 'share' && position.name === '2',
    );
    expect(toNumber(row?.routes[0]?.mean ?? { n: 0n, d: 1n })).toBeCloseTo(22 / 18, 12);
  });

  it('has no value where there is no next, and none is missing there', () => {
    const own = figure('step_up', 'cylinder', 'liner_protrusion[next] - liner_protrusion');
    const verdicts = verdictsOf(files(own, 'step_up: { new: { max: 0.0010 } }', PROTRUSIONS));
    expect(verdicts).toMatchObject({ 'step_up 1': 'ok', 'step_up 2': 'ok' });
    expect(verdicts).not.toHaveProperty('step_up 3');
  });

  it('of a vee takes the rods of a pin, and the pin of a rod', () => {
    const own =
      figure('widest_rod', 'crankpin', 'max(rod_housing_bore[*])') +
      figure('beside_pin', 'cylinder', 'rod_housing_bore - crankpin_diameter');
    const readings =
      '- { measure: rod_housing_bore, at: { 1L: 2.6, 1R: 2.601, 2L: 2.602, 2R: 2.603 } }\n  - { measure: crankpin_diameter, at: { 1: 2.5, 2: 2.4 } }';
    const all = files(own, '', readings, VEE);
    expect(figureAt(all, 'widest_rod', '1')).toBeCloseTo(2.601, 10);
    expect(figureAt(all, 'widest_rod', '2')).toBeCloseTo(2.603, 10);
    expect(figureAt(all, 'beside_pin', '1R')).toBeCloseTo(0.101, 10);
    expect(figureAt(all, 'beside_pin', '2L')).toBeCloseTo(0.202, 10);
  });

  it('that lacks one position says which, and gives no figure of the others', () => {
    const all = files(
      SPREAD,
      '',
      '- { measure: liner_protrusion, with: depth, at: { 1: 0.0040, 3: 0.0031 } }',
    );
    expect(figureAt(all, 'protrusion_spread', 'engine')).toBeUndefined();
    expect(findingsOf(all).map(({ code, message }) => [code, message])).toContainEqual([
      'reading/formula',
      'protrusion spread cannot be worked out as spread(liner_protrusion[*]): there is no liner protrusion 2',
    ]);
  });
});

describe('the error of a formula over several positions (JCGM 100:2008, 5.1.2)', () => {
  const uOf = (formula: string, positions = 'engine'): number => {
    const all = files(figure('own_figure', positions, formula), '', PROTRUSIONS);
    return (
      rowsOf(all).find(({ characteristic }) => characteristic.id === 'own_figure')?.routes[0]?.route.u ?? -1
    );
  };
  /** Of a reading: half a step of 0.0001 in rectangular; the largest error of the micrometer is all readings' own. */
  const STEP = (0.00005 / Math.sqrt(3)) * 254_000_000;
  const LARGEST = (0.0002 / Math.sqrt(3)) * 254_000_000;

  it.each([
    ['one reading', 'liner_protrusion[1]', Math.hypot(STEP, LARGEST)],
    [
      'a spread: the micrometer cancels, two readings remain',
      'spread(liner_protrusion[*])',
      STEP * Math.SQRT2,
    ],
    ['greatest less least', 'max(liner_protrusion[*]) - min(liner_protrusion[*])', STEP * Math.SQRT2],
    [
      'a mean of three: the micrometer stays whole',
      'mean(liner_protrusion[*])',
      Math.hypot(STEP / Math.sqrt(3), LARGEST),
    ],
    ['a product', 'liner_protrusion[1] * 3 - liner_protrusion[2]', Math.hypot(3 * STEP, STEP, 2 * LARGEST)],
  ])('%s', (_, formula, expected) => {
    expect(uOf(formula)).toBeCloseTo(expected, 3);
  });

  it('of like readings is that of two of them, not none', () => {
    const all = {
      ...files(SPREAD, '', PROTRUSIONS),
      'e/s.yaml':
        'kind: session\nstage: trial\ndate: 2026-02-03\nreadings:\n  - { measure: liner_protrusion, with: depth, at: { 1: 0.0040, 2: 0.0040, 3: 0.0040 } }\n',
    };
    const row = rowsOf(all).find(({ characteristic }) => characteristic.id === 'protrusion_spread');
    expect(row?.routes[0]?.mean.n).toBe(0n);
    expect(row?.routes[0]?.route.u).toBeCloseTo(STEP * Math.SQRT2, 3);
  });
});

describe('a figure of nominal sizes alone', () => {
  const own =
    figure('crank_radius', 'engine', 'stroke / 2') +
    figure('radius_less_protrusion', 'cylinder', 'crank_radius - liner_protrusion') +
    figure('swept', 'engine', '0.785398 * bore * bore * stroke', 'volume');

  it('appears, judged by its limits, and what uses it is worked out', () => {
    const verdicts = verdictsOf(files(own, 'crank_radius: { new: { min: 2.5, max: 2.5 } }', PROTRUSIONS));
    expect(verdicts).toMatchObject({
      'crank_radius engine': 'ok',
      'radius_less_protrusion 1': null,
      'swept engine': null,
    });
  });

  it('is known to what stands before it as well', () => {
    const before = own.split('\n').filter(Boolean).toReversed().join('\n');
    const all = files(`${before}\n`, '', PROTRUSIONS);
    expect(figureAt(all, 'radius_less_protrusion', '1')).toBeCloseTo(2.496, 10);
    expect(figureAt(all, 'crank_radius', 'engine')).toBeCloseTo(2.5, 10);
  });

  it('has no error', () => {
    const row = rowsOf(files(own, '', PROTRUSIONS)).find(
      ({ characteristic }) => characteristic.id === 'crank_radius',
    );
    expect(row?.routes[0]?.route).toMatchObject({ u: 0, with: [], written: [] });
  });
});

describe('a formula that can never be worked out is refused with the words to type', () => {
  const refusalsOf = (characteristics: string, engine = ENGINE) =>
    shopOf(files(characteristics, '', PROTRUSIONS, engine)).diagnostics.map(({ code, message, help }) => ({
      code,
      message,
      help,
    }));

  it.each([
    [
      "an engine's figure with a cylinder's",
      figure('own_figure', 'engine', 'crankshaft_end_play - liner_protrusion'),
      'in the formula crankshaft_end_play - liner_protrusion: the engine has 3 values of liner_protrusion, at 1, 2, 3',
      'write max(liner_protrusion[*]), min, mean or spread of it',
    ],
    [
      'a range without the positions',
      figure('own_figure', 'engine', 'max(liner_protrusion) - min(liner_protrusion)'),
      'in the formula max(liner_protrusion) - min(liner_protrusion): max of one value is that value',
      'write max(liner_protrusion[*]) for all its positions',
    ],
    [
      'families that nothing relates',
      figure('own_figure', 'cylinder', 'cylinder_bore - main_journal_diameter'),
      'in the formula cylinder_bore - main_journal_diameter: main_journal_diameter is measured at a main, this at a cylinder, and the layout does not state which of them belong together',
      'name one, such as main_journal_diameter[1]; a characteristic of the engine may take max(main_journal_diameter[*])',
    ],
    [
      'the next of another row',
      figure('own_figure', 'cylinder', 'crankpin_diameter[next]'),
      'in the formula crankpin_diameter[next]: crankpin_diameter[next] is along the crankpin positions, and this is measured at a cylinder',
      'write crankpin_diameter, or max(crankpin_diameter[*]), min, mean or spread of it',
    ],
    [
      'a position that the engine has not',
      figure('own_figure', 'engine', 'liner_protrusion[7]'),
      'in the formula liner_protrusion[7]: the engine has no cylinder for liner_protrusion[7]',
      'it has 1, 2, 3; what holds for one engine belongs into its own limits document',
    ],
    [
      'positions of a size',
      figure('own_figure', 'engine', 'max(bore[*])'),
      'in the formula max(bore[*]): bore is a size and has no positions',
      'write bore',
    ],
    [
      'a name that nothing goes by',
      figure('own_figure', 'engine', 'max(liner_protrusio[*])'),
      'in the formula max(liner_protrusio[*]): no size or characteristic is called liner_protrusio',
      'did you mean liner_protrusion?',
    ],
    [
      'the result of a test',
      `${figure('own_figure', 'cylinder', 'crack_test + 1')}  crack_test: { label: crack test, quantity: pass or fail, positions: cylinder }\n`,
      'in the formula crack_test + 1: crack_test is a test, and a formula needs numbers',
      undefined,
    ],
  ])('%s', (_, characteristics, message, help) => {
    expect(refusalsOf(characteristics)).toEqual([{ code: 'document/formula', message, help }]);
  });

  it('figures that are worked out from themselves', () => {
    const circle =
      figure('one', 'engine', 'two + 1') +
      figure('two', 'engine', 'three + 1') +
      figure('three', 'engine', 'one');
    expect(refusalsOf(circle).map(({ message }) => message)).toEqual([
      'in the formula two + 1: one → two → three → one goes in a circle',
      'in the formula three + 1: two → three → one → two goes in a circle',
      'in the formula one: three → one → two → three goes in a circle',
    ]);
  });

  it('a plain number of a quantity that nothing states the unit of', () => {
    expect(refusalsOf(figure('own_figure', 'engine', '2 * turning_torque[1]', 'torque'))).toMatchObject([
      { code: 'document/formula' },
    ]);
    expect(refusalsOf(figure('own_figure', 'engine', 'stroke', 'torque'))).toMatchObject([
      { code: 'document/no-unit', help: 'write `units: { torque: lbf ft }` in this document' },
    ]);
  });

  it('what holds on an in-line engine is refused on a vee, with the rods of the pin', () => {
    const own = figure('own_figure', 'crankpin', 'rod_housing_bore - crankpin_diameter');
    expect(refusalsOf(own)).toEqual([]);
    expect(refusalsOf(own, VEE)).toContainEqual({
      code: 'document/formula',
      message:
        'in the formula rod_housing_bore - crankpin_diameter: crankpin 1 has 2 values of rod_housing_bore, at 1L, 1R',
      help: 'write max(rod_housing_bore[*]), min, mean or spread of it',
    });
  });
});
