import { describe, expect, it } from 'vitest';
import { engineIn, type Files, findingsOf, refusalsOf, shopFiles, shopOf, verdictsOf } from '../shopOf.ts';

const sized = (sizes: string): Files => ({ 'e/engine.yaml': engineIn('in', `sizes: { ${sizes} }\n`) });

const TAPER = '- { measure: cylinder_bore, stations: [top, bottom], at: { 1: [4.0010, 4.0000] } }';

describe('a limit whose formula over sizes alone cannot be evaluated', () => {
  it.each([
    ['divides by zero', '1 / (bore - 4)', 'bore: 4'],
    ['takes the root of a negative number', 'sqrt(bore - 5)', 'bore: 4'],
    ['names no size at all', '1 / 0', 'bore: 4'],
  ])('%s: the limits document is reported, and nothing is judged', (_, formula, sizes) => {
    const files = shopFiles(
      `cylinder_taper: { wear: { max: { formula: "${formula}" } } }`,
      TAPER,
      'teardown',
      sized(sizes),
    );
    expect(refusalsOf(files)).toEqual(['e/limits.yaml:4:45 formula']);
    expect(shopOf(files).engine).toBeUndefined();
  });

  it('is told at one position as well', () => {
    const files = shopFiles(
      'cylinder_taper: { at: { 1: { wear: { max: { formula: "1 / (bore - 4)" } } } } }',
      TAPER,
      'teardown',
      sized('bore: 4'),
    );
    expect(shopOf(files).diagnostics[0]?.message).toBe(
      'the formula 1 / (bore - 4), here 1 / (4 − 4) cannot be worked out: this divides by zero',
    );
  });

  it('is no fault where the sizes give a number', () => {
    const files = shopFiles(
      'cylinder_taper: { wear: { max: { formula: "0.001 / (bore - 3)" } } }',
      TAPER,
      'teardown',
      sized('bore: 4'),
    );
    expect(refusalsOf(files)).toEqual([]);
    expect(verdictsOf(files)['cylinder_taper 1']).toBe('ok');
  });
});

describe('a limit whose formula cannot be evaluated with what was read', () => {
  const read =
    '- { measure: main_journal_diameter, at: { 1: 2.5, 2: 3.0 } }\n- { measure: main_bearing_clearance, at: { 1: 0.0030, 2: 0.0030 } }';
  const formula = '{ formula: "0.002 / (main_journal_diameter - 2.5)" }';
  const files = shopFiles(`main_bearing_clearance: { new: { max: ${formula} }, wear: { max: 0.005 } }`, read);

  it('is told with the numbers, at the reading and at the limit', () => {
    const [found] = findingsOf(files).filter(({ code }) => code === 'limits/formula');
    expect(found).toMatchObject({ severity: 'warning', measure: 'main_bearing_clearance', position: '1' });
    expect(found?.message).toBe(
      'main bearing clearance 1: new max 0.002 / (2.50 − 2.5) cannot be worked out: this divides by zero',
    );
    expect(found?.limitPlace).toMatchObject({ path: 'e/limits.yaml', line: 4 });
  });

  it('passes nothing, though a farther band stands behind it', () => {
    expect(verdictsOf(files)).toMatchObject({
      'main_bearing_clearance 1': null,
      'main_bearing_clearance 2': 'ok',
    });
  });

  it('passes nothing by its other side either, and leaves out what is out', () => {
    const sided = (value: string) =>
      verdictsOf(
        shopFiles(
          `main_bearing_clearance: { new: { min: 0.002, max: ${formula} } }`,
          read.replace('1: 0.0030', `1: ${value}`),
        ),
      )['main_bearing_clearance 1'];
    expect(sided('0.0030')).toBeNull();
    expect(sided('0.0019')).toBe('out');
  });

  it('says of a size that the engine document does not give it', () => {
    const lacking = shopFiles('cylinder_taper: { wear: { max: { formula: "0.001 * stroke" } } }', TAPER);
    expect(findingsOf(lacking).map(({ message }) => message)).toContain(
      'a limit of cylinder taper 1 is worked out from stroke, and the engine document does not give it: write it below sizes:',
    );
  });
});

describe('the unit of a formula', () => {
  it('must be known as that of any plain number', () => {
    const files = shopFiles('turning_torque: { new: { max: { formula: "9 * 2" } } }', '', 'rebuild', {
      'e/engine.yaml': 'kind: engine\nname: No units\nlayout: { cylinders: 4 }\n',
      'e/session.yaml': 'kind: session\nstage: rebuild\ndate: 2026-02-03\n',
    });
    expect(refusalsOf(files)).toEqual(['e/limits.yaml:4:44 no-unit']);
  });
});

describe("a formula of the shop's own characteristic", () => {
  const shop = (formula: string): Files => ({
    'shop.yaml': `kind: shop\nunits: { length: in, torque: lbf in }\ncharacteristics:\n  deck_gap: { label: deck gap, quantity: length, positions: cylinder, formula: "${formula}" }\n`,
  });
  const files = (formula: string) =>
    shopFiles('cylinder_taper: { wear: { max: 0.002 } }', TAPER, 'teardown', shop(formula));

  it('that names nothing known is reported when it is read, with the nearest name', () => {
    const { diagnostics } = shopOf(files('cylinder_bor - bore'));
    expect(diagnostics).toMatchObject([
      {
        code: 'document/formula',
        message: 'in the formula cylinder_bor - bore: no size or characteristic is called cylinder_bor',
        help: 'did you mean cylinder_bore?',
      },
    ]);
  });

  it('may name sizes, characteristics of ours and those of the shop', () => {
    expect(refusalsOf(files('cylinder_bore - bore - 0 * piston_diameter'))).toEqual([]);
  });
});

it('a limit of a valve may be worked out from the lobe that has its name', () => {
  const files = shopFiles(
    'valve_lift: { new: { min: { formula: "lobe_lift * 1.5 - 0.005" } } }',
    '- { measure: lobe_lift, at: { 1I: 0.300, 1E: 0.310 } }\n- { measure: valve_lift, at: { 1: { I: 0.446, E: 0.455 } } }',
    'teardown',
    {
      'e/engine.yaml':
        'kind: engine\nname: A\nunits: { length: in }\nlayout: { cylinders: 1, valves: [I, E], lobes: [1I, 1E] }\n',
    },
  );
  expect(refusalsOf(files)).toEqual([]);
  const verdicts = verdictsOf(files);
  // 1.5 × 0.300 − 0.005 = 0.445, and 1.5 × 0.310 − 0.005 = 0.460.
  expect([verdicts['valve_lift 1 I'], verdicts['valve_lift 1 E']]).toEqual(['ok', 'out']);
});
