import { describe, expect, test } from 'vitest';
import { reportOf } from '../../../shopOf.ts';
import { lastJudged, messages, rowAt } from '../../bench.ts';

const read = (bore: string, strip: string, head = '') =>
  lastJudged({
    'engine.yaml': 'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 3 }\n',
    'instruments.yaml': `kind: instruments
instruments:
  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }
  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }
  strip: { type: gauging strip, marks: [0.002 in, 0.003 in, 0.004 in] }
`,
    's.yaml': `kind: session
stage: rebuild
date: 2026-02-03
${head}
readings:
  - { measure: main_journal_diameter, with: mic, at: { 1: 3.2478, 2: 3.2478 } }
  - { measure: main_bearing_bore, with: bore, set_with: mic, ${bore} at: { 1: 3.2508, 2: 3.2508 } }
  - { measure: main_bearing_clearance, with: strip, ${strip} at: { 1: 0.0030, 2: 0.0030 } }
`,
  });

describe('two ways under unlike conditions', () => {
  test('a strip in a dry bearing and a bore gauge in an oiled one are not alike; said once for both journals', () => {
    const found = read('conditions: { bearings: oiled },', 'conditions: { bearings: dry, caps: 110 },');
    expect(messages(found, 'method/conditions')).toEqual([
      'main bearing clearance 1 was measured with bearings oiled (bearing bore − journal) and dry (read directly, strip): measure both alike; likewise at 2',
    ]);
  });

  test.each([
    ['conditions: { bearings: dry },', 'conditions: { bearings: Dry },', 'the same in other letters'],
    ['', 'conditions: { bearings: dry, oil_pump: off },', 'what only one of them says'],
    ['conditions: { threads: oiled },', 'conditions: { oil_pump: off },', 'different things'],
  ])('%s and %s: %s', (bore, strip) => {
    expect(messages(read(bore, strip), 'method/conditions')).toEqual([]);
  });

  test("a block's own conditions stand over the session's", () => {
    const found = read('conditions: { oil_pump: on },', '', 'conditions: { oil_pump: off }');
    // The journal was read under the session's conditions, so that route has both.
    expect(messages(found, 'method/conditions')).toEqual([]);
    const strip = read('', 'conditions: { oil_pump: on },', 'conditions: { oil_pump: off }');
    expect(messages(strip, 'method/conditions')).toEqual([
      'main bearing clearance 1 was measured with oil pump off (bearing bore − journal) and on (read directly, strip): measure both alike; likewise at 2',
    ]);
  });

  test('two blocks of one characteristic are two ways as well', () => {
    const found = lastJudged({
      'engine.yaml': 'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 3 }\n',
      's.yaml': `kind: session
stage: rebuild
date: 2026-02-03
readings:
  - { measure: crankshaft_end_play, conditions: { caps: 40 lbf ft }, value: 0.009 }
  - { measure: crankshaft_end_play, conditions: { caps: 110 lbf ft }, value: 0.008 }
`,
    });
    expect(messages(found, 'method/conditions')).toEqual([
      'crankshaft end play was measured with caps 110 lbf ft (read directly, an unnamed dial indicator) and 40 lbf ft (read directly, an unnamed dial indicator): measure both alike',
    ]);
  });
});

describe('compression and the height above the sea', () => {
  const compression = (conditions: string) =>
    messages(
      lastJudged({
        'engine.yaml': 'kind: engine\nname: A\nunits: { pressure: psi }\nlayout: { cylinders: 2 }\n',
        's.yaml': `kind: session
stage: service
date: 2026-02-03
readings: [{ measure: compression_pressure,${conditions} at: { 1: 150, 2: 152 } }]
`,
      }),
      'method/unstated',
    );

  test('is remarked on where nobody states it', () => {
    expect(compression('')).toEqual([
      'compression pressure 1: altitude not stated; limits and other readings may be of another altitude: write it under conditions; likewise at 2',
    ]);
  });

  test('is not where it is stated', () => {
    expect(compression(' conditions: { altitude: 2500 ft },')).toEqual([]);
  });
});

