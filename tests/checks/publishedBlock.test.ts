import { describe, expect, it } from 'vitest';
import { type PublishedRange, rangeOf } from './publishedRange.ts';
import { workedOut } from './workedOut.ts';

const RANGES: readonly PublishedRange[] = [
  {
    what: 'a liner flange over its plate and gasket, .0013 to .0069 in',
    source: 'TM 5-3805-263-14&P-2: flange .4048 ± .0008, plate .3925 ± .0010, gasket .0082 ± .0010',
    measure: 'liner_protrusion',
    unit: 'in',
    tight: {
      liner_flange_thickness: '0.4040',
      spacer_plate_thickness: '0.3935',
      spacer_gasket_thickness: '0.0092',
    },
    loose: {
      liner_flange_thickness: '0.4056',
      spacer_plate_thickness: '0.3915',
      spacer_gasket_thickness: '0.0072',
    },
    least: '0.0013',
    greatest: '0.0069',
  },
  {
    what: 'a liner flange in its counterbore, .001 to .005 in',
    source: 'sizes of TM 5-3810-206-35, p. 3-73; the range is computed from them',
    measure: 'liner_protrusion',
    unit: 'in',
    tight: { liner_flange_thickness: '0.403', counterbore_depth: '0.402' },
    loose: { liner_flange_thickness: '0.405', counterbore_depth: '0.400' },
    least: '0.001',
    greatest: '0.005',
  },
  {
    what: 'a sleeve flange in its counterbore, .0010 to .0050 in where .0020 to .0050 is printed',
    source: 'sizes of TM 5-6115-400-35: the printed least is selected, not worst case',
    measure: 'liner_protrusion',
    unit: 'in',
    tight: { liner_flange_thickness: '0.4630', counterbore_depth: '0.4620' },
    loose: { liner_flange_thickness: '0.4650', counterbore_depth: '0.4600' },
    least: '0.0010',
    greatest: '0.0050',
  },
  ...(
    [
      ['upper_belt', '5.7810', '5.7830', '5.7780', '5.7800', '0.001', '0.005'],
      ['lower_belt', '5.8740', '5.8760', '5.8710', '5.8730', '0.001', '0.005'],
      ['flange', '6.2290', '6.2340', '6.2170', '6.2210', '0.008', '0.017'],
    ] as const
  ).map(
    ([belt, small, large, thin, thick, least, greatest]): PublishedRange => ({
      what: `a liner in its block at the ${belt.replace('_', ' ')}, ${least} to ${greatest} in`,
      source: 'TM 5-6115-400-35, table 1',
      measure: `liner_${belt}_fit`,
      unit: 'in',
      tight: { [`block_${belt}_bore`]: small, [`liner_${belt}_outside_diameter`]: thick },
      loose: { [`block_${belt}_bore`]: large, [`liner_${belt}_outside_diameter`]: thin },
      least,
      greatest,
    }),
  ),
];

describe('a range of the block that is printed', () => {
  it.each(RANGES)('is what its parts leave: $what ($source)', (printed) => {
    expect(rangeOf(printed)).toEqual([printed.least, printed.greatest]);
  });
});

/** Bore and stroke of one cylinder, and what a source says it sweeps. */
const SWEPT = [
  ['in', '5.5', '5.4', '128.295', 'in3', 'a general handbook of the FAA prints 128.29, cut off'],
  ['in', '4.00', '3.48', '43.731', 'in3', 'Circle Track, May 2004'],
  ['mm', '87', '69', '410.18', 'cc', 'a parts seller’s note prints 410.25 for a cylinder of 1641 cc in four'],
  [
    'mm',
    '80',
    '80',
    '402.12',
    'cc',
    'Mathur and Sharma, as a notebook quotes it: 80 x 80 mm, over 50 cc a ratio of 9.04',
  ],
  [
    'mm',
    '68',
    '75',
    '272.376',
    'cc',
    'Mathur and Sharma, as a notebook quotes it: 1089.5 cm³ in four cylinders',
  ],
  ['mm', '170', '300', '6809.4', 'cc', 'Mathur and Sharma, as a notebook quotes it: 17 x 30 cm'],
  ['in', '3', '4', '28.27', 'in3', 'Kates: 7.07 in² x 4 in prints 28.26, rounded on the way'],
] as const;

