import { describe, expect, it } from 'vitest';
import { toDecimal } from '../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../src/quantity/units.ts';
import { limitsOf, rowsOf, sessionOf, verdictsOf } from '../shopOf.ts';
import { type PublishedRange, rangeOf } from './publishedRange.ts';
import { workedOut } from './workedOut.ts';

const RANGES: readonly PublishedRange[] = [
  {
    what: 'thrust clearance, .002 to .008 in',
    source: 'TM 9-2815-256-24, p. 3-185: bearing 1.528 to 1.530; journal 1.532 to 1.536 computed from them',
    measure: 'crankshaft_end_play',
    unit: 'in',
    tight: { thrust_journal_width: '1.532', thrust_bearing_width: '1.530' },
    loose: { thrust_journal_width: '1.536', thrust_bearing_width: '1.528' },
    least: '0.002',
    greatest: '0.008',
  },
  {
    what: 'the same end play over a housing and both washers, .0040 to .0110 in',
    source:
      'TM 55-1905-221-14-1, table 1-1: washers .1205 to .1220, end play .0040 to .0110; housing and journal computed from them',
    measure: 'crankshaft_end_play',
    unit: 'in',
    tight: {
      thrust_journal_width: '1.4930',
      thrust_housing_width: '1.2450',
      thrust_washer_thickness: '0.1220',
    },
    loose: {
      thrust_journal_width: '1.4970',
      thrust_housing_width: '1.2450',
      thrust_washer_thickness: '0.1205',
    },
    least: '0.0040',
    greatest: '0.0110',
  },
  {
    what: 'a rod on its pin, .200 to .400 mm',
    source:
      'TM 5-4320-302-14, p. 6-181: .200 to .400; pin 34.000 to 34.039 of p. 6-145, width computed from them',
    measure: 'rod_side_clearance',
    unit: 'mm',
    tight: { crankpin_width: '34.000', rod_big_end_width: '33.800' },
    loose: { crankpin_width: '34.039', rod_big_end_width: '33.639' },
    least: '0.200',
    greatest: '0.400',
  },
  ...(
    [
      ['90.25', '90.26', '90.226', '90.244'],
      ['90.50', '90.51', '90.476', '90.494'],
    ] as const
  ).map(
    ([small, large, thin, thick]): PublishedRange => ({
      what: `a piston in a bore that was made ${small} mm, .006 to .034 mm`,
      source: 'service data of a sports car engine: an oversize keeps the fit',
      measure: 'piston_clearance',
      unit: 'mm',
      tight: { cylinder_bore: small, piston_diameter: thick },
      loose: { cylinder_bore: large, piston_diameter: thin },
      least: '0.006',
      greatest: '0.034',
    }),
  ),
  {
    what: 'a piston in its bore, .035 to .057 mm',
    source: 'service data of a 4.6 litre car engine',
    measure: 'piston_clearance',
    unit: 'mm',
    tight: { cylinder_bore: '94.000', piston_diameter: '93.965' },
    loose: { cylinder_bore: '94.012', piston_diameter: '93.955' },
    least: '0.035',
    greatest: '0.057',
  },
  {
    what: 'a piston in its bore, .025 to .055 mm',
    source: 'service data of a small car engine',
    measure: 'piston_clearance',
    unit: 'mm',
    tight: { cylinder_bore: '73.392', piston_diameter: '73.367' },
    loose: { cylinder_bore: '73.408', piston_diameter: '73.353' },
    least: '0.025',
    greatest: '0.055',
  },
];

describe('a range of crankshaft, rods and pistons that is printed', () => {
  it.each(RANGES)('is what its parts leave: $what ($source)', (printed) => {
    expect(rangeOf(printed)).toEqual([printed.least, printed.greatest]);
  });
});

/** All cylinders alike. */
function displacementOf(
  cylinders: number,
  bore: string,
  stroke: string,
  unit: 'cc' | 'in3',
  like: string,
): string {
  const length = unit === 'cc' ? 'mm' : 'in';
  const all = Array.from({ length: cylinders }, (_, index) => `${index + 1}: ${bore}`).join(', ');
  const rows = rowsOf({
    'e/engine.yaml': `kind: engine\nname: A\nunits: { length: ${length} }\nsizes: { stroke: ${stroke} }\nlayout: { cylinders: ${cylinders} }\n`,
    'e/limits.yaml': limitsOf('displacement: { new: { max: 99 L } }'),
    'e/s.yaml': sessionOf('rebuild', `- { measure: cylinder_bore, at: { ${all} } }`),
  });
  const [judged] = rows.find(({ characteristic }) => characteristic.id === 'displacement')?.routes ?? [];
  if (judged === undefined) throw new Error('no displacement was worked out');
  return toDecimal(fromBase(judged.mean, unitNamed(unit)), /\.(\d+)/.exec(like)?.[1]?.length ?? 0);
}