describe('what nobody states', () => {
  const unstated = (layout: string, readings: string) =>
    messages(
      lastJudged({
        'engine.yaml': `kind: engine\nname: A\nunits: { pressure: psi }\nlayout: ${layout}\n`,
        's.yaml': `kind: session\nstage: service\ndate: 2026-02-03\nreadings:\n${readings}`,
      }),
      'method/unstated',
    );

  test('of several figures is said once; what is worked out from them goes without saying', () => {
    const events = ['intake_opening', 'intake_closing']
      .map((id) => `  - { measure: ${id}, at: { 1: 9 deg, 2: 9 deg } }\n`)
      .join('');
    expect(unstated('{ cylinders: 2 }', events)).toEqual([
      'intake opening 1 and intake closing 1: lift not stated; limits and other readings may be of another lift: write it under conditions; likewise at 2',
    ]);
  });

  test('of one figure at more cylinders than of the other is said of each', () => {
    const events = `  - { measure: intake_opening, at: { 1: 9 deg, 2: 9 deg } }
  - { measure: intake_closing, at: { 1: 55 deg } }
`;
    expect(unstated('{ cylinders: 2 }', events)).toEqual([
      'intake opening 1 and intake closing 1: lift not stated; limits and other readings may be of another lift: write it under conditions',
      'intake opening 2: lift not stated; limits and other readings may be of another lift: write it under conditions',
    ]);
  });

  test('of two conditions names both, or the one that is left out', () => {
    const pressure = (conditions: string) =>
      unstated('{}', `  - { measure: oil_pressure_idle,${conditions} value: 12 }\n`);
    expect(pressure('')).toEqual([
      'oil pressure, idling: speed and temperature not stated; limits and other readings may be of another speed and temperature: write them under conditions',
    ]);
    expect(pressure(' conditions: { speed: 700 rpm },')).toEqual([
      'oil pressure, idling: temperature not stated; limits and other readings may be of another temperature: write it under conditions',
    ]);
  });

  test('of what is worked out from readings that state nothing else is said of it', () => {
    const pressures = `  - { measure: leak_down_supply, at: { 1: 80 } }
  - { measure: leak_down_held, at: { 1: 74 } }
`;
    expect(unstated('{ cylinders: 1 }', pressures)).toEqual([
      'leak-down 1: orifice not stated; limits and other readings may be of another orifice: write it under conditions',
    ]);
  });
});

