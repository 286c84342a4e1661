import { describe, expect, test } from 'vitest';
import { warmthNote } from '../../../src/checks/value/blockWarmth.ts';
import { compare, toNumber } from '../../../src/quantity/fraction.ts';
import { lastJudged, messages, rowAt } from '../bench.ts';

const engine = (materials: string): string => `kind: engine
name: A
units: { length: in }
layout: { mains: 2, cylinders: 2, crankpins: 2 }
materials: ${materials}
`;
const limits = `kind: limits
source: invented
limits:
  main_journal_diameter: { new: { min: 3.2475, max: 3.2485 } }
  piston_diameter: { new: { min: 4.0000, max: 4.0010 } }
`;
const session = (temperature: string, blocks: string): string => `kind: session
stage: rebuild
date: 2026-02-03
${temperature}
readings:
${blocks}`;

const PISTON = '  - { measure: piston_diameter, with: mic, at: { 1: 4.0010 } }\n';
const JOURNAL = '  - { measure: main_journal_diameter, with: mic, at: { 1: 3.2485 } }\n';
const STATED = engine('{ crankshaft: steel, pistons: aluminium, block: cast iron }');

const read = (engineText: string, sessionText: string) =>
  lastJudged({ 'engine.yaml': engineText, 'limits.yaml': limits, 's.yaml': sessionText });

