import { describe, expect, it } from 'vitest';
import { toDecimal } from '../../src/quantity/fraction.ts';
import { type Files, rowsOf, sessionOf } from '../shopOf.ts';
import { type PublishedRange, rangeOf } from './publishedRange.ts';
import { type Readings, workedOut } from './workedOut.ts';

const range = (
  [what, source]: readonly [string, string],
  measure: string,
  unit: 'in' | 'mm',
  tight: Readings,
  loose: Readings,
  [least, greatest]: readonly [string, string],
): PublishedRange => ({ what, source, measure, unit, tight, loose, least, greatest });

const PUMP = 'TM 5-4310-354-14, tables 5-2 and 7-1';
const SERVICE = 'service data of a maker, read in a copy';

const RANGES: readonly PublishedRange[] = [
  range(
    ['a pump shaft in its bush', PUMP],
    'pump_shaft_clearance',
    'in',
    { pump_bush_bore: '0.6255', pump_shaft_diameter: '0.6245' },
    { pump_bush_bore: '0.6265', pump_shaft_diameter: '0.6240' },
    ['0.0010', '0.0025'],
  ),
  range(
    ['a pump gear in its body', PUMP],
    'pump_body_clearance',
    'in',
    { pump_body_bore: '1.5005', pump_gear_diameter: '1.4985' },
    { pump_body_bore: '1.5015', pump_gear_diameter: '1.4975' },
    ['0.0020', '0.0040'],
  ),
  range(
    ['a pump gear under its cover, computed', `sizes of ${PUMP}`],
    'pump_end_clearance',
    'in',
    { pump_body_depth: '1.5640', pump_gear_width: '1.5620' },
    { pump_body_depth: '1.5650', pump_gear_width: '1.5610' },
    ['0.0020', '0.0040'],
  ),
  range(
    ['a relief plunger', 'TM 5-3895-382-24'],
    'relief_plunger_clearance',
    'mm',
    { relief_valve_bore: '18.24', relief_plunger_diameter: '18.18' },
    { relief_valve_bore: '18.27', relief_plunger_diameter: '18.16' },
    ['0.06', '0.11'],
  ),
  range(
    ['another relief plunger', 'TM 5-3895-382-24'],
    'relief_plunger_clearance',
    'mm',
    { relief_valve_bore: '16.00', relief_plunger_diameter: '15.98' },
    { relief_valve_bore: '16.03', relief_plunger_diameter: '15.95' },
    ['0.02', '0.08'],
  ),
  range(
    ['a relief plunger in inches', 'TM 5-3825-225-14&P, paras. 1-24 to 1-60'],
    'relief_plunger_clearance',
    'in',
    { relief_valve_bore: '0.5605', relief_plunger_diameter: '0.5595' },
    { relief_valve_bore: '0.5625', relief_plunger_diameter: '0.5585' },
    ['0.001', '0.004'],
  ),
  range(
    ['a gear pressed on its shaft, interference .0013 to .0021', 'TM 5-3825-225-14&P, paras. 1-24 to 1-60'],
    'gear_fit',
    'in',
    { gear_bore: '0.4965', gear_shaft_diameter: '0.4986' },
    { gear_bore: '0.4970', gear_shaft_diameter: '0.4983' },
    ['-0.0021', '-0.0013'],
  ),
  range(
    ['an outer rotor', SERVICE],
    'pump_body_clearance',
    'mm',
    { pump_body_bore: '87.275', pump_gear_diameter: '87.175' },
    { pump_body_bore: '87.325', pump_gear_diameter: '87.095' },
    ['0.100', '0.230'],
  ),
  range(
    ['a rotor hub', SERVICE],
    'pump_shaft_clearance',
    'mm',
    { pump_bush_bore: '53.380', pump_shaft_diameter: '53.335' },
    { pump_bush_bore: '53.420', pump_shaft_diameter: '53.310' },
    ['0.045', '0.110'],
  ),
];

describe('a fit of the oil pump that a source prints', () => {
  it.each(RANGES)('is what its parts leave: $what, $least to $greatest $unit ($source)', (published) => {
    expect(rangeOf(published)).toEqual([published.least, published.greatest]);
  });
});

describe('leak-down', () => {
  it('of 60 of 80 psi is a quarter (FAA AC 43.13-1B, 8-14; service data of a car engine: 25 % at most)', () => {
    const given = { leak_down_supply: '80 psi', leak_down_held: '60 psi' };
    expect(workedOut({ measure: 'leak_down', unit: '%' }, given, '25')).toBe('25');
  });
});