describe('a swept volume that is printed', () => {
  it.each(SWEPT)('of %s %s by %s is %s %s (%s)', (length, bore, stroke, volume, unit) => {
    const wanted = { measure: 'swept_volume', unit, length };
    const limited = { limits: 'swept_volume: { wear: { max: 99 L } }' };
    expect(workedOut(wanted, { cylinder_bore: bore }, volume, { ...limited, sizes: { stroke } })).toBe(
      volume,
    );
    const measured = { cylinder_bore: bore, piston_travel: stroke };
    expect(workedOut(wanted, measured, volume, limited)).toBe(volume);
  });
});

/** Bore, stroke, chamber, crown, gasket thickness, deck clearance; the bore of the gasket is that of the cylinder where none is given. */
const RATIOS = [
  {
    what: '9.01 : 1, of 70 cc, 5 cc, a gasket of .020 and a deck of .050 in',
    source: 'Circle Track, May 2004',
    length: 'in',
    stroke: '3.48',
    read: {
      cylinder_bore: '4.00',
      chamber_volume: '70 cc',
      piston_crown_volume: '5 cc',
      head_gasket_opening: '4.00',
      head_gasket_thickness: '0.020',
      deck_clearance: '0.050',
    },
    ratio: '9.01',
  },
  {
    what: '9.06 : 1, of 48 cc, a dish of 5 cc, a gasket of 87.5 x 1.2 and a deck of .30 mm',
    source: 'computed beside the program, no source',
    length: 'mm',
    stroke: '86',
    read: {
      cylinder_bore: '86',
      chamber_volume: '48 cc',
      piston_crown_volume: '5 cc',
      head_gasket_opening: '87.5',
      head_gasket_thickness: '1.2',
      piston_protrusion: '-0.30',
    },
    ratio: '9.0628',
  },
  {
    what: '9.04 : 1, of 50 cc in all',
    source: 'Mathur and Sharma, as a notebook quotes it',
    length: 'mm',
    stroke: '80',
    read: { cylinder_bore: '80', clearance_volume: '50 cc' },
    ratio: '9.04',
  },
  {
    what: '7.64 : 1, of 1025 cc in all',
    source: 'Mathur and Sharma, as a notebook quotes it',
    length: 'mm',
    stroke: '300',
    read: { cylinder_bore: '170', clearance_volume: '1025 cc' },
    ratio: '7.64',
  },
  {
    what: '6.00 : 1, of 1570 cc in all',
    source: 'Gupta, Fundamentals of Internal Combustion Engines, ex. 2.1, as a notebook quotes it',
    length: 'mm',
    stroke: '250',
    read: { cylinder_bore: '200', clearance_volume: '1570 cc' },
    ratio: '6.00',
  },
  {
    what: '8 : 1, of 2630 cc in all',
    source: 'Rajput, as a notebook quotes it',
    length: 'mm',
    stroke: '375',
    read: { cylinder_bore: '250', clearance_volume: '2630 cc' },
    ratio: '8.00',
  },
] as const;

describe('a compression ratio that is printed', () => {
  it.each(RATIOS)('is what its volumes come to: $what ($source)', ({ length, stroke, read, ratio }) => {
    const wanted = { measure: 'compression_ratio', unit: '', length };
    expect(workedOut(wanted, read, ratio, { sizes: { stroke } })).toBe(ratio);
  });
});

describe('a deck that is printed', () => {
  it('leaves .025 in over the piston: 9.025 − 4/2 − 6 − 1 (a trade magazine of February 2003)', () => {
    const stack = {
      piston_travel: '4.000',
      rod_centre_distance: '6.000',
      piston_compression_height: '1.000',
      deck_height: '9.025',
    };
    const limits = 'deck_clearance: { new: { max: 0.1 } }';
    expect(workedOut({ measure: 'deck_clearance', unit: 'in' }, stack, '0.025', { limits })).toBe('0.025');
  });
});
