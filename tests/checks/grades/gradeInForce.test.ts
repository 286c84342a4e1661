import { describe, expect, it } from 'vitest';
import { unitNamed } from '../../../src/quantity/units.ts';
import { type Files, limitsOf, refusalsOf, reportOf, sessionOf } from '../../shopOf.ts';

const ENGINE = `kind: engine
name: Bench engine
units: { length: in, torque: lbf in }
layout: { cylinders: [1L, 1R, 2L, 2R], mains: 3, crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }
`;

const LIMITS = limitsOf(`main_journal_diameter: { new: 2.9990 to 3.0000 }
main_shell_thickness: { new: 0.1245 to 0.1250 }
main_bearing_bore: { new: 3.0010 to 3.0030 }
main_housing_bore: { new: 3.2510 to 3.2520 }
crankpin_diameter: { new: 2.4990 to 2.5000 }
rod_shell_thickness: { new: 0.0620 to 0.0625 }
cylinder_bore: { new: 4.0000 to 4.0010 }
piston_diameter: { new: 3.9960 to 3.9970 }
thrust_bearing_width: { new: 1.5280 to 1.5300 }
thrust_journal_width: { new: 1.5340 to 1.5360 }
main_bearing_clearance: { new: 0.0010 to 0.0040 }
crankshaft_end_play: { new: 0.0040 to 0.0080 }`);

const READINGS = `- { measure: main_journal_diameter, at: { 1: 3, 2: 3, 3: 3 } }
- { measure: main_shell_thickness, at: { 1: [0.1, 0.1], 2: [0.1, 0.1], 3: [0.1, 0.1] } }
- { measure: main_bearing_bore, at: { 1: 3, 2: 3, 3: 3 } }
- { measure: main_housing_bore, at: { 1: 3, 2: 3, 3: 3 } }
- { measure: crankpin_diameter, at: { 1: 2.5, 2: 2.5 } }
- { measure: rod_shell_thickness, at: { 1L: 0.06, 1R: 0.06, 2L: 0.06, 2R: 0.06 } }
- { measure: cylinder_bore, at: { 1L: 4, 1R: 4, 2L: 4, 2R: 4 } }
- { measure: piston_diameter, at: { 1L: 4, 1R: 4, 2L: 4, 2R: 4 } }
- { measure: thrust_bearing_width, value: 1.5 }
- { measure: thrust_journal_width, value: 1.5 }
- { measure: crankshaft_end_play, value: 0.006 }
`;

/** Sessions on days that follow each other, each with what it says is fitted, machined or replaced. */
const shopOfSessions = (...said: readonly string[]): Files => ({
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': LIMITS,
  ...Object.fromEntries(
    said.map((more, index) => [
      `e/s${index}.yaml`,
      sessionOf('service', READINGS, `${more}\n`).replace('2026-02-03', `2026-02-0${index + 1}`),
    ]),
  ),
});

/** The limits of new parts of a position, and the size they hold for, in the last session or another. */
function limitsAt(files: Files, measure: string, position: string, session = -1): string {
  const rows = reportOf(files).sessions.at(session)?.rows ?? [];
  const here = rows.filter((row) => row.characteristic.id === measure && row.position.name === position);
  return here
    .map(({ size, half, limits: { bands } }) => {
      const from = size.assumedFrom === undefined ? '' : ` from ${size.assumedFrom.label}`;
      const band = `${bands.new?.min?.written} to ${bands.new?.max?.written}`;
      return [half, band, size.text(unitNamed('in')) + from].filter(Boolean).join(' ');
    })
    .join('; ');
}

describe('the size of several places', () => {
  it.each([
    ['in one line', 'machined: [{ part: main journals, at: [1, 3], size: 0.010 under }]'],
    ['of what is made of them', 'machined: [{ part: mains, at: [1, 3], size: 0.010 under }]'],
    ['by their names', 'machined: [{ part: "main journal 1, main journal 3", size: 0.010 under }]'],
  ])('holds at each of them and nowhere else, %s', (_, said) => {
    const at = (position: string): string =>
      limitsAt(shopOfSessions(said), 'main_journal_diameter', position);
    const [moved, standard] = ['2.9890 to 2.9900 0.010 under', '2.9990 to 3.0000 std'];
    expect(['1', '2', '3'].map(at)).toEqual([moved, standard, moved]);
  });
});

