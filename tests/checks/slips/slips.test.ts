import { describe, expect, test } from 'vitest';
import { type Documents, judged, lastJudged, messages, withCode } from '../bench.ts';

const ENGINE = `kind: engine
name: A
units: { length: in }
layout: { mains: 5, cylinders: 4, crankpins: 4 }
labels: { main: { 3: centre } }
`;
const LIMITS = `kind: limits
source: invented
limits:
  main_journal_diameter: { new: { min: 3.2475, max: 3.2485 }, wear: { min: 3.2465 } }
  crankpin_diameter: { new: { min: 2.8735, max: 2.8745 }, wear: { min: 2.8725 } }
  cylinder_bore: { new: { min: 4.1250, max: 4.1260 }, wear: { max: 4.1310 } }
  piston_diameter: { new: { min: 4.1205, max: 4.1215 }, wear: { min: 4.1185 } }
  crankshaft_end_play: { new: { min: 0.006, max: 0.013 }, wear: { max: 0.018 } }
`;
const REGISTER = `kind: instruments
instruments:
  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }
`;

const session = (readings: string, head = 'date: 2026-02-03'): string =>
  `kind: session\nstage: teardown\n${head}\nreadings:\n${readings}`;

const block = (measure: string, at: string, more = ''): string =>
  `  - { measure: ${measure}, with: mic, ${more}at: { ${at} } }\n`;

const MAINS = '1: 3.2478, 2: 3.2477, 4: 3.2476, 5: 3.2478';
const mains = (third: string): string => block('main_journal_diameter', `${MAINS}, 3: ${third}`);

const read = (readings: string, more: Partial<Documents> = {}, head?: string) =>
  lastJudged({
    'engine.yaml': ENGINE,
    'limits.yaml': LIMITS,
    'instruments.yaml': REGISTER,
    's.yaml': session(readings, head),
    ...more,
  });

const said = (readings: string, more: Partial<Documents> = {}, head?: string) =>
  messages(read(readings, more, head), 'reading/implausible').map(asWritten);

/** Without what follows from it as it was read. */
const asWritten = (message: string): string => message.split('; as read')[0] ?? '';

describe('a slip of the pen', () => {
  test.each([
    ['3.2847', '3.2487? written 3.2847: two digits swapped'],
    ['2.3478', '3.2478? written 2.3478: two digits swapped'],
    ['32.478', '3.2478? written 32.478: the decimal point moved'],
    ['0.32478', '3.2478? written 0.32478: the decimal point moved'],
    ['2.2478', '3.2478? written 2.2478: one inch out'],
    ['3.2728', '3.2478? written 3.2728: 25 thousandths out, one turn of a micrometer'],
    ['3.2227', '3.2477? written 3.2227: 25 thousandths out, one turn of a micrometer'],
    ['82.495', '82.495 mm? written 82.495: millimetres written as inches'],
    ['3.6', 'written 3.6: no usual slip explains it; about 3.2 in is expected here'],
  ])('%s in a main journal: %s', (third, message) => {
    expect(said(mains(third))).toEqual([`main journal diameter 3 (centre): ${message}`]);
  });

  test.each([
    [
      '81.995',
      '82.495? written 81.995: 0.5 mm out, one turn of a micrometer, or another service size, which `fitted:` does not state',
    ],
    ['57.495', '82.495? written 57.495: 25 mm out, the next micrometer of a set'],
    ['3.2478', '3.2478 in? written 3.2478: inches written as millimetres'],
  ])('in a shop that works in millimetres, %s: %s', (third, message) => {
    const metric = {
      'engine.yaml': ENGINE.replace('in }', 'mm }'),
      'limits.yaml': LIMITS.replace('limits:\n', 'units: { length: in }\nlimits:\n'),
    };
    const at = `1: 82.495, 2: 82.493, 3: ${third}, 4: 82.490, 5: 82.495`;
    expect(said(block('main_journal_diameter', at), metric)).toEqual([
      `main journal diameter 3 (centre): ${message}`,
    ]);
  });

  test("a crankpin's reading in a main journal is named with where it belongs", () => {
    const pins = block('crankpin_diameter', '1: 2.8741, 2: 2.8742, 3: 2.8739, 4: 2.8740');
    expect(said(mains('2.8739') + pins)).toEqual([
      'main journal diameter 3 (centre): written 2.8739: the reading of crankpin diameter 3; about 3.2478 in is expected here',
    ]);
    expect(said(mains('2.8736') + pins)).toEqual([
      'main journal diameter 3 (centre): written 2.8736: a crankpin diameter by its size; about 3.2478 in is expected here',
    ]);
  });

  test('in a deviation from a master the digits are those that were written', () => {
    const gauge = block(
      'main_journal_diameter',
      '1: -22, 2: -23, 3: -2300, 4: -24',
      'in: tenths, set_to: 3.2500, ',
    );
    expect(said(gauge)).toEqual([
      'main journal diameter 3 (centre): -23? written -2300: the decimal point moved',
    ]);
  });

  test('among repeats of one point the odd one is named', () => {
    expect(said(mains('{ repeat: [3.2478, 3.2748, 3.2477] }'))).toEqual([
      'main journal diameter 3 (centre): 3.2478? written 3.2748: two digits swapped',
    ]);
  });

  test('the other points of its position tell which of two numbers was meant', () => {
    const at = `${MAINS}, 3: [[3.2470, 3.2469], [3.2740, 3.2471]]`;
    const grid = block('main_journal_diameter', at, 'stations: [front, rear], directions: [throw, square], ');
    expect(said(grid)).toEqual([
      'main journal diameter 3 (centre): 3.2470? written 3.2740: two digits swapped',
    ]);
  });

  test('it is said where the reading stands, and nothing is corrected', () => {
    const found = read(mains('3.2847'));
    const [finding] = withCode(found, 'reading/implausible');
    expect(finding).toMatchObject({ severity: 'error', measure: 'main_journal_diameter', position: '3' });
    expect(found.rows.find((row) => row.position.name === '3')?.routes[0]?.route.written).toEqual(['3.2847']);
  });

  test('a slip that was put right is settled', () => {
    expect(said(mains('{ value: 3.2847, was: 3.2478, why: misread }'))).toEqual([]);
  });

  test('without limits a nominal size serves, and without one its like do', () => {
    const none = { 'limits.yaml': 'kind: limits\nsource: invented\nlimits: {}\n' };
    const sized = { ...none, 'engine.yaml': `${ENGINE}sizes: { main_journal_diameter: 3.2480 }\n` };
    const message = 'main journal diameter 3 (centre): 3.2478? written 3.2748: two digits swapped';
    expect(said(mains('3.2748'), sized)).toEqual([message]);
    expect(said(mains('3.2748'), none)).toEqual([message]);
  });

  test('a clearance ten times too large has a decimal point out of place', () => {
    expect(said('  - { measure: crankshaft_end_play, with: mic, value: 0.08 }\n')).toEqual([
      'crankshaft end play: 0.008? written 0.08: the decimal point moved',
    ]);
  });
});

