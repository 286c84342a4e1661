import { describe, expect, it } from 'vitest';
import { type Files, findingsOf, shopOf, verdictsOf } from '../../shopOf.ts';

const shopWith = (layout: string, readings = '[]'): Files => ({
  'e/engine.yaml': `kind: engine\nname: Vee\nunits: { length: in }\nlayout: ${layout}\n`,
  'e/limits.yaml':
    'kind: limits\nsource: Invented.\nlimits: { rod_bearing_clearance: { new: 0.0010 to 0.0030 } }\n',
  'e/session.yaml': `kind: session\nstage: trial\ndate: 2026-02-03\nreadings: ${readings}\n`,
});

const refusalsOf = (layout: string) =>
  shopOf(shopWith(layout)).diagnostics.map(({ message, help, place }) => ({
    message,
    help,
    line: place.line,
  }));

const HELP = 'write each pin with its rods, as the maker numbers them: crankpins: { 1: [1, 5], … }';

describe('a layout of which some rods are on no crankpin', () => {
  it.each([
    [
      '{ cylinders: 8, mains: 5, crankpins: 4 }',
      '8 cylinders on 4 crankpins, and which rods run on each is not stated',
    ],
    [
      '{ cylinders: 8, mains: 5, crankpins: { 1: [1, 5], 2: [2, 6], 3: [3, 7], 4: [4] } }',
      'the rod of cylinder 8 is on no crankpin',
    ],
    [
      '{ cylinders: 8, mains: 5, crankpins: 4, pins: { 1: [1, 5], 2: [2, 6], 3: [3, 7] } }',
      'the rods of cylinders 4, 8 are on no crankpin',
    ],
  ])('%s names them', (layout, message) => {
    expect(refusalsOf(layout)).toEqual([{ message, help: HELP, line: 4 }]);
  });

  it.each([
    '{ cylinders: 8, mains: 5, crankpins: { 1: [1, 5], 2: [2, 6], 3: [3, 7], 4: [4, 8] } }',
    '{ mains: 5, crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }',
    '{ cylinders: 4, mains: 5, crankpins: 4 }',
    '{ cylinders: 4, mains: 5 }',
  ])('%s is whole', (layout) => expect(refusalsOf(layout)).toEqual([]));
});

it('two rods out of limits on their pins are reported', () => {
  const files = shopWith(
    '{ mains: 3, crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }',
    '\n  - { measure: crankpin_diameter, at: { 1: 2.4990, 2: 2.4950 } }\n  - { measure: rod_bearing_bore, at: { 1L: 2.5010, 1R: 2.5011, 2L: 2.5010, 2R: 2.5012 } }',
  );
  expect(verdictsOf(files)).toMatchObject({
    'rod_bearing_clearance 1L': 'ok',
    'rod_bearing_clearance 1R': 'ok',
    'rod_bearing_clearance 2L': 'out',
    'rod_bearing_clearance 2R': 'out',
  });
  expect(findingsOf(files).filter(({ code }) => code === 'reading/out')).toHaveLength(2);
});