describe('a displacement that is printed', () => {
  it.each([
    [
      '4 cylinders of 68 x 75 mm, 1089.5 cm³',
      'Mathur and Sharma, as a notebook quotes it',
      4,
      '68',
      '75',
      'cc',
      '1089.5',
    ],
    ['8 of 4 x 3.52 in, 353.86 in³', 'a page on displacement', 8, '4', '3.52', 'in3', '353.87'],
    ['8 of 99.0 x 92.0 mm, 5665 cc', 'service data of a V8', 8, '99.0', '92.0', 'cc', '5665.5'],
    [
      '8 of 5.5 x 5.4 in, 1026.32 in³: it multiplies a rounded value',
      'a general handbook of the FAA',
      8,
      '5.5',
      '5.4',
      'in3',
      '1026.36',
    ],
    ['4 of 87 x 69 mm, 1641 cc', 'a parts seller’s note', 4, '87', '69', 'cc', '1640.7'],
    [
      '8 of 101.618 x 92.0 mm, misprinted 5697 cc',
      'a copy of service data of a V8',
      8,
      '101.618',
      '92.0',
      'cc',
      '5969',
    ],
  ] as const)('is the sum of its cylinders: %s (%s)', (_, _source, cylinders, bore, stroke, unit, volume) => {
    expect(displacementOf(cylinders, bore, stroke, unit, volume)).toBe(volume);
  });
});

/** The bar's ends are read so far apart, and the limit counts for a length. */
const bendOver = (bar: string, limit: string, ends: readonly [string, string]): string | null | undefined =>
  verdictsOf({
    'e/engine.yaml': 'kind: engine\nname: A\nunits: { length: mm }\nlayout: { cylinders: 1 }\n',
    'e/limits.yaml': limitsOf(`rod_bend: ${limit}`),
    'e/s.yaml': sessionOf(
      'rebuild',
      `- { measure: rod_bar_height, stations: { front: 0 mm, rear: ${bar} }, at: { 1: [${ends.join(', ')}] } }`,
    ),
  })['rod_bend 1'];

describe('bend is judged for the length that its limit names', () => {
  it.each([
    [
      '.038 mm per 25 mm on a bar of 203 mm, service data of a car engine',
      '203',
      '{ per: 25 mm, wear: { max: 0.038 mm } }',
      '0.308',
      '0.309',
    ],
    [
      '.05 mm per 100 mm on a bar of 203 mm, service data of a car engine',
      '203',
      '{ per: 100 mm, wear: { max: 0.05 mm } }',
      '0.101',
      '0.102',
    ],
    [
      '.0005 in per inch on a bar of 8 in, TM 9-2815-220-24, WP 0143-8',
      '8 in',
      '{ per: 1 in, wear: { max: 0.0005 in } }',
      '0.0040 in',
      '0.0041 in',
    ],
    [
      '.025 mm per 100 mm on a bar of 200 mm, TM 10-3930-653-14&P, p. 60',
      '200',
      '{ per: 100 mm, wear: { max: 0.025 mm } }',
      '0.050',
      '0.051',
    ],
  ])('%s', (_, bar, limit, within, beyond) => {
    expect(bendOver(bar, limit, ['0.000', within])).toBe('ok');
    expect(bendOver(bar, limit, ['0.000', beyond])).toBe('out');
    expect(bendOver(bar, limit, [beyond, '0.000'])).toBe('out');
  });
});

describe('a stroke', () => {
  it('is twice the throw, and what the piston travels (geometry)', () => {
    const limits = 'crank_stroke: { new: { max: 10 } }';
    const wanted = { measure: 'crank_stroke', unit: 'in' };
    expect(workedOut(wanted, { crank_throw: '2.7000' }, '5.4000', { limits })).toBe('5.4000');
    expect(workedOut(wanted, { piston_travel: '5.4010' }, '5.4010', { limits })).toBe('5.4010');
  });
});
