import { describe, expect, test } from 'vitest';
import { rowJson } from '../../../src/output/check/rowJson.ts';
import { toNumber } from '../../../src/quantity/fraction.ts';
import { unitNamed } from '../../../src/quantity/units.ts';
import { lastJudged, rowAt } from '../bench.ts';

const engine = (more: string): string => `kind: engine
name: A
units: { length: in }
layout: { mains: 2, cylinders: 2, crankpins: 2 }
${more}
`;
const ALLOYS = 'materials: { pistons: aluminium 356, block: cast iron, crankshaft: steel }';
const RUNNING = 'running: { temperature: 90 degC, pistons: 180 degC }';

const CYLINDER = `  - { measure: cylinder_bore, with: bore, set_with: mic, at: { 1: 4.0040 } }
  - { measure: piston_diameter, with: mic, at: { 1: 4.0000 } }
`;
const MAIN = `  - { measure: main_bearing_bore, with: bore, set_with: mic, at: { 1: 3.2505 } }
  - { measure: main_journal_diameter, with: mic, at: { 1: 3.2480 } }
`;

const rowOf = (more: string, blocks: string, measure = 'piston_clearance', limits = '') =>
  rowAt(
    lastJudged({
      'engine.yaml': engine(more),
      'limits.yaml': `kind: limits\nsource: invented\n${limits}limits: { ${measure}: { new: { min: 0.0010 } } }\n`,
      's.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings:\n${blocks}`,
    }),
    measure,
    '1',
  );
const more = (...asked: Parameters<typeof rowOf>): number | undefined => {
  const { hot } = rowOf(...asked);
  return hot && toNumber(hot.more.amount) / 254e6;
};

describe('a clearance in the running engine', () => {
  // 4.000 in of aluminium 356, 21.5 millionths, at 70 °F instead of 68: 0.000096 in (references: Callister, appendix B.6).
  test('is less by what a piston of 4.000 in grows in two degrees Fahrenheit, 0.000096 in', () => {
    const warm = 'running: { block: 68 degF, pistons: 70 degF }';
    expect(more(`${ALLOYS}\n${warm}`, CYLINDER)).toBeCloseTo(-0.0000956, 7);
  });

  test('is that of the bore and the piston as each of them grows', () => {
    const grown = 4.004 * 11.4e-6 * 70 - 4.0 * 21.5e-6 * 160;
    expect(more(`${ALLOYS}\n${RUNNING}`, CYLINDER)).toBeCloseTo(grown, 9);
    const { hot } = rowOf(`${ALLOYS}\n${RUNNING}`, CYLINDER);
    expect(hot?.at).toEqual(['block 90 degC', 'pistons 180 degC']);
  });

  test('of one material and temperature grows as a part does', () => {
    const alike =
      'materials: { pistons: aluminium 356, block: aluminium 356 }\nrunning: { temperature: 120 degC }';
    expect(more(alike, CYLINDER)).toBeCloseTo(0.004 * 21.5e-6 * 100, 9);
  });

  test('is uncertain by what the expansion of its parts is', () => {
    const { hot } = rowJson(rowOf(`${ALLOYS}\n${RUNNING}`, CYLINDER), () => unitNamed('in'));
    const u = Math.hypot(4.004 * 1.14e-6 * 70, 4.0 * 0.5e-6 * 160) / Math.sqrt(3);
    expect(hot?.U).toBeCloseTo(1.959964 * u, 8);
    expect(hot?.mean).toBeCloseTo(0.004 + (hot?.by ?? 0), 9);
  });

  test('moves what was read directly as far as what comes of its parts', () => {
    const direct = `${MAIN}  - { measure: main_bearing_clearance, with: strip, at: { 1: 0.0020 } }\n`;
    const row = rowOf(`${ALLOYS}\n${RUNNING}`, direct, 'main_bearing_clearance');
    const grown = 3.2505 * 11.4e-6 * 70 - 3.248 * 11.5e-6 * 70;
    expect(toNumber(row.hot?.more.amount ?? { n: 0n, d: 1n }) / 254e6).toBeCloseTo(grown, 9);
  });

  test('begins at 20 °C, wherever its limits hold', () => {
    const warm = CYLINDER.replaceAll('at: {', 'temperature: 35 degC, at: {');
    const elsewhere = more(`${ALLOYS}\n${RUNNING}`, warm, 'piston_clearance', 'temperature: 95 degF\n');
    expect(elsewhere).toBe(more(`${ALLOYS}\n${RUNNING}`, warm));
  });

  test.each([
    ['nothing is stated of the running engine', ALLOYS, CYLINDER],
    ['a part has no material', `materials: { block: cast iron }\n${RUNNING}`, CYLINDER],
    ['a material is not known', `materials: { block: cast iron, pistons: paper }\n${RUNNING}`, CYLINDER],
    ['a part has no temperature', `${ALLOYS}\nrunning: { pistons: 180 degC }`, CYLINDER],
    [
      'one of three parts has no material',
      `materials: { block: cast iron, crankshaft: steel }\n${RUNNING}`,
      `  - { measure: main_housing_bore, with: bore, set_with: mic, at: { 1: 3.4385 } }
  - { measure: main_shell_thickness, with: mic, at: { 1: 0.0940 } }
  - { measure: main_journal_diameter, with: mic, at: { 1: 3.2480 } }
`,
      'main_bearing_clearance',
    ],
    [
      'it was read without its parts',
      `${ALLOYS}\n${RUNNING}`,
      '  - { measure: piston_clearance, with: feeler, at: { 1: 0.0040 } }\n',
    ],
  ])('is not estimated where %s', (_, stated, blocks, measure = 'piston_clearance') => {
    expect(rowOf(stated, blocks, measure).hot).toBeUndefined();
  });

  test('is never that of a form', () => {
    const ends =
      '  - { measure: cylinder_bore, with: bore, directions: [thrust, axial], at: { 1: [4.0040, 4.0060] } }\n';
    const row = rowOf(`${ALLOYS}\n${RUNNING}`, ends, 'cylinder_out_of_round');
    expect([row.routes.length, row.hot]).toEqual([1, undefined]);
  });

  test('is never that of a size', () => {
    expect(rowOf(`${ALLOYS}\n${RUNNING}`, CYLINDER, 'piston_diameter').hot).toBeUndefined();
  });
});
