import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reportEngine } from '../../src/checks/judge/report.ts';
import { anyCharacter } from '../anyCharacter.ts';
import { evenly } from '../evenly.ts';
import { runs } from '../propertyRuns.ts';
import { ENGINE, type Files, limitsOf, REGISTER, refusalsOf, sessionOf, shopOf } from '../shopOf.ts';

const READINGS = '- { measure: main_bearing_clearance, at: { 1: 0.003 } }';
const LIMITS = limitsOf('main_bearing_clearance: { new: { max: 0.004 } }');

const sound: Files = {
  'shop.yaml':
    'kind: shop\nunits: { length: in, torque: lbf in }\ndecision_rule: guarded\ngrids: { cylinder: { stations: { top: 0.5, bottom: 5.5 }, directions: [thrust, axial] } }\ncharacteristics: { wear: { label: wear, quantity: length, positions: cylinder, formula: "cylinder_bore - bore" } }\n',
  'instruments.yaml': REGISTER,
  'e/engine.yaml':
    'kind: engine\nname: A\nlayout: { cylinders: 4, mains: 3, crankpins: { 1: [1, 2], 2: [3, 4] } }\nlabels: { main: { 1: front, 3: rear } }\nsizes: { bore: 4.125 }\n',
  'e/family.yaml':
    'kind: limits\nsource: Invented.\nlimits: { cylinder_taper: { by: range, per: 1 in, wear: { max: { formula: "0.0005 * bore" } } } }\n',
  'e/limits.yaml':
    'kind: limits\nsource: Invented.\nextends: family.yaml\nlimits:\n  main_bearing_clearance: { target: 0.0026 to 0.0032, new: { min: 0.0020, max: 0.0038 }, at: { rear: { wear: { max: 5 thou } } } }\n  turning_torque: { new: { max: 9 lbf ft } }\n',
  'e/teardown.yaml':
    'kind: session\nstage: teardown\ndate: 2026-02-03\ntemperature: 64 degF\nreadings:\n  - { measure: cylinder_bore, with: bore, set_to: 4.125, at: { 1: [+0.0010, 0.0011, .0012, ~], 2: { value: 0.001, note: rough } } }\n  - { work: honed, on: [cylinder 1, cylinder 2] }\n  - measure: main_bearing_clearance\n    with: strip\n    at: { front: under 0.004, 2: { repeat: [0.003, 0.0031] }, 3: { front: 0.003 to 0.004, rear: { go: 0.003, no_go: 0.004 } } }\n  - { measure: turning_torque, after: [{ step: crankshaft, value: 2.1 }, { step: piston 1, running: 3, breakaway: 4 }] }\n',
};

describe('the engine of a folder', () => {
  it('is sound where every document is', () => {
    expect(refusalsOf(sound)).toEqual([]);
    const { engine } = shopOf(sound);
    expect(engine?.folder).toBe('e');
    expect(engine?.rule).toBe('guarded');
    expect(engine?.limits.map(({ path }) => path)).toEqual(['e/limits.yaml', 'e/family.yaml']);
    expect([...(engine?.instruments.keys() ?? [])]).toContain('strip');
    expect(engine?.sessions).toHaveLength(1);
  });

  it('is not judged at all while a document that every verdict stands on has a fault', () => {
    for (const path of ['shop.yaml', 'instruments.yaml', 'e/engine.yaml', 'e/limits.yaml', 'e/family.yaml']) {
      const broken = { ...sound, [path]: `${sound[path]}nonsense: 1\n` };
      expect(shopOf(broken).engine, path).toBeUndefined();
      expect(
        refusalsOf(broken).map((each) => each.replace(/:.* /, ' ')),
        path,
      ).toEqual([`${path} unknown-key`]);
    }
  });

  it('is judged without the sessions that have a fault', () => {
    const broken = { ...sound, 'e/teardown.yaml': `${sound['e/teardown.yaml']}nonsense: 1\n` };
    expect(shopOf(broken).engine?.sessions).toEqual([]);
    expect(refusalsOf(broken)).toHaveLength(1);
  });

  it('is one a folder', () => {
    const two = { 'e/a.yaml': ENGINE, 'e/b.yaml': ENGINE };
    expect(refusalsOf(two)).toEqual(['e/b.yaml:1:1 two-engines']);
    expect(shopOf(two).engine).toBeUndefined();
  });

  it('reads documents in folders below it, and only those directly above', () => {
    const files = {
      'e/engine.yaml': ENGINE,
      'e/deep/er/s.yaml': sessionOf('rebuild', READINGS),
      'e/l.yaml': LIMITS,
    };
    expect(shopOf(files).engine?.sessions).toHaveLength(1);
    const aside = {
      'e/engine.yaml': ENGINE,
      'other/l.yaml': LIMITS,
      'other/s.yaml': sessionOf('rebuild', READINGS),
    };
    expect(shopOf(aside).engine?.limits).toEqual([]);
    expect(shopOf(aside).engine?.sessions).toEqual([]);
  });

  it('every problem of every file is reported in one go', () => {
    const broken = {
      'e/engine.yaml': ENGINE.replace('mains: 3', 'mians: 3'),
      'e/l.yaml': LIMITS.replace('main_bearing_clearance', 'main_bearing_clearence'),
      'e/s.yaml': sessionOf('rebuild', '- { measure: cylinder_boer, at: { 1: 1 } }'),
    };
    expect(
      refusalsOf(broken)
        .map((each) => each.replace(/:.* /, ' '))
        .sort(),
    ).toEqual(['e/engine.yaml unknown-key', 'e/l.yaml unknown-measure', 'e/s.yaml unknown-measure']);
  });
});

