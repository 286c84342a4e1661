import { describe, expect, it } from 'vitest';
import { toDecimal } from '../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../src/quantity/units.ts';
import { engineIn, limitsOf, rowsOf, sessionOf, shopFiles, verdictsOf } from '../shopOf.ts';

/** The clearance that two or three sizes leave, through the whole line from YAML to the judged row. */
function clearanceOf(measure: string, unit: 'in' | 'mm', sizes: Readonly<Record<string, string>>): string {
  const blocks = Object.entries(sizes).map(([id, size]) => `- { measure: ${id}, at: { 1: ${size} } }`);
  const rows = rowsOf({
    'e/engine.yaml': engineIn(unit),
    'e/s.yaml': sessionOf('rebuild', blocks.join('\n')),
  });
  const [judged] = rows.find(({ characteristic }) => characteristic.id === measure)?.routes ?? [];
  if (judged === undefined) throw new Error(`no ${measure} was worked out`);
  expect(judged.least).toEqual(judged.greatest);
  return toDecimal(fromBase(judged.least, unitNamed(unit)), unit === 'in' ? 4 : 3);
}

interface PublishedRange {
  readonly what: string;
  readonly source: string;
  readonly measure: string;
  readonly unit: 'in' | 'mm';
  /** The parts that leave the least clearance, then those that leave the greatest. */
  readonly tight: Readonly<Record<string, string>>;
  readonly loose: Readonly<Record<string, string>>;
  readonly least: string;
  readonly greatest: string;
}

const PUBLISHED: readonly PublishedRange[] = [
  {
    what: 'piston skirt in its liner, .0045 to .0083 in',
    source: 'TM 55-1905-219-14-4 (skirt, clearance) and TM 55-1905-220-14-4 (liner)',
    measure: 'piston_clearance',
    unit: 'in',
    tight: { cylinder_bore: '4.2495', piston_diameter: '4.2450' },
    loose: { cylinder_bore: '4.2511', piston_diameter: '4.2428' },
    least: '0.0045',
    greatest: '0.0083',
  },
  {
    what: 'piston skirt in its liner, .0031 to .0068 in',
    source: 'TM 5-3895-347-14P and 348-14P',
    measure: 'piston_clearance',
    unit: 'in',
    tight: { cylinder_bore: '3.8752', piston_diameter: '3.8721' },
    loose: { cylinder_bore: '3.8767', piston_diameter: '3.8699' },
    least: '0.0031',
    greatest: '0.0068',
  },
  {
    what: 'main bearing through both shells, .0010 to .0040 in',
    source:
      'TM 5-3895-347-14P (bore, shell, clearance); journal 2.999 to 3.000 of TM 5-4320-300-14, p. 6-103',
    measure: 'main_bearing_clearance',
    unit: 'in',
    tight: { main_housing_bore: '3.251', main_shell_thickness: '0.1250', main_journal_diameter: '3.000' },
    loose: { main_housing_bore: '3.252', main_shell_thickness: '0.1245', main_journal_diameter: '2.999' },
    least: '0.0010',
    greatest: '0.0040',
  },
  {
    what: 'rod bearing, .0015 to .0045 in',
    source: 'TM 5-3895-346-14, sheet 204; journal 2.499 to 2.500 of TM 5-4320-300-14, p. 6-103',
    measure: 'rod_bearing_clearance',
    unit: 'in',
    tight: { rod_bearing_bore: '2.5015', crankpin_diameter: '2.500' },
    loose: { rod_bearing_bore: '2.5035', crankpin_diameter: '2.499' },
    least: '0.0015',
    greatest: '0.0045',
  },
  {
    what: 'main bearing in millimetres, .050 to .112 mm (one manual prints .05 to .11)',
    source: 'TM 10-4320-343-14, table 6-1 (bearing, journal); TM 5-4320-302-14, p. 6-181 (.05 to .112)',
    measure: 'main_bearing_clearance',
    unit: 'mm',
    tight: { main_bearing_bore: '70.040', main_journal_diameter: '69.990' },
    loose: { main_bearing_bore: '70.083', main_journal_diameter: '69.971' },
    least: '0.050',
    greatest: '0.112',
  },
  {
    what: 'main support in millimetres, .050 to .112 mm',
    source: 'TM 5-4320-302-14, p. 6-181 (bore, clearance); journal 59.971 to 59.990 computed from them',
    measure: 'main_bearing_clearance',
    unit: 'mm',
    tight: { main_bearing_bore: '60.040', main_journal_diameter: '59.990' },
    loose: { main_bearing_bore: '60.083', main_journal_diameter: '59.971' },
    least: '0.050',
    greatest: '0.112',
  },
];

describe('a clearance range that a manual prints', () => {
  it.each(PUBLISHED)('is what its parts leave: $what ($source)', (published) => {
    const { measure, unit, tight, loose, least, greatest } = published;
    expect(clearanceOf(measure, unit, tight)).toBe(least);
    expect(clearanceOf(measure, unit, loose)).toBe(greatest);
  });
});

/** Honda shop manual, January 1982, p. 12-10: grades of crankpins, rods and shells, smallest and largest of each, in mm. */
const PINS = { A: ['35.992', '36.000'], B: ['35.984', '35.992'], C: ['35.976', '35.984'] } as const;
const RODS = { 1: ['39.000', '39.008'], 2: ['39.008', '39.016'], 3: ['39.016', '39.024'] } as const;
const SHELLS = {
  A: ['1.502', '1.506'],
  B: ['1.498', '1.502'],
  C: ['1.494', '1.498'],
  D: ['1.490', '1.494'],
  E: ['1.486', '1.490'],
} as const;
/** Which shell that manual puts with a rod and pins A, B and C. */
const CHOSEN = { 1: ['E', 'D', 'C'], 2: ['D', 'C', 'B'], 3: ['C', 'B', 'A'] } as const;

