import { describe, expect, test } from 'vitest';
import { lastJudged, messages, rowAt } from '../bench.ts';

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
      'main bearing clearance 1: bearings oiled (bearing bore − journal) and dry (read directly, strip); likewise at 2',
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
      'main bearing clearance 1: oil pump off (bearing bore − journal) and on (read directly, strip); likewise at 2',
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
      'crankshaft end play: caps 110 lbf ft (read directly, an unnamed dial indicator) and 40 lbf ft (read directly, an unnamed dial indicator)',
    ]);
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
