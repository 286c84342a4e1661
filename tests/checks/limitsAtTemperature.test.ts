import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rowJson } from '../../src/output/check/rowJson.ts';
import { toNumber } from '../../src/quantity/fraction.ts';
import { unitNamed } from '../../src/quantity/units.ts';
import { runs } from '../propertyRuns.ts';
import { type Documents, lastJudged, messages, rowAt } from './bench.ts';

const engine = (
  materials = '{ pistons: aluminium, block: cast iron, crankshaft: steel }',
): string => `kind: engine
name: A
units: { length: in }
layout: { mains: 2, cylinders: 2, crankpins: 2 }
materials: ${materials}
`;
const limits = (head: string, body: string): string => `kind: limits
source: invented
${head}
limits:
${body}`;
const session = (temperature: string, blocks: string): string => `kind: session
stage: rebuild
date: 2026-02-03
${temperature === '' ? '' : `temperature: ${temperature}`}
readings:
${blocks}`;

const PISTON = '  - { measure: piston_diameter, with: mic, at: { 1: 4.1240 } }\n';
const MIN = '  piston_diameter: { new: { min: 4.1240 } }\n';

const shop = (limitsText: string, sessionText: string, engineText = engine()): Documents => ({
  'engine.yaml': engineText,
  'limits.yaml': limitsText,
  's.yaml': sessionText,
});
const piston = (documents: Documents) => rowAt(lastJudged(documents), 'piston_diameter', '1');
const inches = (amount: { n: bigint; d: bigint } | undefined): number =>
  toNumber(amount ?? { n: 0n, d: 1n }) / 254e6;

/** 4.1240 × (20.75 − 11.5)e-6, for a degree Celsius. */
const A_DEGREE = 4.124 * 9.25e-6;