describe('what is no slip', () => {
  const UNDER = (by: number): string =>
    block(
      'main_journal_diameter',
      [3.2478, 3.2477, 3.2479, 3.2476, 3.2478]
        .map((size, i) => `${i + 1}: ${(size - by).toFixed(4)}`)
        .join(', '),
    );

  test.each([0.01, 0.02, 0.03, 0.25 / 25.4, 0.5 / 25.4, 0.75 / 25.4])(
    'a crankshaft reground %f under',
    (by) => {
      expect(said(UNDER(by))).toEqual([]);
    },
  );

  test('on a reground crankshaft a slip is seen from its new size', () => {
    expect(said(UNDER(0.01).replace('3.2379', '3.2739'))).toEqual([
      'main journal diameter 3 (centre): 3.2379? written 3.2739: two digits swapped',
    ]);
  });

  test('half a millimetre under, which is a turn of the thimble as well: named as both until it is stated', () => {
    const metric = {
      'engine.yaml': ENGINE.replace('in }', 'mm }'),
      'limits.yaml': LIMITS.replace('limits:\n', 'units: { length: in }\nlimits:\n'),
    };
    const one = block('main_journal_diameter', '1: 82.495, 2: 82.493, 3: 81.995, 4: 82.490, 5: 82.495');
    expect(said(one, metric)).toEqual([
      'main journal diameter 3 (centre): 82.495? written 81.995: 0.5 mm out, one turn of a micrometer, or another service size, which `fitted:` does not state',
    ]);
    const stated = 'date: 2026-02-03\nfitted: { crankshaft: { main: std, at: { 3: 0.50 under } } }';
    expect(said(one, metric, stated)).toEqual([]);
  });

  test('a cylinder bored by itself, with the piston that goes in it', () => {
    const bores = block('cylinder_bore', '1: 4.1255, 2: 4.1256, 3: 4.1455, 4: 4.1254');
    const pistons = block('piston_diameter', '1: 4.1210, 2: 4.1211, 3: 4.1410, 4: 4.1209');
    expect(said(bores + pistons)).toEqual([]);
  });

  test('half a millimetre over with its piston is a rebore; without it a turn of the thimble comes to mind', () => {
    const metric = {
      'engine.yaml': ENGINE.replace('in }', 'mm }'),
      'limits.yaml': LIMITS.replace('limits:\n', 'units: { length: in }\nlimits:\n'),
    };
    const bores = block('cylinder_bore', '1: 104.785, 2: 104.788, 3: 105.290, 4: 104.786');
    const pistons = (third: string) =>
      block('piston_diameter', `1: 104.670, 2: 104.671, 3: ${third}, 4: 104.669`);
    expect(said(bores + pistons('105.170'), metric)).toEqual([]);
    expect(said(bores + pistons('104.670'), metric)).toHaveLength(1);
  });

  test('wear of twice the way from new to worn out', () => {
    expect(said(mains('3.2455'))).toEqual([]);
    expect(said(block('cylinder_bore', '1: 4.1360, 2: 4.1255'))).toEqual([]);
  });

  test('what an earlier session read there as well', () => {
    const earlier = { 'a.yaml': session(mains('3.2610'), 'date: 2025-02-03') };
    expect(said(mains('3.2611'), earlier)).toEqual([]);
    const sessions = judged({
      'engine.yaml': ENGINE,
      'limits.yaml': LIMITS,
      'instruments.yaml': REGISTER,
      ...earlier,
    });
    expect(sessions[0] && messages(sessions[0], 'reading/implausible')).toHaveLength(1);
  });

  test('a range, and a reading not taken', () => {
    expect(said(mains('~'))).toEqual([]);
    expect(said(mains('3.1 to 3.4'))).toEqual([]);
  });
});

