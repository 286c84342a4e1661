import { describe, expect, it } from 'vitest';
import type { Characteristic } from '../../src/characteristics/characteristic.ts';
import { characteristics } from '../../src/characteristics/registry.ts';
import { ENGINE, STEP } from '../../src/layout/family.ts';
import { unitsOf } from '../../src/quantity/units.ts';
import { type Files, reportOf } from '../shopOf.ts';
import { firstOf, WHOLE_LAYOUT } from './workedOut.ts';

const unitName = ({ quantity }: Characteristic): string => unitsOf(quantity)[0]?.name ?? '';

const withUnit = (number: string, of: Characteristic): string => `${number} ${unitName(of)}`.trim();

/** Where a reading stands, by the axes of what is read. */
function placed({ family }: Characteristic, reading: string): string {
  if (family === ENGINE) return `value: ${reading}`;
  if (family === STEP) return `after: [{ step: crankshaft, value: ${reading} }]`;
  return `at: { ${firstOf(family)}: ${reading} }`;
}

/** A session of one day each for every reading, in their order. */
const shopWith = (of: Characteristic, readings: readonly string[], limits: string): Files => ({
  'e/engine.yaml': `kind: engine\nname: A\nunits: { length: in, force: lbf }\n${WHOLE_LAYOUT}`,
  'e/limits.yaml': `kind: limits\nsource: Invented.\n${limits}`,
  ...Object.fromEntries(
    readings.map((reading, index) => [
      `e/${index}.yaml`,
      `kind: session\nstage: rebuild\ndate: 2026-02-0${index + 1}\nreadings:\n  - { measure: ${of.id}, ${placed(of, reading)} }\n`,
    ]),
  ),
});

/** The verdict on each reading, and what an error says. */
const judged = (
  of: Characteristic,
  readings: readonly string[],
  limits: string,
): readonly (readonly [unknown, string])[] =>
  reportOf(shopWith(of, readings, limits)).sessions.map(({ rows, findings }) => {
    const row = rows.find(({ characteristic, routes }) => characteristic.id === of.id && routes.length > 0);
    const error = findings.find(({ code, measure }) => code === 'reading/out' && measure === of.id);
    return [row?.judgement.verdict, error?.message ?? ''];
  });

const measured = characteristics.filter(({ quantity }) => quantity !== 'pass or fail');
const tests = characteristics.filter(({ quantity }) => quantity === 'pass or fail');
const named = (all: readonly Characteristic[]) => all.map((each) => [each.id, each] as const);

describe('every characteristic', () => {
  it('and there are those of a whole engine', () => expect(measured.length).toBeGreaterThan(200));

  it.each(named(measured))('%s is judged inside, on and beyond each side of its limits', (_, of) => {
    const limits = `limits: { ${of.id}: { new: { min: ${withUnit('10', of)}, max: ${withUnit('20', of)} } } }\n`;
    const readings = ['15', '10', '20', '9.9', '20.1'].map((reading) => withUnit(reading, of));
    const [inside, least, most, below, above] = judged(of, readings, limits);
    expect([inside, least, most]).toEqual([
      ['ok', ''],
      ['ok', ''],
      ['ok', ''],
    ]);
    expect(below?.[0]).toBe('out');
    expect(below?.[1]).toContain(`, ${of.words.below} by `);
    expect(above?.[0]).toBe('out');
    expect(above?.[1]).toContain(`, ${of.words.above} by `);
  });

  it.each(named(tests))('%s is passed, or out in the words of its finding', (_, of) => {
    expect(of.outcomes).toBeDefined();
    const [passed, failed] = judged(of, ['pass', 'fail'], 'limits: {}\n');
    expect(passed).toEqual(['ok', '']);
    expect(failed?.[0]).toBe('out');
    expect(failed?.[1]).toContain(of.outcomes?.fail);
  });

  it('comes with what can hurt, in words', () => {
    for (const { id, caution } of characteristics) {
      if (caution !== undefined) expect(caution.length, id).toBeGreaterThan(20);
    }
    for (const id of ['compression_pressure', 'leak_down', 'valve_spring_load_open', 'valve_stem_diameter'])
      expect(characteristics.find((each) => each.id === id)?.caution, id).toBeDefined();
  });
});

describe('a session of an engine that measures ten figures', () => {
  it('has rows of what was read or limited and of nothing else', () => {
    const of = characteristics.find(({ id }) => id === 'piston_weight');
    const { rows = [] } =
      of === undefined ? {} : (reportOf(shopWith(of, ['500 g'], 'limits: {}\n')).sessions[0] ?? {});
    expect(rows.map(({ characteristic }) => characteristic.id)).toEqual(['piston_weight']);
  });
});