describe('limits at another temperature', () => {
  test.each([
    ['a document', limits('temperature: 70 degF', MIN)],
    ['one limit', limits('', '  piston_diameter: { temperature: 70 degF, new: { min: 4.1240 } }\n')],
    [
      'a position',
      limits(
        '',
        '  piston_diameter: { new: { min: 5 }, at: { 1: { temperature: 70 degF, new: { min: 4.1240 } } } }\n',
      ),
    ],
    [
      'one limit, another than its document',
      limits('temperature: 20 degC', '  piston_diameter: { temperature: 70 degF, new: { min: 4.1240 } }\n'),
    ],
  ])('stated for %s: a piston read at 70 °F exactly on it is inside, as it was written', (_, text) => {
    const found = lastJudged(shop(text, session('70 degF', PISTON)));
    const row = rowAt(found, 'piston_diameter', '1');
    expect(row.judgement.verdict).toBe('ok');
    expect(row.routes[0]?.least).toEqual(row.judgement.deciding.min?.amount);
    expect(inches(row.routes[0]?.least)).toBe(4.124);
    expect(messages(found, 'temperature/corrected')).toEqual([]);
  });

  test('the same piston at 70 °F against the same figure at 20 °C is out by what it grew', () => {
    const row = piston(shop(limits('', MIN), session('70 degF', PISTON)));
    expect(row.judgement.verdict).toBe('out');
    expect(inches(row.judgement.past?.by)).toBeCloseTo((A_DEGREE * 10) / 9, 8);
  });

  test('a reading at 24 °C is taken to the temperature of its limits, and the report says so', () => {
    const found = lastJudged(shop(limits('temperature: 70 degF', MIN), session('24 degC', PISTON)));
    const row = rowAt(found, 'piston_diameter', '1');
    expect(inches(row.routes[0]?.mean)).toBeCloseTo(4.124 - A_DEGREE * (24 - 190 / 9), 8);
    expect(messages(found, 'temperature/corrected')).toEqual([
      'piston diameter: readings made at 24 degC were converted to 70 degF, 0.00011 in less (aluminium 20.75, steel gauge 11.5 millionths for 1 degC)',
    ]);
  });

  test('a reading of which no temperature is stated is compared as it is written', () => {
    const row = piston(shop(limits('temperature: 70 degF', MIN), session('', PISTON)));
    expect(row.judgement.verdict).toBe('ok');
    expect(inches(row.routes[0]?.least)).toBe(4.124);
  });

  test("a clearance's bore and piston are both taken there, each by its own material and temperature", () => {
    const blocks = `  - { measure: cylinder_bore, with: bore, set_with: mic, temperature: 10 degC, at: { 1: 4.1280 } }
  - { measure: piston_diameter, with: mic, temperature: 30 degC, at: { 1: 4.1240 } }
`;
    const text = limits(
      '',
      '  piston_clearance: { temperature: 40 degC, new: { min: 0.0010, max: 0.0060 } }\n',
    );
    const aluminium = engine('{ pistons: aluminium, block: aluminium 356 }');
    const row = rowAt(lastJudged(shop(text, session('', blocks), aluminium)), 'piston_clearance', '1');
    const bore = 4.128 * (1 + (21.5 - 11.5) * 1e-6 * 30);
    const smaller = 4.124 * (1 + (20.75 - 11.5) * 1e-6 * 10);
    expect(inches(row.routes[0]?.mean)).toBeCloseTo(bore - smaller, 8);
  });

  test('a limit worked out of a reading sees it at its own temperature', () => {
    const blocks = `${PISTON}  - { measure: cylinder_bore, with: bore, set_with: mic, at: { 1: 4.1280 } }\n`;
    const text = limits(
      'temperature: 35 degC',
      '  piston_diameter: { new: { max: { formula: "cylinder_bore - 0.004" } } }\n',
    );
    const aluminium = engine('{ pistons: aluminium, block: aluminium }');
    const row = piston(shop(text, session('35 degC', blocks), aluminium));
    expect(inches(row.judgement.deciding.max?.amount)).toBe(4.124);
    expect(row.judgement.verdict).toBe('ok');
  });

  test('a limit that is moved to a service size is at the temperature of the standard one', () => {
    const bored = `${session('70 degF', '  - { measure: piston_diameter, with: mic, at: { 1: 4.1540 } }\n')}fitted: { pistons: { size: 0.030 over } }\n`;
    const row = piston(shop(limits('temperature: 70 degF', MIN), bored));
    expect(row.limits.inForce.rules.new).toBe('moved');
    expect(row.judgement.verdict).toBe('ok');
    expect(row.routes[0]?.least).toEqual(row.judgement.deciding.min?.amount);
  });

  test('a document that another one extends keeps its own temperature', () => {
    const documents = {
      'engine.yaml': engine(),
      'maker.yaml': limits(
        'temperature: 70 degF',
        '  piston_diameter: { new: { min: 4.1240, max: 4.1250 } }\n',
      ),
      'shop.limits.yaml': limits('extends: maker.yaml', '  piston_diameter: { target: { min: 4.1240 } }\n'),
      's.yaml': session('70 degF', PISTON),
    };
    const row = piston(documents);
    expect(row.limits.inForce.temperatures).toEqual({ new: expect.objectContaining({ text: '70 degF' }) });
    expect(inches(row.routes[0]?.least)).toBe(4.124);
    expect(row.judgement.verdict).toBe('off target');
    expect(inches(row.judgement.past?.by)).toBeCloseTo((A_DEGREE * 10) / 9, 8);
  });

  test('of limits at two temperatures each is met exactly by what was read exactly on it there, at both ends', () => {
    const own = '{ temperature: 35 degC, wear: { min: 4.1240, max: 4.1790 } }';
    const text = limits(
      '',
      `  piston_diameter: { temperature: 70 degF, new: { max: 4.1700 }, at: { 1: ${own} } }\n`,
    );
    const ends =
      '  - { measure: piston_diameter, with: mic, directions: [a, b], at: { 1: [4.1240, 4.1790] } }\n';
    const row = piston(shop(text, session('35 degC', ends).replace('rebuild', 'teardown')));
    const { min, max } = row.judgement.deciding;
    expect([row.routes[0]?.least, row.routes[0]?.greatest]).toEqual([min?.amount, max?.amount]);
    expect(inches(min?.stated)).toBe(4.124);
    expect(row.judgement.verdict).toBe('worn');
  });

  test('the result as data holds where the limits hold and what was done to each reading', () => {
    const row = piston(shop(limits('temperature: 70 degF', MIN), session('24 degC', PISTON)));
    const { limits_degC, routes } = rowJson(row, () => unitNamed('in'));
    expect(limits_degC).toBeCloseTo(190 / 9, 10);
    expect(routes[0]?.taken).toEqual([
      {
        measure: 'piston_diameter',
        position: '1',
        at: { cylinder: '1' },
        from_degC: 24,
        to_degC: limits_degC,
        by: expect.closeTo(-A_DEGREE * (24 - 190 / 9), 10),
        unit: 'in',
      },
    ]);
  });
});