/** Weights of a magazine's V8 engine of 90 degrees (0906chp); it prints them, the sums are computed. */
const V8_OF_A_MAGAZINE: Readings = {
  piston_weight: '583.9',
  piston_pin_weight: '178.4',
  ring_set_weight: '69.5',
  rod_small_end_weight: '162.4',
  rod_big_end_weight: '229.8',
  rod_shell_weight: '23.7',
};

const v8 = (measure: string, weights: Readings, stated: Readings): Files => {
  const blocks = [
    ...Object.entries(weights).map(
      ([id, each]) => `- { measure: ${id}, at: { 1: ${each} g, 2: ${each} g } }`,
    ),
    ...Object.entries(stated).map(([id, each]) => `- { measure: ${id}, value: ${each} }`),
  ];
  return {
    'e/engine.yaml': 'kind: engine\nname: A\nlayout: { cylinders: 2, mains: 2, crankpins: { 1: [1, 2] } }\n',
    'e/limits.yaml': `kind: limits\nsource: Wide.\nlimits: { ${measure}: { new: { max: 100000 g } } }\n`,
    'e/s.yaml': sessionOf('machined', blocks.join('\n')),
  };
};

const weighed = (measure: string, weights: Readings, stated: Readings = {}): string => {
  const [row] = rowsOf(v8(measure, weights, stated)).filter(
    ({ characteristic }) => characteristic.id === measure,
  );
  const mean = row?.routes[0]?.mean;
  return mean === undefined ? 'nothing' : toDecimal(mean, 1);
};

describe('balance', () => {
  it('reciprocating weight of a rod is what goes up and down with it', () => {
    expect(weighed('reciprocating_weight', V8_OF_A_MAGAZINE)).toBe('994.2');
  });

  it('bobweight of a pin of two rods is both rotating weights, half of both reciprocating ones, and oil', () => {
    const stated = { balance_factor: '50 %', oil_allowance: '4 g' };
    expect(weighed('bobweight', V8_OF_A_MAGAZINE, stated)).toBe('1505.2');
  });

  it('of two big ends and their shells is 1333 g (magazine article on a 400 in3 engine: (621.5 + 45) × 2)', () => {
    const weights = { ...V8_OF_A_MAGAZINE, rod_big_end_weight: '621.5', rod_shell_weight: '45' };
    expect(weighed('bobweight', weights, { balance_factor: '0 %', oil_allowance: '0 g' })).toBe('1333.0');
  });

  it('takes both rods of a pin or says nothing', () => {
    const { 'e/s.yaml': session = '', ...files } = v8('bobweight', V8_OF_A_MAGAZINE, {
      balance_factor: '50 %',
      oil_allowance: '4 g',
    });
    const one = session.replace(
      'rod_big_end_weight, at: { 1: 229.8 g, 2: 229.8 g }',
      'rod_big_end_weight, at: { 1: 229.8 g }',
    );
    expect(one).not.toBe(session);
    const rows = rowsOf({ ...files, 'e/s.yaml': one });
    expect(rows.some(({ characteristic }) => characteristic.id === 'bobweight')).toBe(false);
  });

  it('keeps the error of the scale: one gram on each of the weights that it stands on', () => {
    const [row] = rowsOf(
      v8('bobweight', V8_OF_A_MAGAZINE, { balance_factor: '50 %', oil_allowance: '4 g' }),
    ).filter(({ characteristic }) => characteristic.id === 'bobweight');
    expect(row?.routes[0]?.route.u).toBeGreaterThan(0.5);
    expect(row?.routes[0]?.route.inputs.map(({ characteristic }) => characteristic.id)).toEqual([
      'rotating_weight',
      'rotating_weight',
      'balance_factor',
      'reciprocating_weight',
      'reciprocating_weight',
      'oil_allowance',
    ]);
  });
});

describe('crank angles that come round', () => {
  it('an event that is written in the turn before gives the same duration, taken in its turn', () => {
    const of = (opening: string) =>
      rowsOf({
        'e/engine.yaml': 'kind: engine\nname: A\nlayout: { cylinders: 1, mains: 2, crankpins: 1 }\n',
        'e/limits.yaml':
          'kind: limits\nsource: Invented.\nlimits: { intake_opening: { new: -10 to 10 }, intake_duration: { new: 210 to 220 }, intake_centreline: { new: 108 to 118 } }\n',
        'e/s.yaml': sessionOf(
          'rebuild',
          `- { measure: intake_opening, at: { 1: ${opening} } }\n- { measure: intake_closing, at: { 1: 40 } }`,
        ),
      }).map(({ characteristic, judgement }) => `${characteristic.id} ${judgement.verdict}`);
    expect(of('-5')).toEqual([
      'intake_opening ok',
      'intake_closing null',
      'intake_duration ok',
      'intake_centreline ok',
    ]);
    expect(of('715')).toEqual(of('-5'));
    expect(of('30')).toContain('intake_opening out');
  });
});
