import { describe, expect, test } from 'vitest';
import { toNumber } from '../../../src/quantity/fraction.ts';
import { readRows } from '../../measurement/csv.ts';
import { type Documents, lastJudged, messages, rowAt, withCode } from '../bench.ts';

const read = (at: string, more = '', before: Documents = {}) =>
  lastJudged({
    ...before,
    'engine.yaml':
      'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 7, cylinders: 4, crankpins: 4 }\n',
    'instruments.yaml':
      'kind: instruments\ninstruments:\n  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: 0.00003 in }\n',
    's.yaml': `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings:\n  - { measure: main_journal_diameter, with: mic, at: { ${at} } }\n${more}`,
  });

describe('the spread between positions', () => {
  test('one journal of five that is worn and the others not stands apart', () => {
    expect(messages(read('1: 3.2478, 2: 3.2477, 3: 3.2466, 4: 3.2479, 5: 3.2478'), 'reading/spread')).toEqual(
      [
        'main journal diameter 3: 3.2466 in differs by 1.1 thou (±0.00012 in) from the nearest position, 2 at 3.2477 in; the 4 others lie within 2 tenths',
      ],
    );
  });

  test.each([
    ['1: 3.2478, 2: 3.2475, 3: 3.2471, 4: 3.2468, 5: 3.2466', 'evenly worn from one end to the other'],
    ['1: 3.2478, 2: 3.2478, 3: 3.2476, 4: 3.2478, 5: 3.2478', 'two tenths, near what the micrometer knows'],
    ['1: 3.2478, 2: 3.2478, 3: 3.2466', 'three are too few to tell'],
    ['1: 3.2478, 2: 3.2477, 3: 3.2466, 4: 3.2467, 5: 3.2478', 'two that are alike'],
  ])('%s: nothing to say, %s', (at) => {
    expect(messages(read(at), 'reading/spread')).toEqual([]);
  });

  test('the clearance that a journal apart brings with it is not said as well', () => {
    const bores =
      '  - { measure: main_bearing_bore, with: mic, at: { 1: 3.2508, 2: 3.2507, 3: 3.2508, 4: 3.2509, 5: 3.2508 } }\n';
    const found = read('1: 3.2478, 2: 3.2477, 3: 3.2462, 4: 3.2479, 5: 3.2478', bores);
    expect(messages(found, 'reading/spread').map((each) => each.slice(0, 23))).toEqual([
      'main journal diameter 3',
    ]);
  });

  test.each([
    ['0.0010', 'out', 'remark'],
    ['0.0100', 'ok', 'warning'],
  ])('a bar that stands apart on a rod whose bend, max %s, is %s: a %s', (max, verdict, severity) => {
    const found = lastJudged({
      'engine.yaml':
        'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 5, cylinders: 6, crankpins: 6 }\n',
      'instruments.yaml':
        'kind: instruments\ninstruments:\n  dial: { type: dial indicator, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: 0.00003 in }\n',
      'limits.yaml': `kind: limits\nsource: Invented.\nlimits: { rod_bend: { wear: { max: ${max} } } }\n`,
      's.yaml': `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings:\n  - { measure: rod_bar_height, with: dial, stations: [front, rear], at: { 1: [7.9000, 7.9001], 2: [7.9000, 7.9000], 3: [7.9001, 7.9000], 4: [7.9000, 7.9055], 5: [7.9000, 7.9001], 6: [7.9000, 7.9000] } }\n`,
    });
    expect(rowAt(found, 'rod_bend', '4').judgement.verdict).toBe(verdict);
    expect(withCode(found, 'reading/spread').map((each) => [each.measure, each.severity])).toEqual([
      ['rod_bar_height', severity],
    ]);
  });

  test('a slip of the pen is said to be one, and no spread', () => {
    const found = read('1: 3.2478, 2: 3.2477, 3: 3.2748, 4: 3.2479, 5: 3.2478');
    expect(messages(found, 'reading/implausible')).toHaveLength(1);
    expect(messages(found, 'reading/spread')).toEqual([]);
  });
});

