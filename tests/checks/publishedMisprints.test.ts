import { describe, expect, it } from 'vitest';
import { parseDecimal, toDecimal } from '../../src/quantity/fraction.ts';
import { fromBase, toBase, unitNamed } from '../../src/quantity/units.ts';
import { engineIn, limitsOf, refusalsOf, sessionOf, verdictsOf } from '../shopOf.ts';
import { PRINTED } from './grades/publishedSizes.ts';
import { type PublishedRange, rangeOf } from './publishedRange.ts';
import { workedOut } from './workedOut.ts';

/*
 * Figures that sources print and that do not follow from what they print beside them. Three cells of tables of service
 * sizes stand in grades/publishedSizes.ts, a displacement in publishedCrankAndRods.test.ts. Misprints that nothing
 * beside them shows are no test: a head grinding limit ten times the usual (TM 10-3930-653-14&P), a block height limit
 * of 15.171 for one of 15.581 (TM 9-6115-604-34), an out of round of .005 for .0005 (TM 5-3805-262-34).
 */

interface MisprintedFit extends PublishedRange {
  readonly printed: readonly [least: string, greatest: string];
}

const FITS: readonly MisprintedFit[] = [
  {
    what: 'a piston in its bore, greatest clearance',
    source: 'service data of a motorcycle engine, p. 5-7',
    printed: ['0.010', '0.037'],
    measure: 'piston_clearance',
    unit: 'mm',
    tight: { cylinder_bore: '77.194', piston_diameter: '77.184' },
    loose: { cylinder_bore: '77.206', piston_diameter: '77.174' },
    least: '0.010',
    greatest: '0.032',
  },
  {
    what: 'an exhaust stem in its guide, least clearance',
    source: 'TM 9-6115-464-34, p. 1-15',
    printed: ['0.0015', '0.0035'],
    measure: 'valve_stem_clearance',
    unit: 'in',
    tight: { valve_guide_bore: '0.3750', valve_stem_diameter: '0.3732' },
    loose: { valve_guide_bore: '0.3760', valve_stem_diameter: '0.3725' },
    least: '0.0018',
    greatest: '0.0035',
  },
  {
    what: 'a stem in its guide, greatest clearance; its column of .0089 cm is right',
    source: 'TM 55-1905-220-14-6',
    printed: ['0.0020', '0.0036'],
    measure: 'valve_stem_clearance',
    unit: 'in',
    tight: { valve_guide_bore: '0.3125', valve_stem_diameter: '0.3105' },
    loose: { valve_guide_bore: '0.3135', valve_stem_diameter: '0.3100' },
    least: '0.0020',
    greatest: '0.0035',
  },
  {
    what: 'a main bearing of 3.0020 to 3.0030, which would have to be 3.0010 at least',
    source: 'TM 5-3895-346-14, sheet 204; journal 2.999 to 3.000 of TM 5-4320-300-14, p. 6-103',
    printed: ['0.0010', '0.0040'],
    measure: 'main_bearing_clearance',
    unit: 'in',
    tight: { main_bearing_bore: '3.0020', main_journal_diameter: '3.000' },
    loose: { main_bearing_bore: '3.0030', main_journal_diameter: '2.999' },
    least: '0.0020',
    greatest: '0.0040',
  },
];

describe('a fit that a source prints wrongly', () => {
  it.each(FITS)('is not what its parts leave: $what, printed $printed ($source)', (fit) => {
    expect(rangeOf(fit)).toEqual([fit.least, fit.greatest]);
    expect(rangeOf(fit)).not.toEqual(fit.printed);
  });
});