describe('valve events at unlike lifts', () => {
  const at = (degrees: readonly number[]): string =>
    `at: { ${degrees.map((each, index) => `${index + 1}: ${each} deg`).join(', ')} }`;
  const events = (opening: string, closing: string, more = '', opened = [9]) => ({
    'engine.yaml': `kind: engine\nname: A\nunits: { length: in }\nlayout: { cylinders: ${opened.length} }\n`,
    's.yaml': `kind: session
stage: rebuild
date: 2026-02-03
readings:
  - { measure: intake_opening, conditions: { lift: ${opening} }, ${at(opened)} }
  - { measure: intake_closing, conditions: { lift: ${closing} }, ${at(opened.map((each) => each + 46))} }
${more}`,
  });

  test('an opening at 0.050 in and a closing at 1 mm give no duration and no centre, and it says which lifts', () => {
    const found = lastJudged(events('0.050 in', '1 mm'));
    expect(found.rows.some(({ characteristic }) => /duration|centreline/.test(characteristic.id))).toBe(
      false,
    );
    expect(messages(found, 'method/conditions')).toEqual([
      'intake duration 1 and intake lobe centre 1 are not worked out, since their readings differ in their lift: intake opening 1 at 0.050 in and intake closing 1 at 1 mm; read all of them at one lift',
    ]);
  });

  test('of four cylinders it is said once, with all that is not worked out, and none of it is called unmeasured', () => {
    const everyCylinder = events('0.050 in', '1 mm', '', [9, 10, 11, 12]);
    const found = lastJudged({
      ...everyCylinder,
      'limits.yaml':
        'kind: limits\nsource: invented\nlimits: { intake_duration: { new: { min: 240, max: 250 } }, intake_centreline: { new: { min: 105, max: 115 } } }\n',
    });
    expect(messages(found, 'method/conditions')).toEqual([
      'intake duration 1 and intake lobe centre 1 are not worked out, since their readings differ in their lift: intake opening 1 at 0.050 in and intake closing 1 at 1 mm; read all of them at one lift; likewise at 2, 3, 4',
    ]);
    expect(messages(found, 'session/unmeasured')).toEqual([]);
  });

  test('each lift that differs is said by itself', () => {
    const found = lastJudged(
      events(
        '0.050 in',
        '1 mm',
        `  - { measure: exhaust_opening, conditions: { lift: 1.5 mm }, at: { 1: 51 deg } }
  - { measure: exhaust_closing, conditions: { lift: 1 mm }, at: { 1: 13 deg } }
`,
      ),
    );
    expect(messages(found, 'method/conditions').map((each) => each.split(',')[0])).toEqual([
      'intake duration 1 and intake lobe centre 1 are not worked out',
      'exhaust duration 1 and exhaust lobe centre 1 are not worked out',
    ]);
  });

  test.each([
    ['0.050 in', '0.05 in'],
    ['0.050 in', '1.27 mm'],
    ['0.050 in', '0.050'],
    ['0.050', '0.05'],
    ['at first movement', 'At first movement'],
  ])('%s and %s are one lift', (opening, closing) => {
    const found = lastJudged(events(opening, closing));
    expect(rowAt(found, 'intake_duration', '1').routes).toHaveLength(1);
    expect(messages(found, 'method/conditions')).toEqual([]);
  });

  test.each([
    ['0.050', '0.06 in'],
    ['0.050', '0.06'],
    ['0.050 in', 'at first movement'],
  ])('%s and %s are not', (opening, closing) => {
    expect(messages(lastJudged(events(opening, closing)), 'method/conditions')).toHaveLength(1);
  });

  test('events taken at two lifts go together lift by lift', () => {
    const found = lastJudged(
      events(
        '0.050 in',
        '0.050 in',
        `  - { measure: intake_opening, conditions: { lift: 1 mm }, at: { 1: 12 deg } }
  - { measure: intake_closing, conditions: { lift: 1 mm }, at: { 1: 58 deg } }
`,
      ),
    );
    // An opening and a closing of unlike lifts would give 247.
    const durations = rowAt(found, 'intake_duration', '1').routes.map(({ mean }) => Number(mean.n / mean.d));
    expect(durations).not.toHaveLength(0);
    for (const duration of durations) expect([244, 250]).toContain(duration);
  });

  test('a duration with a limit is not called unmeasured as well', () => {
    const found = lastJudged({
      ...events('0.050 in', '1 mm'),
      'limits.yaml':
        'kind: limits\nsource: invented\nlimits: { intake_duration: { new: 240 deg to 250 deg } }\n',
    });
    expect(messages(found, 'session/unmeasured')).toEqual([]);
  });

  test('what an earlier session of the run read at another lift does not go with it either', () => {
    const both = events('0.050 in', '1 mm');
    const session = (without: string, date: string) =>
      both['s.yaml']
        .split('\n')
        .filter((line) => !line.includes(without))
        .join('\n')
        .replace('2026-02-03', date);
    const { state } = reportOf({
      'engine/engine.yaml': both['engine.yaml'],
      'engine/a.yaml': session('intake_closing', '2026-02-03'),
      'engine/b.yaml': session('intake_opening', '2026-02-04'),
    });
    expect(state?.findings.filter(({ code }) => code === 'method/conditions')).toHaveLength(1);
  });
});

describe('two ways that disagree', () => {
  // E_n of ISO 13528: 0.0010 in over the root sum of squares of ±0.00057 and ±0.00016.
  test('a strip that reads a thousandth more than the gauge does disagrees; half a thousandth more does not', () => {
    const at = (strip: string) =>
      lastJudged({
        'engine.yaml': 'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 1 }\n',
        'instruments.yaml': `kind: instruments
instruments:
  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }
  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }
  strip: { type: gauging strip, marks: [0.002 in, 0.003 in, 0.004 in] }
`,
        's.yaml': `kind: session
stage: rebuild
date: 2026-02-03
readings:
  - { measure: main_journal_diameter, with: mic, at: { 1: 3.2478 } }
  - { measure: main_bearing_bore, with: bore, set_with: mic, at: { 1: 3.2503 } }
  - { measure: main_bearing_clearance, with: strip, at: { 1: ${strip} } }
`,
      });
    const far = rowAt(at('0.0035'), 'main_bearing_clearance', '1').routes;
    expect(far.map(({ route }) => route.name)).toEqual(['bearing bore − journal', 'read directly']);
    const strip = (0.0005 / Math.sqrt(3)) ** 2;
    const gauge = (0.0001 / Math.sqrt(3)) ** 2 + (3 * 0.0001 ** 2) / 12;
    expect(far[1]?.en).toBeCloseTo(0.001 / (1.959964 * Math.sqrt(strip + gauge)), 4);
    expect(messages(at('0.0035'), 'method/disagree')).toHaveLength(1);
    expect(messages(at('0.0030'), 'method/disagree')).toEqual([]);
  });
});