describe('shells that were chosen by their thickness', () => {
  const WALLS =
    '  - { measure: main_shell_thickness, with: mic, at: { 1: 0.0985, 2: 0.0985, 3: 0.0975, 4: 0.0985, 5: 0.0985, 6: 0.0985, 7: 0.0985 } }\n';
  const of = (session: ReturnType<typeof read>): readonly string[] =>
    ['reading/spread', 'reading/implausible'].flatMap((code) => messages(session, code));
  const shells = (fitted: string, wall = '0.0975') =>
    of(read('1: 3.2478', `${WALLS.replace('0.0975', wall)}${fitted}`));

  test.each(['0.0975', '0.0981'])(
    'one of %s in, thinner than the others, is said where nobody states it',
    (wall) => {
      expect(shells('', wall)).toHaveLength(1);
      expect(shells('fitted: { main_shells: { code: C, at: { 3: { mark: G6 } } } }\n', wall)).toHaveLength(1);
    },
  );

  test.each([
    ['code', 'fitted: { main_shells: { code: C, at: { 3: { code: B } } } }'],
    ['code at that place alone', 'fitted: { main_shells: { at: { 3: { code: B } } } }'],
    ['size', 'fitted: { main_shells: { size: std, at: { 3: 0.002 under } } }'],
    ['size, as it was replaced', 'replaced: [{ part: main shell 3, size: 0.002 under }]'],
  ])('is no slip where its %s is stated', (_, fitted) => {
    expect(shells(`${fitted}\n`)).toEqual([]);
    expect(shells(`${fitted}\n`, '0.0981')).toEqual([]);
  });

  test('is compared with the others again once all were replaced', () => {
    const fitted = 'fitted: { main_shells: { code: C, at: { 3: { code: B } } } }';
    const [before, after] = ['2026-02-01', '2026-02-02'].map((date, index) => [
      `${date}.yaml`,
      `kind: session\nstage: teardown\ndate: ${date}\nreadings: []\n${index === 0 ? fitted : 'replaced: [{ part: main shells }]'}\n`,
    ]);
    const now = (...sessions: readonly (readonly string[] | undefined)[]) =>
      of(read('1: 3.2478', WALLS, Object.fromEntries(sessions.flatMap((each) => (each ? [each] : [])))));
    expect(now(before)).toEqual([]);
    expect(now(before, after)).toHaveLength(1);
  });
});

describe('a register that says little of an instrument', () => {
  const withGauge = (gauge: string, at: string) =>
    lastJudged({
      'engine.yaml':
        'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 7, cylinders: 6, crankpins: 6 }\n',
      'instruments.yaml': `kind: instruments\ninstruments:\n  gauge: ${gauge}\n`,
      's.yaml': `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings:\n  - { measure: rod_side_clearance, with: gauge, at: { ${at} } }\n`,
    });

  test.each([
    ['leaves with their error alone', '{ type: feeler gauge, max_error: 0.0003 in }'],
    ['leaves with nothing', '{ type: feeler gauge }'],
    ['a dial with its error alone', '{ type: dial indicator, max_error: 0.001 in }'],
  ])('of %s two readings are known to a step of what was written, never to ±0', (_, gauge) => {
    const found = withGauge(gauge, '1: 0.012, 2: 0.013, 3: 0.022, 4: 0.012, 5: 0.013, 6: 0.012');
    expect(messages(found, 'reading/spread')).toEqual([
      expect.stringMatching(
        /^rod side clearance 3: 0\.022 in differs by 9 thou \(±0\.0008\d+ in\) from the nearest position/,
      ),
    ]);
    // Three steps lie within three times what is known.
    const near = withGauge(gauge, '1: 0.012, 2: 0.012, 3: 0.014, 4: 0.012, 5: 0.012, 6: 0.012');
    expect(messages(near, 'reading/spread')).toEqual([]);
  });

  test.each([
    ['out_of_round', '[[3.2478, 3.2478]], directions: [a, b]'],
    ['taper', '[3.2478, 3.2478], stations: [front, rear]'],
  ])('readings that are all alike leave %s as uncertain as any', (form, at) => {
    const [alike, unlike] = [at, at.replace('3.2478', '3.2477')].map((each) => {
      const [list, ...named] = each.split(/, (?=stations|directions)/);
      return lastJudged({
        'engine.yaml':
          'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 1, cylinders: 1, crankpins: 1 }\n',
        'limits.yaml': `kind: limits\nsource: invented\nlimits: { main_journal_${form}: { wear: { max: 0.0010 } } }\n`,
        'instruments.yaml':
          'kind: instruments\ninstruments:\n  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }\n',
        's.yaml': `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings:\n  - { measure: main_journal_diameter, with: mic, ${named.join(', ')}, at: { 1: ${list} } }\n`,
      });
    });
    const expanded = (session: typeof alike): number | undefined =>
      session && rowAt(session, `main_journal_${form}`, '1').routes[0]?.route.expanded;
    expect(expanded(alike)).toBeGreaterThan(0);
    expect(expanded(alike)).toBe(expanded(unlike));
  });

  test('a name and a type alone are taken for any of that type, and that is said', () => {
    const bare = withGauge('{ type: feeler gauge }', '1: 0.012');
    expect(messages(bare, 'instrument/assumed')).toEqual([
      'rod side clearance: the register states no error of gauge; the largest error of a feeler gauge is assumed, ±0.00039 in',
    ]);
    const [row] = bare.rows;
    expect(row?.routes[0]?.route.expanded).toBeGreaterThan(0);
    const stated = withGauge('{ type: feeler gauge, max_error: 0.0003 in }', '1: 0.012');
    expect(messages(stated, 'instrument/assumed')).toEqual([]);
  });
});