describe('the size that a session says', () => {
  it.each([
    [
      'of all main journals',
      'fitted: { crankshaft: { main: 0.010 under } }',
      'main_journal_diameter',
      '2',
      '2.9890 to 2.9900 0.010 under',
    ],
    [
      'of a whole crankshaft',
      'fitted: { crankshaft: { size: 0.010 under } }',
      'crankpin_diameter',
      '2',
      '2.4890 to 2.4900 0.010 under',
    ],
    [
      'of the mains before that of the crankshaft',
      'fitted: { crankshaft: { size: 0.010 under, main: std } }',
      'main_journal_diameter',
      '2',
      '2.9990 to 3.0000 std',
    ],
    [
      'of one crankpin that was ground',
      'machined: [{ part: crankpins, at: 1, size: 0.020 under }]',
      'crankpin_diameter',
      '1',
      '2.4790 to 2.4800 0.020 under',
    ],
    [
      'and not of the other',
      'machined: [{ part: crankpins, at: 1, size: 0.020 under }]',
      'crankpin_diameter',
      '2',
      '2.4990 to 2.5000 std',
    ],
    [
      'of shells: each half of the wall takes half',
      'fitted: { main_shells: { size: 0.010 under } }',
      'main_shell_thickness',
      '2',
      '0.1295 to 0.1300 0.010 under',
    ],
    [
      'of shells: the bore in them is smaller by all of it',
      'fitted: { main_shells: { size: 0.010 under } }',
      'main_bearing_bore',
      '2',
      '2.9910 to 2.9930 0.010 under',
    ],
    [
      'of shells: the housing stays',
      'fitted: { main_shells: { size: 0.010 under } }',
      'main_housing_bore',
      '2',
      '3.2510 to 3.2520 std',
    ],
    [
      'of shells that are larger outside: the housing',
      'fitted: { main_shells: { outside: 0.020 over } }',
      'main_housing_bore',
      '2',
      '3.2710 to 3.2720 0.020 over from main shell',
    ],
    [
      'of shells that are larger outside: the wall',
      'fitted: { main_shells: { size: 0.020 over } }',
      'main_shell_thickness',
      '2',
      '0.1345 to 0.1350 0.020 over outside',
    ],
    [
      'of shells that are larger outside: the bore in them stays',
      'fitted: { main_shells: { size: 0.020 over } }',
      'main_bearing_bore',
      '2',
      '3.0010 to 3.0030 std',
    ],
    [
      'of shells that are both: the wall takes both',
      'fitted: { main_shells: { size: 0.010 under, outside: 0.020 over } }',
      'main_shell_thickness',
      '2',
      '0.1395 to 0.1400 0.010 under, 0.020 over outside',
    ],
    [
      'of bores',
      'fitted: { block: { cylinder: 0.020 over } }',
      'cylinder_bore',
      '1R',
      '4.0200 to 4.0210 0.020 over',
    ],
    [
      'of one piston',
      'fitted: { pistons: { at: { 1R: 0.020 over } } }',
      'piston_diameter',
      '1R',
      '4.0160 to 4.0170 0.020 over',
    ],
    [
      'of each thrust washer',
      'fitted: { thrust_washers: { size: 0.005 over each } }',
      'thrust_bearing_width',
      'engine',
      '1.5380 to 1.5400 0.005 over each',
    ],
    [
      'of a set of thrust washers',
      'fitted: { thrust_washers: { size: 0.007 over set } }',
      'thrust_bearing_width',
      'engine',
      '1.5350 to 1.5370 0.007 over set',
    ],
    [
      'of the thrust faces',
      'fitted: { crankshaft: { thrust_journal: 0.010 over } }',
      'thrust_journal_width',
      'engine',
      '1.5440 to 1.5460 0.010 over',
    ],
    [
      'in the other unit',
      'fitted: { crankshaft: { main: 0.25 mm under } }',
      'main_journal_diameter',
      '2',
      '2.989157 to 2.990157 0.25 mm under',
    ],
  ])('%s', (_, said, measure, position, expected) => {
    expect(limitsAt(shopOfSessions(said), measure, position)).toBe(expected);
  });

  it('moves no end play and no clearance', () => {
    const files = shopOfSessions(
      'fitted: { crankshaft: { size: 0.010 under }, thrust_washers: { size: 0.005 over } }',
    );
    expect(limitsAt(files, 'crankshaft_end_play', 'engine')).toBe('0.0040 to 0.0080 std');
    expect(limitsAt(files, 'main_bearing_clearance', '1')).toBe('0.0010 to 0.0040 std');
  });
});