describe('what was read a second time alike is no slip', () => {
  const RODS = `kind: engine
name: A
units: { length: mm }
layout: { mains: 5, cylinders: 4, crankpins: 4 }
`;
  const dial = (resolution: string): string =>
    `kind: instruments\ninstruments:\n  mic: { type: dial indicator, resolution: ${resolution} mm, max_error: 0.01 mm }\n`;
  const BEND =
    'kind: limits\nsource: invented\nlimits:\n  rod_bar_height: { wear: { max: 0.05 } }\n  rod_bend: { wear: { max: 0.05 } }\n';
  const bar = (third: string): string =>
    block(
      'rod_bar_height',
      `1: [0.00, 0.01], 2: [0.01, 0.00], 3: ${third}, 4: [0.00, 0.01]`,
      'stations: [one, other], ',
    );
  const bentBy = (resolution: string, ...thirds: readonly string[]) =>
    lastJudged({
      'engine.yaml': RODS,
      'limits.yaml': BEND,
      'instruments.yaml': dial(resolution),
      ...Object.fromEntries(
        thirds.map((third, index) => [
          `${index}.yaml`,
          session(bar(third), `date: 2026-02-0${index + 1}`).replace(
            'teardown',
            index === 0 ? 'teardown' : 'machined',
          ),
        ]),
      ),
    });
  const bent = (...thirds: readonly string[]) => bentBy('0.001', ...thirds);
  const slips = (...thirds: readonly string[]) => messages(bent(...thirds), 'reading/implausible');

  test('a bent rod is asked about once', () => {
    expect(slips('[0.00, 0.14]')).toHaveLength(1);
    expect(slips('[0.00, 0.14]', '[0.00, 0.14]')).toEqual([]);
    expect(messages(bent('[0.00, 0.14]', '[0.00, 0.14]'), 'reading/out')).toEqual([
      expect.stringContaining('rod bar height 3'),
      expect.stringContaining('rod bend 3'),
    ]);
  });

  test.each([
    ['a hundredth more, as far as the dial shows', '[0.00, 0.15]', 0],
    ['within what both dials are known to', '[0.00, 0.13]', 0],
    ['by more than both are known to', '[0.00, 0.18]', 1],
    ['with one end right', '[0.00, 0.01]', 0],
  ])('it reads %s', (_, again, count) => {
    expect(slips('[0.00, 0.14]', again)).toHaveLength(count);
  });

  test('of another rod proves nothing', () => {
    const [first, second] = [bar('[0.00, 0.14]'), `${bar('[0.00, 0.14]')}replaced: [{ part: rod 3 }]\n`];
    const found = lastJudged({
      'engine.yaml': RODS,
      'limits.yaml': BEND,
      'instruments.yaml': dial('0.001'),
      '0.yaml': session(first, 'date: 2026-02-01'),
      '1.yaml': session(second, 'date: 2026-02-02'),
    });
    expect(messages(found, 'reading/implausible')).toHaveLength(1);
  });

  test.each([
    ['0.001', ['rod bar height 3: 0.014? written 0.14: the decimal point moved']],
    ['0.01', ['rod bar height 3: 0.04? written 0.14: one figure misread']],
  ])('a dial that shows %s mm can have shown what was meant', (resolution, expected) => {
    const found = bentBy(resolution, '[0.00, 0.14]');
    expect(messages(found, 'reading/implausible').map(asWritten)).toEqual(expected);
  });
});