const CELLS = ([1, 2, 3] as const).flatMap((rod) =>
  (['A', 'B', 'C'] as const).map((pin, column) => ({ rod, pin, shell: CHOSEN[rod][column] ?? 'E' })),
);

describe('the bearing selection table of the Honda shop manual, January 1982, p. 12-10', () => {
  it('has nine cells', () => expect(CELLS).toHaveLength(9));

  it.each(CELLS)('leaves .020 to .044 mm with rod $rod, pin $pin and shell $shell (computed)', (cell) => {
    const [rod, pin, shell] = [RODS[cell.rod], PINS[cell.pin], SHELLS[cell.shell]];
    const least = { rod_housing_bore: rod[0], rod_shell_thickness: shell[1], crankpin_diameter: pin[1] };
    const greatest = { rod_housing_bore: rod[1], rod_shell_thickness: shell[0], crankpin_diameter: pin[0] };
    expect(clearanceOf('rod_bearing_clearance', 'mm', least)).toBe('0.020');
    expect(clearanceOf('rod_bearing_clearance', 'mm', greatest)).toBe('0.044');
  });
});

describe('a ring gap', () => {
  it('grows .003 in for each .001 in of cylinder wear, which is π rounded (TM 5-6115-593-34, p. 1-9)', () => {
    expect((Math.PI * 0.001).toFixed(3)).toBe('0.003');
    const limit = 'ring_end_gap: { new: { max: { formula: "0.033 + 3.14 * (cylinder_bore - bore)" } } }';
    const engine = { 'e/engine.yaml': engineIn('in', 'sizes: { bore: 5.501 }\n') };
    const gapAt = (gap: string) =>
      verdictsOf({
        ...shopFiles(
          limit,
          `- { measure: cylinder_bore, at: { 1: 5.502 } }\n- { measure: ring_end_gap, at: { 1 top: ${gap} } }`,
        ),
        ...engine,
      })['ring_end_gap 1 top'];
    expect(gapAt('0.03614')).toBe('ok');
    expect(gapAt('0.03615')).toBe('out');
  });
});

/** What is printed with no parts to work it out of: readings of our own, the limit itself and a step to either side of it. */
const JUDGED_ALONE = [
  {
    what: 'end play from .007 to .017, worn from .022 in',
    source: 'TM 10-4320-307-24, p. 4-135',
    measure: 'crankshaft_end_play',
    limits: '{ new: 0.007 to 0.017, wear: { max: 0.022 } }',
    verdicts: { '0.0219': 'worn', '0.0220': 'worn', '0.0221': 'out', '0.0069': 'out', '0.0070': 'ok' },
  },
  {
    what: 'main bearing clearance from .0016 to .0050, limit .0060 in',
    source: 'TM 55-1905-220-14-4',
    measure: 'main_bearing_clearance',
    limits: '{ new: 0.0016 to 0.0050, wear: { max: 0.0060 } }',
    verdicts: { '0.0015': 'out', '0.0016': 'ok', '0.0051': 'worn', '0.0060': 'worn', '0.0061': 'out' },
  },
] as const;

describe('a limit that a manual prints alone', () => {
  it.each(JUDGED_ALONE)('$what ($source)', ({ measure, limits, verdicts }) => {
    const at = measure === 'crankshaft_end_play' ? 'value: ' : 'at: { 1: ';
    const end = at.startsWith('at') ? ' }' : '';
    const judge = (reading: string) =>
      Object.values(
        verdictsOf(
          shopFiles(`${measure}: ${limits}`, `- { measure: ${measure}, ${at}${reading}${end} }`, 'teardown'),
        ),
      )[0];
    expect(Object.fromEntries(Object.keys(verdicts).map((each) => [each, judge(each)]))).toEqual(verdicts);
  });
});

describe('turning torque, common practice, no source', () => {
  it.each([
    ['23', 'ok'],
    ['24', 'ok'],
    ['25', 'out'],
  ])('%s lbf in against a greatest of 24 of our own is %s', (reading, verdict) => {
    const limit = 'turning_torque: { at: { crankshaft: { new: { max: 24 lbf in } } } }';
    const turning = `- { measure: turning_torque, after: [{ step: crankshaft, value: ${reading} }] }`;
    expect(verdictsOf(shopFiles(limit, turning))).toEqual({ 'turning_torque crankshaft': verdict });
  });
});

describe('limits that a manual prints with its parts', () => {
  it('judge both ends of the range as inside, and one tenth beyond as out (TM 5-3895-347-14P)', () => {
    const at = (least: string, greatest: string) =>
      verdictsOf({
        'e/engine.yaml': engineIn('in'),
        'e/l.yaml': limitsOf('piston_clearance: { new: 0.0031 to 0.0068, wear: { max: 0.0100 } }'),
        'e/s.yaml': sessionOf(
          'rebuild',
          `- { measure: cylinder_bore, at: { 1: ${least}, 2: ${greatest} } }\n- { measure: piston_diameter, at: { 1: 3.8721, 2: 3.8699 } }`,
        ),
      });
    expect(Object.values(at('3.8752', '3.8767')).filter((verdict) => verdict === 'ok')).toHaveLength(2);
    expect(at('3.8751', '3.8768')).toMatchObject({
      'piston_clearance 1': 'out',
      'piston_clearance 2': 'out',
    });
  });
});