describe('halves of unlike size', () => {
  const files = shopOfSessions(
    'fitted: { crankshaft: { main: 0.010 under }, main_shells: { size: 0.010 under, at: { 3: { lower: 0.011 under } } } }',
  );

  it('are judged each by its own limits', () => {
    expect(limitsAt(files, 'main_shell_thickness', '3')).toBe(
      'upper 0.1295 to 0.1300 0.010 under; lower 0.1300 to 0.1305 0.011 under',
    );
    expect(limitsAt(files, 'main_shell_thickness', '2')).toBe('0.1295 to 0.1300 0.010 under');
  });

  it('leave a bore that is smaller by the half of both', () => {
    expect(limitsAt(files, 'main_bearing_bore', '3')).toBe(
      '2.9905 to 2.9925 0.010 under upper, 0.011 under lower',
    );
  });

  it('have the rest from the journal where the shells are not stated', () => {
    const half = shopOfSessions(
      'fitted: { crankshaft: { main: 0.010 under }, main_shells: { at: { 3: { lower: 0.011 under } } } }',
    );
    expect(limitsAt(half, 'main_shell_thickness', '3')).toContain('upper 0.1295 to 0.1300 0.010 under');
    expect(limitsAt(half, 'main_shell_thickness', '1')).toBe(
      '0.1295 to 0.1300 0.010 under from main journal',
    );
  });
});

describe('a size that is not stated', () => {
  it('of shells is that of their journal, assumed', () => {
    const files = shopOfSessions('fitted: { crankshaft: { crankpin: 0.010 under } }');
    expect(limitsAt(files, 'rod_shell_thickness', '2R')).toBe('0.0670 to 0.0675 0.010 under from crankpin');
  });

  it('of shells on a pin that two rods share is that of the pin', () => {
    const files = shopOfSessions('machined: [{ part: crankpin, at: 1, size: 0.010 under }]');
    expect(limitsAt(files, 'rod_shell_thickness', '1L')).toBe('0.0670 to 0.0675 0.010 under from crankpin');
    expect(limitsAt(files, 'rod_shell_thickness', '1R')).toBe('0.0670 to 0.0675 0.010 under from crankpin');
    expect(limitsAt(files, 'rod_shell_thickness', '2L')).toBe('0.0620 to 0.0625 std');
  });

  it('of a journal is that of its shells; where the shells of a pin differ it is standard', () => {
    const both = shopOfSessions('fitted: { rod_shells: { size: 0.010 under } }');
    expect(limitsAt(both, 'crankpin_diameter', '1')).toBe('2.4890 to 2.4900 0.010 under from rod shell');
    const one = shopOfSessions('fitted: { rod_shells: { at: { 1L: 0.010 under } } }');
    expect(limitsAt(one, 'crankpin_diameter', '1')).toBe('2.4990 to 2.5000 std');
  });

  it('of pistons is that of their bores, and the other way round', () => {
    const bored = shopOfSessions('machined: [{ part: cylinders, size: 0.020 over }]');
    expect(limitsAt(bored, 'piston_diameter', '1L')).toBe('4.0160 to 4.0170 0.020 over from cylinder');
    const pistons = shopOfSessions('fitted: { pistons: { size: 0.020 over } }');
    expect(limitsAt(pistons, 'cylinder_bore', '1L')).toBe('4.0200 to 4.0210 0.020 over from piston');
  });
});

describe('a housing that was bored out', () => {
  const bored = 'machined: [{ part: main housings, at: 2, size: 0.020 over }]';

  it('is of the size that is stated, and its shells are larger outside, assumed', () => {
    const files = shopOfSessions(bored);
    expect(limitsAt(files, 'main_housing_bore', '2')).toBe('3.2710 to 3.2720 0.020 over');
    expect(limitsAt(files, 'main_housing_bore', '1')).toBe('3.2510 to 3.2520 std');
    expect(limitsAt(files, 'main_shell_thickness', '2')).toBe(
      '0.1345 to 0.1350 0.020 over outside from main housing',
    );
    expect(limitsAt(files, 'main_bearing_bore', '2')).toBe('3.0010 to 3.0030 std');
  });

  it('takes shells that are under inside as well', () => {
    const files = shopOfSessions(`${bored}\nfitted: { main_shells: { size: 0.010 under } }`);
    expect(limitsAt(files, 'main_shell_thickness', '2')).toBe(
      '0.1395 to 0.1400 0.010 under, 0.020 over outside from main housing',
    );
    expect(limitsAt(files, 'main_bearing_bore', '2')).toBe('2.9910 to 2.9930 0.010 under');
  });
});

