import { describe, expect, it } from 'vitest';
import { engineIn, type Files, findingsOf, rowsOf, shopFiles, shopOf, verdictsOf } from '../../shopOf.ts';

const VEE = `kind: engine
name: Bench engine
units: { length: in }
layout: { mains: 3, crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }
`;

const formula = (measure: string, text: string): string =>
  `${measure}: { new: { max: { formula: "${text}" } } }`;

const refusalsOf = (files: Files) =>
  shopOf(files).diagnostics.map(({ code, message, help }) => ({ code, message, help }));

describe('a limit that is worked out from another family of positions', () => {
  it('of a rod takes the pin that it runs on', () => {
    const files = shopFiles(
      formula('rod_bearing_clearance', '0.001 * crankpin_diameter'),
      '- { measure: crankpin_diameter, at: { 1: 2.5, 2: 2.4 } }\n- { measure: rod_bearing_clearance, at: { 1L: 0.0025, 1R: 0.0026, 2L: 0.0024, 2R: 0.0025 } }',
      'rebuild',
      { 'e/engine.yaml': VEE },
    );
    expect(verdictsOf(files)).toMatchObject({
      'rod_bearing_clearance 1L': 'ok',
      'rod_bearing_clearance 1R': 'out',
      'rod_bearing_clearance 2L': 'ok',
      'rod_bearing_clearance 2R': 'out',
    });
    expect(findingsOf(files).map(({ code }) => code)).not.toContain('reading/missing');
  });

  it('takes it by the layout, where rod and pin of one number do not belong together', () => {
    const engine = VEE.replace('1: [1L, 1R], 2: [2L, 2R]', '1: [1, 2], 2: [3, 4]');
    const files = shopFiles(
      formula('rod_bearing_clearance', '0.001 * crankpin_diameter'),
      '- { measure: crankpin_diameter, at: { 1: 2.5, 2: 2.4 } }\n- { measure: rod_bearing_clearance, at: { 1: 0.0025, 2: 0.0025, 3: 0.0025, 4: 0.0024 } }',
      'rebuild',
      { 'e/engine.yaml': engine },
    );
    expect(verdictsOf(files)).toMatchObject({
      'rod_bearing_clearance 1': 'ok',
      'rod_bearing_clearance 2': 'ok',
      'rod_bearing_clearance 3': 'out',
      'rod_bearing_clearance 4': 'ok',
    });
  });

  it('of a cylinder cannot take a main: both are named, and the words to type', () => {
    const limits = formula('ring_end_gap', '0.01 * main_journal_diameter');
    const read =
      '- { measure: main_journal_diameter, at: { 2: 2.0 } }\n- { measure: ring_end_gap, at: { 2 top: 0.021 } }';
    expect(refusalsOf(shopFiles(limits, read))).toEqual([
      {
        code: 'document/formula',
        message:
          'in the formula 0.01 * main_journal_diameter: main_journal_diameter is measured at a main, this at a ring of a cylinder, and the layout does not state which of them belong together',
        help: 'name one, such as main_journal_diameter[1]; a characteristic of the engine may take max(main_journal_diameter[*])',
      },
    ]);
  });

  it('may take a nominal size of another family, which is the same everywhere', () => {
    const engine = { 'e/engine.yaml': engineIn('in', 'sizes: { main_journal_diameter: 2.0 }\n') };
    const limits = formula('ring_end_gap', '0.01 * main_journal_diameter');
    const read = '- { measure: ring_end_gap, at: { 1 top: 0.020, 2 top: 0.021 } }';
    expect(verdictsOf(shopFiles(limits, read, 'rebuild', engine))).toMatchObject({
      'ring_end_gap 1 top': 'ok',
      'ring_end_gap 2 top': 'out',
    });
  });

  it('takes one by name, and several by min, max, mean or spread', () => {
    const read =
      '- { measure: main_journal_diameter, at: { 1: 2.0, 2: 2.2, 3: 2.4 } }\n- { measure: ring_end_gap, at: { 1 top: 0.022 } }\n- { measure: crankshaft_end_play, value: 0.022 }';
    const maxOf = (limits: string, measure: string) =>
      rowsOf(shopFiles(limits, read)).find(({ characteristic }) => characteristic.id === measure)?.judgement
        .deciding.max;
    expect(maxOf(formula('ring_end_gap', '0.01 * main_journal_diameter[2]'), 'ring_end_gap')).toMatchObject({
      amount: { n: 5_588_000n },
      written: '0.01 × 2.20',
    });
    expect(
      maxOf(formula('crankshaft_end_play', '0.01 * mean(main_journal_diameter[*])'), 'crankshaft_end_play'),
    ).toMatchObject({ amount: { n: 5_588_000n }, written: '0.01 × mean(2.00, 2.20, 2.40)' });
  });

  it('of several of which one was not read says so', () => {
    const read =
      '- { measure: main_journal_diameter, at: { 1: 2.0, 3: 2.4 } }\n- { measure: crankshaft_end_play, value: 0.022 }';
    const files = shopFiles(formula('crankshaft_end_play', '0.01 * max(main_journal_diameter[*])'), read);
    expect(findingsOf(files).map(({ message }) => message)).toContain(
      'main_journal_diameter[*] lacks a reading, and a limit of crankshaft end play is worked out from it',
    );
  });
});