/** In tenths of a nanometre, which a document can hold exactly. */
const mm = (tenths: number): string => (tenths / 1e7).toFixed(7);
const degrees = fc.integer({ min: -100, max: 600 }).map((tenths) => tenths / 10);
const sizes = fc.integer({ min: 50e7, max: 150e7 });
const APART = 9.25e-6;

/** A piston against its least, both in tenths of a nanometre. */
function verdictOf(read: number, at: number, least: number, holdsAt: number): string | null {
  const head = `units: { length: mm }\ntemperature: ${holdsAt} degC`;
  const block = `  - { measure: piston_diameter, with: mic, at: { 1: ${mm(read)} } }\n`;
  const text = session(`${at} degC`, block).replace('readings:', 'units: { length: mm }\nreadings:');
  const body = `  piston_diameter: { new: { min: ${mm(least)} } }\n`;
  return piston(shop(limits(head, body), text)).judgement.verdict;
}

describe('a reading and its limit', () => {
  test('that are equal at one temperature stay so, whichever it is', () => {
    fc.assert(
      fc.property(sizes, degrees, (size, at) => {
        expect(verdictOf(size, at, size, at)).toBe('ok');
        expect(verdictOf(size - 1, at, size, at)).toBe('out');
      }),
      runs(200, 30),
    );
  });

  test('that are taken to another temperature together come to the same verdict, but for the rounding', () => {
    const gaps = fc.integer({ min: -3000, max: 3000 }).filter((gap) => Math.abs(gap) > 3);
    fc.assert(
      fc.property(sizes, gaps, degrees, degrees, (size, gap, at, elsewhere) => {
        const there = (amount: number): number => Math.round(amount * (1 - APART * (at - elsewhere)));
        const here = verdictOf(size + gap, at, size, at);
        expect(verdictOf(there(size + gap), elsewhere, there(size), elsewhere)).toBe(here);
        // Only one of the two is moved by us, the other as the property has it.
        expect(verdictOf(size + gap, at, there(size), elsewhere)).toBe(here);
      }),
      runs(300, 40),
    );
  });

  test('of two temperatures are met exactly where each holds', () => {
    fc.assert(
      fc.property(sizes, degrees, degrees, (size, at, elsewhere) => {
        const body = `  piston_diameter: { temperature: ${elsewhere} degC, new: { max: ${mm(size + 5e6)} }, at: { 1: { temperature: ${at} degC, wear: { min: ${mm(size)} } } } }\n`;
        const block = `  - { measure: piston_diameter, with: mic, at: { 1: ${mm(size)} } }\n`;
        const text = session(`${at} degC`, block).replace('readings:', 'units: { length: mm }\nreadings:');
        const row = piston(shop(limits('units: { length: mm }', body), text.replace('rebuild', 'teardown')));
        expect(row.judgement.verdict).toBe('ok');
        expect(row.routes[0]?.least).toEqual(row.judgement.deciding.min?.amount);
      }),
      runs(200, 30),
    );
  });
});