/** What a slip of the hand, or a hostile one, puts in. */
const SCRAPS = [
  '',
  ' ',
  '\n',
  '\t',
  '{',
  '}',
  '[',
  ']',
  ':',
  ': ',
  '- ',
  '&a ',
  '*a',
  '<<: ',
  '!!int ',
  '"',
  "'",
  '#',
  '|',
  '>',
  '?',
  '%YAML 1.1\n',
  '---\n',
  '...\n',
  '~',
  'null',
  'true',
  'yes',
  '0x1F',
  '1e9',
  '05',
  '.5',
  '-',
  '+7',
  '9999999999999999',
  '1e400',
  'NaN',
  '.inf',
  '\u0000',
  '\u2028',
  '\ufeff',
  '𝛼',
  'é',
  '\ud800',
  '__proto__',
  'constructor',
  'extends: ../e/limits.yaml\n',
  'at: { 1: 1 }',
  'kind: torque\n',
  '{ formula: "1/0" }',
  'bore ',
  '0.0000000001',
  '[[[[[[[[[[',
  '{ repeat: [] }',
  'on: ',
  'in: tenths, ',
  'set_to: journal, ',
  'mains: 0',
];

const mutation = fc.record({
  path: fc.constantFrom(...Object.keys(sound)),
  at: evenly(0, 1),
  length: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 60 })),
  scrap: fc.oneof(fc.constantFrom(...SCRAPS), fc.string({ maxLength: 8, unit: anyCharacter })),
});

function mutate(
  files: Files,
  { path, at, length, scrap }: { path: string; at: number; length: number; scrap: string },
): Files {
  const text = files[path] ?? '';
  const start = Math.floor(at * text.length);
  return { ...files, [path]: text.slice(0, start) + scrap + text.slice(start + length) };
}

const readWhole = (files: Files): boolean => {
  const { engine, registry, diagnostics } = shopOf(files);
  for (const { code, message } of diagnostics) {
    expect(code).toMatch(/^document\/[a-z-]+$/);
    expect(message).not.toBe('');
  }
  if (engine !== undefined) reportEngine(engine, registry, {});
  return engine !== undefined;
};

describe('loading any text never throws', () => {
  it('sound documents with a slip in them, or several', () => {
    const RUNS = runs(3000, 60);
    let judged = 0;
    let refused = 0;
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 3 }), (mutations) => {
        if (readWhole(mutations.reduce(mutate, sound))) judged += 1;
        else refused += 1;
      }),
      RUNS,
    );
    // Both must be well tried: what is refused, and what is read and judged in spite of the slip.
    expect(judged).toBeGreaterThan(RUNS.numRuns / 10);
    expect(refused).toBeGreaterThan(RUNS.numRuns / 10);
  });

  it('and text of any kind in place of a document', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.keys(sound)),
        fc.string({ maxLength: 200, unit: anyCharacter }),
        (path, text) => {
          readWhole({ ...sound, [path]: text });
        },
      ),
      runs(500, 30),
    );
  });
});