describe('readings of one point over again', () => {
  const repeats = (list: string) => {
    const row = rowAt(read(`1: { repeat: [${list}] }`), 'main_journal_diameter', '1').routes[0];
    if (row === undefined) throw new Error('no route');
    return row.route;
  };

  test('scatter by more than the register says: s/√n with n − 1 degrees of freedom stands for it', () => {
    const route = repeats('3.2478, 3.2477, 3.2479, 3.2478');
    // s of 8, 7, 9, 8 tenths is √(2/3) tenths
    const spread = (Math.sqrt(2 / 3) * 25_400) / 2;
    const term = [...route.measured.mean.terms].find(([source]) => source.startsWith('spread'))?.[1];
    expect(term?.u).toBeCloseTo(spread, 6);
    expect(term?.dof).toBe(3);
    const gauge = Math.hypot(25_400 / Math.sqrt(3), 25_400 / Math.sqrt(12));
    expect(route.u).toBeCloseTo(Math.hypot(spread, gauge), 6);
    // JCGM 100:2008 G.4.1: all of the degrees of freedom are the repeats'
    expect(route.dof).toBeCloseTo(3 * (Math.hypot(spread, gauge) / spread) ** 4, 6);
  });

  test('scatter by less than the register says: what it says, divided by √n', () => {
    const gauge = Math.hypot(25_400 / Math.sqrt(3), 25_400 / Math.sqrt(12));
    expect(repeats('3.2478').u).toBeCloseTo(Math.hypot(gauge, 7_620), 6);
    for (const count of [2, 3, 9]) {
      const { u } = repeats(Array(count).fill('3.2478').join(', '));
      expect(u).toBeCloseTo(Math.hypot(gauge, 7_620 / Math.sqrt(count)), 6);
    }
    expect(repeats('3.2478, 3.2478').dof).toBe(Number.POSITIVE_INFINITY);
  });

  // NIST StRD, Michelson's velocity of light: mean 299.8524, standard deviation 0.0790105478190518 of 100.
  test("Michelson's hundred readings have the certified mean, and their spread a tenth of the certified deviation", () => {
    const list = readRows('nist-strd-michelso').map(({ y }) => `${y} mm`);
    const route = repeats(list.join(', '));
    expect(toNumber(route.measured.mean.amount)).toBeCloseTo(2_998_524_000, 3);
    const term = [...route.measured.mean.terms].find(([source]) => source.startsWith('spread'))?.[1];
    expect((term?.u ?? 0) / 1e7).toBeCloseTo(0.0790105478190518 / 10, 12);
    expect(term?.dof).toBe(99);
  });

  test('a mean of three that no decimal writes is judged as it is', () => {
    const { amount } = repeats('3.2478, 3.2477, 3.2477').measured.mean;
    expect(3n * amount.n).toBe((32478n + 32477n + 32477n) * 25_400n * amount.d);
  });
});