/** A figure in one unit that is right, what is printed beside it in another, and what that should be. */
const CONVERTED = [
  ['intake lash', 'TM 10-4320-307-24', '0.011 in', '0.028 mm', '0.28 mm'],
  ['exhaust lash', 'TM 10-4320-307-24', '0.023 in', '0.058 mm', '0.58 mm'],
  ['bore out of round', 'TM 5-3895-369-14', '0.038 mm', '0.00015 in', '0.0015 in'],
  ['bore taper', 'TM 5-3895-369-14', '0.003 in', '0.76 mm', '0.076 mm'],
  ['rod length', 'TM 5-6115-593-34, p. 1-9', '304.80 mm', '12.050 in', '12.000 in'],
  ['head flatness across', 'TM 5-3820-256-24-5, p. 18', '0.004 in', '0.01 mm', '0.10 mm'],
  ['main clearance', 'service data of a 4.6 litre car engine', '0.066 mm', '0.02598 in', '0.002598 in'],
  ['end play', 'service data of a 6.5 litre diesel engine', '0.25 mm', '0.0010 in', '0.010 in'],
  ['out of round', 'service data of a 3.0 litre car engine', '0.006 mm', '0.0082 in', '0.0002 in'],
  ['bore taper', 'service data of a 3.0 litre car engine', '0.020 mm', '0.008 in', '0.0008 in'],
  ...(
    [
      ['25', '35', '34'],
      ['30', '42', '41'],
      ['70', '98', '95'],
      ['75', '105', '102'],
      ['140', '196', '190'],
      ['150', '210', '203'],
    ] as const
  ).map(
    ([feet, printed, meant]) =>
      [
        'rod nuts, by a factor of 1.40',
        'TM 5-2815-241-34&P, p. 2-64',
        `${feet} lbf ft`,
        `${printed} N m`,
        `${meant} N m`,
      ] as const,
  ),
  [
    'a foot-pound, by a factor for another unit',
    'a snowmobile manual of 2001',
    '1 lbf ft',
    '1.382 N m',
    '1.356 N m',
  ],
] as const;

const parted = (amount: string): readonly [digits: string, unit: string] => {
  const [, digits = '', unit = ''] = /^(\S+) (.+)$/.exec(amount) ?? [];
  return [digits, unit];
};

/** An amount in the unit and with the decimals of another. */
function like(amount: string, other: string): string {
  const [[digits, unit], [otherDigits, otherUnit]] = [parted(amount), parted(other)];
  const base = toBase(parseDecimal(digits), unitNamed(unit));
  const decimals = otherDigits.split('.')[1]?.length ?? 0;
  return `${toDecimal(fromBase(base, unitNamed(otherUnit)), decimals)} ${otherUnit}`;
}

describe('two units of one figure that do not agree', () => {
  it.each(CONVERTED)('%s (%s): %s is not %s, but %s', (_what, _source, right, printed, meant) => {
    expect(like(right, meant)).toBe(meant);
    expect(like(right, printed)).not.toBe(printed);
  });

  it('bend of .0005 in per inch is .0005 mm per millimetre, printed .0127 (TM 9-2815-220-24, WP 0143-8)', () => {
    const judged = (limit: string, end: string) =>
      verdictsOf({
        'e/engine.yaml': 'kind: engine\nname: A\nunits: { length: in }\nlayout: { cylinders: 1 }\n',
        'e/limits.yaml': limitsOf(`rod_bend: ${limit}`),
        'e/s.yaml': sessionOf(
          'rebuild',
          `- { measure: rod_bar_height, stations: { front: 0 in, rear: 8 in }, at: { 1: [0.0000, ${end}] } }`,
        ),
      })['rod_bend 1'];
    for (const limit of ['{ per: 1 in, wear: { max: 0.0005 } }', '{ per: 1 mm, wear: { max: 0.0005 mm } }'])
      expect([judged(limit, '0.0040'), judged(limit, '0.0041')]).toEqual(['ok', 'out']);
    expect(judged('{ per: 1 mm, wear: { max: 0.0127 mm } }', '0.0041')).toBe('ok');
  });
});