describe('the words for what is of a size', () => {
  it.each([
    ['machined: [{ part: rod journals, size: 0.010 under }]', 'crankpin_diameter', '2'],
    ['machined: [{ part: crankpin 2, size: 0.010 under }]', 'crankpin_diameter', '2'],
    ['machined: [{ part: crankshaft, size: 0.010 under }]', 'main_journal_diameter', '3'],
    ['machined: [{ part: crankshaft, size: 0.010 under }]', 'crankpin_diameter', '1'],
    ['machined: [{ part: mains, size: 0.010 under }]', 'main_journal_diameter', '3'],
    ['machined: [{ part: main journal, at: flywheel end, size: 0.010 under }]', 'main_journal_diameter', '3'],
    ['machined: [{ part: liners, size: 0.010 over }]', 'cylinder_bore', '1L'],
    ['machined: [{ part: block, size: 0.010 over }]', 'cylinder_bore', '1L'],
    ['fitted: { shells: { size: 0.010 under } }', 'rod_shell_thickness', '1R'],
  ])('%s: %s %s', (said, measure, position) => {
    const engine = { 'e/engine.yaml': `${ENGINE}labels: { main: { 3: flywheel end } }\n` };
    expect(limitsAt({ ...shopOfSessions(said), ...engine }, measure, position)).toContain('0.010');
  });

  it('a crankshaft that is under has the thrust faces that it had', () => {
    const files = shopOfSessions('machined: [{ part: crankshaft, size: 0.010 under }]');
    expect(limitsAt(files, 'thrust_journal_width', 'engine')).toBe('1.5340 to 1.5360 std');
  });

  it.each([
    ['machined: [{ part: oil pump, size: 0.010 under }]'],
    ['machined: [{ part: head, size: 0.010 under }]'],
    ['machined: [{ part: pistons, at: 9, size: 0.010 over }]'],
    ['fitted: { rods: { size: 0.010 under } }'],
    ['fitted: { flywheel: { size: 0.010 over } }'],
    ['fitted: { crankshaft: { cylinder: 0.010 over } }'],
    ['fitted: { main_shells: { at: { 9: { lower: 0.011 under } } } }'],
    ['machined: [{ part: main journals, size: 10 under inches }]'],
  ])('%s is reported, and nothing is judged by it', (said) => {
    expect(refusalsOf(shopOfSessions(said))).toHaveLength(1);
  });
});

describe('in the course of time', () => {
  it('a size holds from its session on, and earlier ones are judged by what was in the engine then', () => {
    const files = shopOfSessions('', 'machined: [{ part: main journals, size: 0.010 under }]', '');
    const over = [0, 1, 2].map((session) => limitsAt(files, 'main_journal_diameter', '2', session));
    expect(over).toEqual([
      '2.9990 to 3.0000 std',
      '2.9890 to 2.9900 0.010 under',
      '2.9890 to 2.9900 0.010 under',
    ]);
  });

  it('what an engine document says is fitted is how it came', () => {
    const files = shopOfSessions('', 'machined: [{ part: main journals, size: 0.020 under }]');
    const came = { ...files, 'e/engine.yaml': `${ENGINE}fitted: { crankshaft: { main: 0.010 under } }\n` };
    expect(limitsAt(came, 'main_journal_diameter', '2', 0)).toBe('2.9890 to 2.9900 0.010 under');
    expect(limitsAt(came, 'main_journal_diameter', '2', 1)).toBe('2.9790 to 2.9800 0.020 under');
  });

  it('a journal ground again takes no shells of the old size', () => {
    const files = shopOfSessions(
      'fitted: { crankshaft: { main: std }, main_shells: { size: std } }',
      'machined: [{ part: main journals, size: 0.010 under }]',
    );
    expect(limitsAt(files, 'main_shell_thickness', '1', 0)).toBe('0.1245 to 0.1250 std');
    expect(limitsAt(files, 'main_shell_thickness', '1', 1)).toBe(
      '0.1295 to 0.1300 0.010 under from main journal',
    );
  });

  it('a part that says no new size keeps the one it had, another crankshaft does not', () => {
    const [reground, same, other] = [
      'fitted: { crankshaft: { mark: A1, main: 0.010 under } }',
      'fitted: { crankshaft: { mark: A1, condition: used } }',
      'fitted: { crankshaft: { mark: B2, condition: new } }',
    ];
    expect(limitsAt(shopOfSessions(reground, same), 'main_journal_diameter', '1')).toContain('0.010 under');
    expect(limitsAt(shopOfSessions(reground, other), 'main_journal_diameter', '1')).toContain('std');
  });

  it('shells replaced at one main are no longer of unlike halves', () => {
    const files = shopOfSessions(
      'fitted: { crankshaft: { main: 0.010 under }, main_shells: { size: 0.010 under, at: { 3: { lower: 0.011 under } } } }',
      'replaced: [{ part: main shells, at: 3 }]',
    );
    expect(limitsAt(files, 'main_shell_thickness', '3')).toBe(
      '0.1295 to 0.1300 0.010 under from main journal',
    );
  });
});