describe('temperature', () => {
  test.each([
    ['no temperature is stated', STATED, session('', PISTON + JOURNAL)],
    [
      'the material is not stated',
      engine('{ block: iron }'),
      session('temperature: 35 degC', PISTON + JOURNAL),
    ],
    [
      'the material is not known',
      engine('{ crankshaft: unobtainium, pistons: paper }'),
      session('temperature: 35 degC', PISTON + JOURNAL),
    ],
  ])('nothing is moved where %s: exactly on the limit is inside', (_, engineText, sessionText) => {
    const found = read(engineText, sessionText);
    expect(rowAt(found, 'piston_diameter', '1').judgement.verdict).toBe('ok');
    expect(rowAt(found, 'main_journal_diameter', '1').judgement.verdict).toBe('ok');
    expect(messages(found, 'temperature/corrected')).toEqual([]);
  });

  test('a steel shaft on its limit in a steel micrometer stays on it, however warm the shop', () => {
    const row = rowAt(read(STATED, session('temperature: 95 degF', JOURNAL)), 'main_journal_diameter', '1');
    expect(row.judgement.verdict).toBe('ok');
    expect(
      row.judgement.deciding.max &&
        compare(row.routes[0]?.greatest ?? { n: 0n, d: 1n }, row.judgement.deciding.max.amount),
    ).toBe(0);
  });

  test('a warm aluminium piston weighs what it weighs: nothing is moved, exactly on the limit is inside', () => {
    const found = lastJudged({
      'engine.yaml': STATED,
      'limits.yaml': 'kind: limits\nsource: invented\nlimits: { piston_weight: { new: { min: 1184 g } } }\n',
      's.yaml': session('temperature: 35 degC', '  - { measure: piston_weight, at: { 1: 1184 g } }\n'),
    });
    expect(rowAt(found, 'piston_weight', '1').judgement.verdict).toBe('ok');
    expect(messages(found, 'temperature/corrected')).toEqual([]);
  });

  test('a warm aluminium piston is smaller at 20 °C, and the report says that it was moved', () => {
    const found = read(STATED, session('temperature: 35 degC', PISTON));
    const row = rowAt(found, 'piston_diameter', '1');
    // 4.0010 × (20.75 − 11.5)e-6 × 15
    expect(toNumber(row.routes[0]?.mean ?? { n: 0n, d: 1n }) / 254e6).toBeCloseTo(4.001 - 0.000555, 6);
    expect(row.routes[0]?.route.written).toEqual(['4.0010']);
    expect(warmthNote(row.routes[0]?.route.warmth)).toEqual([
      'reading made at 35 degC, converted to 20 degC',
    ]);
    expect(messages(found, 'temperature/corrected')).toEqual([
      'piston diameter: readings made at 35 degC were converted to 20 degC, 0.00056 in less (aluminium 20.75, steel gauge 11.5 millionths for 1 degC)',
    ]);
  });

  test.each([
    ['by its alloy', 'aluminium D132', '', 20.5, 'aluminium D132 20.5'],
    ['as stated', 'aluminium', '{ pistons: 19.4e-6 per degC }', 19.4, 'aluminium 19.4'],
    [
      'as stated of a material that is not known',
      'secret',
      '{ pistons: 0.0000194 per degC }',
      19.4,
      'secret 19.4',
    ],
    ['as stated for a degree Fahrenheit', 'aluminium', '{ pistons: 10e-6 per degF }', 18, 'aluminium 18'],
  ])('a piston grows %s', (_, material, expansion, millionths, told) => {
    const text = `${engine(`{ pistons: ${material} }`)}${expansion === '' ? '' : `expansion: ${expansion}\n`}`;
    const found = read(text, session('temperature: 35 degC', PISTON));
    const row = rowAt(found, 'piston_diameter', '1');
    const moved = 4.001 * (millionths - 11.5) * 1e-6 * 15;
    expect(toNumber(row.routes[0]?.mean ?? { n: 0n, d: 1n }) / 254e6).toBeCloseTo(4.001 - moved, 6);
    expect(messages(found, 'temperature/corrected')[0]).toContain(`(${told},`);
  });

  const MOVED = 'were converted to 20 degC';
  const GAUGE = '(aluminium 20.75, steel gauge 11.5 millionths for 1 degC)';

  test('two blocks of pistons that were moved alike are one remark', () => {
    const blocks = `${PISTON}${PISTON.replace('1:', '2:')}`;
    const found = read(STATED, session('temperature: 35 degC', blocks));
    expect(messages(found, 'temperature/corrected')).toEqual([
      `piston diameter: readings made at 35 degC ${MOVED}, 0.00056 in less ${GAUGE}`,
    ]);
  });

  test('blocks at two temperatures say which of them they are about', () => {
    const two = engine('{ pistons: aluminium }').replace('cylinders: 2, crankpins: 2', 'cylinders: 4');
    const cool =
      '  - { measure: piston_diameter, with: mic, temperature: 25 degC, at: { 2: 4.0010, 4: 4.0010 } }\n';
    const found = read(two, session('temperature: 35 degC', `${PISTON}${cool}${PISTON.replace('1:', '3:')}`));
    expect(messages(found, 'temperature/corrected')).toEqual([
      `piston diameter 1, 3: readings made at 35 degC ${MOVED}, 0.00056 in less ${GAUGE}`,
      `piston diameter 2, 4: readings made at 25 degC ${MOVED}, 0.00019 in less ${GAUGE}`,
    ]);
  });

  test('a block that was not moved is told apart as well', () => {
    const cold = PISTON.replace('1:', '2:').replace('at:', 'temperature: 20 degC, at:');
    const found = read(STATED, session('temperature: 35 degC', `${PISTON}${cold}`));
    expect(messages(found, 'temperature/corrected')).toEqual([
      `piston diameter 1: readings made at 35 degC ${MOVED}, 0.00056 in less ${GAUGE}`,
    ]);
  });

  test('two gauges that grow unlike are told apart, though the shop was as warm', () => {
    const gauges = `kind: instruments
instruments:
  mic: { type: micrometer }
  frame: { type: micrometer, material: ductile iron }
`;
    const other = PISTON.replace('with: mic', 'with: frame').replace('1:', '2:');
    const found = lastJudged({
      'engine.yaml': engine('{ pistons: aluminium }'),
      'limits.yaml': limits,
      'instruments.yaml': gauges,
      's.yaml': session('temperature: 35 degC', `${PISTON}${other}`),
    });
    expect(messages(found, 'temperature/corrected').map((each) => each.split(':')[0])).toEqual([
      'piston diameter 1',
      'piston diameter 2',
    ]);
  });

  test("a block's own temperature stands before the session's", () => {
    const cold = PISTON.replace('at:', 'temperature: 20 degC, at:');
    const row = rowAt(read(STATED, session('temperature: 35 degC', cold)), 'piston_diameter', '1');
    expect(toNumber(row.routes[0]?.mean ?? { n: 0n, d: 1n }) / 254e6).toBeCloseTo(4.001, 9);
  });

  test('one temperature serves the whole session: its error cancels between like parts', () => {
    const aluminium = engine('{ block: aluminium, pistons: aluminium }');
    const both = `${PISTON}  - { measure: cylinder_bore, with: bore, set_with: mic, at: { 1: 4.0045 } }\n`;
    const row = rowAt(read(aluminium, session('temperature: 35 degC', both)), 'piston_clearance', '1');
    const terms = row.routes[0]?.route.measured.mean.terms ?? new Map();
    const share = [...terms].filter(([source]) => source.startsWith('temperature')).map(([, term]) => term.u);
    expect(share).toHaveLength(1);
    expect(Math.abs(share[0] ?? 1)).toBeLessThan(254);
  });
});
