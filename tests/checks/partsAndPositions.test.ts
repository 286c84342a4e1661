import { describe, expect, it } from 'vitest';
import { codesOf, type Files, refusalsOf, shopFiles, verdictsOf } from '../shopOf.ts';

const VEE = `kind: engine
name: Vee
units: { length: in }
layout: { cylinders: [1L, 1R, 2L, 2R], mains: 3, crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }
`;

const vee = (limits: string, blocks: string, stage = 'rebuild'): Files =>
  shopFiles(limits, blocks, stage, { 'e/engine.yaml': VEE });

describe('a limit that is worked out from another characteristic', () => {
  it('takes the crankpin of the rod, as the clearance above it does', () => {
    const files = vee(
      'rod_bearing_clearance: { new: { max: { formula: "0.001 * crankpin_diameter" } } }',
      '- { measure: crankpin_diameter, at: { 1: 2.0, 2: 4.0 } }\n- { measure: rod_bearing_clearance, at: { 1L: 0.003, 1R: 0.001, 2L: 0.003, 2R: 0.003 } }',
    );
    expect(verdictsOf(files)).toMatchObject({
      'rod_bearing_clearance 1L': 'out',
      'rod_bearing_clearance 1R': 'ok',
      'rod_bearing_clearance 2L': 'ok',
      'rod_bearing_clearance 2R': 'ok',
    });
    expect(codesOf(files)).not.toContain('limits/no-value');
  });
});

describe('runout of a shaft in its supports', () => {
  const runout = (supported: string): Files =>
    shopFiles(
      'crankshaft_runout: { new: { max: 0.002 } }',
      `- { measure: crankshaft_runout, ${supported}at: { 2: 0.001 } }`,
    );

  it('is not missing at the mains on which it lay', () => {
    expect(verdictsOf(runout('supported_on: [1, 3], '))).toEqual({ 'crankshaft_runout 2': 'ok' });
  });

  it('is missing at others', () => {
    expect(verdictsOf(runout('supported_on: [3], '))).toMatchObject({ 'crankshaft_runout 1': 'missing' });
    expect(verdictsOf(runout(''))).toMatchObject({ 'crankshaft_runout 3': 'missing' });
  });

  it('lies on mains that the engine has', () => {
    expect(refusalsOf(runout('supported_on: [1, 9], '))).toEqual(['e/session.yaml:5:53 unknown-position']);
  });
});