/** Limits as they are printed, which cannot be meant, and as they are meant where that is known. */
const REFUSED = [
  [
    'a main journal of 69.920 to 69.632 mm',
    'TM 9-2815-254-24, p. 3-137',
    'mm',
    'main_journal_diameter: { new: 69.920 to 69.632 }',
    'main_journal_diameter: { new: 69.920 to 69.932 }',
  ],
  [
    'its limit, larger than the standard size',
    'TM 9-2815-254-24, p. 3-137',
    'in',
    'main_journal_diameter: { new: 2.7533 to 2.7548, wear: { min: 2.7560 } }',
    undefined,
  ],
  [
    'a rod clearance that is worn before the greatest of new parts',
    'TM 10-3930-653-14&P, p. 60',
    'mm',
    'rod_bearing_clearance: { new: 0.010 to 0.066, wear: { max: 0.03 } }',
    undefined,
  ],
  [
    'a rod shell of .00942 to .0947, worn at .093',
    'TM 9-2815-225-34&P, app. F',
    'in',
    'rod_shell_thickness: { new: 0.00942 to 0.0947, wear: { min: 0.093 } }',
    'rod_shell_thickness: { new: 0.0942 to 0.0947, wear: { min: 0.093 } }',
  ],
  [
    'a main journal that is worn at 3A.4965',
    'TM 9-2815-213-34, p. 94',
    'in',
    'main_journal_diameter: { new: 3.4990 to 3.5000, wear: { min: 3A.4965 } }',
    'main_journal_diameter: { new: 3.4990 to 3.5000, wear: { min: 3.4965 } }',
  ],
  [
    'end play from .004 to .0010 in',
    'service data of a 6.5 litre diesel engine',
    'in',
    'crankshaft_end_play: { new: 0.004 to 0.0010 }',
    'crankshaft_end_play: { new: 0.004 to 0.010 }',
  ],
  [
    'a bore of grade 3 from 89.020 to 82.030 mm',
    'service data of a 3.0 litre car engine',
    'mm',
    'cylinder_bore: { new: 89.020 to 82.030 }',
    'cylinder_bore: { new: 89.020 to 89.030 }',
  ],
] as const;

describe('limits that a source prints and that cannot be meant', () => {
  const refused = (unit: 'in' | 'mm', limits: string) =>
    refusalsOf({ 'e/engine.yaml': engineIn(unit), 'e/limits.yaml': limitsOf(limits) });

  it.each(REFUSED)('are refused as they stand: %s (%s)', (_what, _source, unit, printed, meant) => {
    expect(refused(unit, printed)).toHaveLength(1);
    if (meant !== undefined) expect(refused(unit, meant)).toEqual([]);
  });
});

describe('labels of shells that are printed 2, 2, 3, 4, 5 (1996 service data of a car engine, p. EM-89)', () => {
  const BLOCK = { 1: ['74.026', '74.032'], 2: ['74.032', '74.038'], 3: ['74.038', '74.044'] } as const;
  const CRANK = { 1: ['68.994', '69.000'], 2: ['68.988', '68.994'], 3: ['68.982', '68.988'] } as const;
  const SHELLS = [
    ['2.489', '2.492'],
    ['2.492', '2.495'],
    ['2.495', '2.498'],
    ['2.498', '2.501'],
    ['2.501', '2.504'],
  ] as const;
  const MARKS = [1, 2, 3] as const;

  /** The clearances of each block mark with each crank mark: the shell is the one whose label is their sum. */
  const clearances = (labels: readonly number[]) =>
    MARKS.flatMap((block) =>
      MARKS.map((crank) => {
        const [thin, thick] = SHELLS[labels.indexOf(block + crank)] ?? [];
        if (thin === undefined || thick === undefined) return 'no shell';
        const [small, large] = BLOCK[block];
        const [slim, stout] = CRANK[crank];
        const clearance = (housing: string, shell: string, journal: string) =>
          workedOut(
            { measure: 'main_bearing_clearance', unit: 'mm' },
            { main_housing_bore: housing, main_shell_thickness: shell, main_journal_diameter: journal },
            '0.000',
          );
        return `${clearance(small, thick, stout)} to ${clearance(large, thin, slim)}`;
      }),
    );

  it('are 2 to 6: then the sum of both marks leaves the printed .042 to .060 mm in all nine cells', () => {
    expect(new Set(clearances([2, 3, 4, 5, 6]))).toEqual(new Set(['0.042 to 0.060']));
    const asPrinted = clearances([2, 2, 3, 4, 5]);
    expect(asPrinted.filter((each) => each === '0.042 to 0.060')).toHaveLength(1);
    expect(asPrinted.at(-1)).toBe('no shell');
  });
});

describe('cells of tables of service sizes', () => {
  it('are misprinted in three, which their neighbours show', () => {
    const cells = PRINTED.flatMap(({ source, rows }) =>
      rows.flatMap(({ misprint }) => (misprint === undefined ? [] : [`${misprint.printed} (${source})`])),
    );
    expect(cells).toEqual([
      '2.996 (TM 5-4320-300-14, p. 6-103)',
      '2.8444 (TM 5-4310-354-14, table 5-2 (of the .010 row the greatest size was read))',
      '62.422 (TM 10-3930-653-14&P, p. 60 (of the .50 row the least size was read))',
    ]);
  });
});
