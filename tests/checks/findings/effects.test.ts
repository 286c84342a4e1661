import { describe, expect, it } from 'vitest';
import { type Files, findingsOf } from '../../shopOf.ts';

const files = (pin: string, bores: string): Files => ({
  'e/engine.yaml':
    'kind: engine\nname: Vee\nunits: { length: in }\nlayout: { mains: 3, crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }\n',
  'e/limits.yaml':
    'kind: limits\nsource: Invented.\nlimits: { crankpin_diameter: { wear: { min: 2.4975 } }, rod_bearing_clearance: { wear: 0.0010 to 0.0040 } }\n',
  'e/session.yaml': `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings:\n  - { measure: crankpin_diameter, at: { 1: 2.4990, 2: ${pin} } }\n  - { measure: rod_bearing_bore, at: { 1L: 2.5010, 1R: 2.5010, ${bores} } }\n`,
});

const pinMessage = (all: Files): string | undefined =>
  findingsOf(all).find(({ code, measure }) => code === 'reading/out' && measure === 'crankpin_diameter')
    ?.message;

describe('a worn pin', () => {
  it('is not said to be the cause of clearances on another pin', () => {
    const all = files('2.4960', '2L: 2.4990, 2R: 2.4990');
    const session = (all['e/session.yaml'] ?? '').replace('1L: 2.5010, 1R: 2.5010', '1L: 2.5040, 1R: 2.5042');
    expect(pinMessage({ ...all, 'e/session.yaml': session })).toBe(
      'crankpin diameter 2: 2.4960 in, small by 1.5 thou (wear min 2.4975)',
    );
  });

  it('is the one cause of what both of its rods show', () => {
    expect(pinMessage(files('2.4960', '2L: 2.5010, 2R: 2.5012'))).toBe(
      'crankpin diameter 2: 2.4960 in, small by 1.5 thou (wear min 2.4975); it makes rod bearing clearance 2L and 2R loose',
    );
  });

  it.each([
    ['one of its rods alone', '2L: 2.5010, 2R: 2.4990'],
    ['rods out on different sides', '2L: 2.5010, 2R: 2.4961'],
    ['rods that are inside', '2L: 2.4990, 2R: 2.4990'],
  ])('is not said to be the cause of %s', (_, bores) => {
    expect(pinMessage(files('2.4960', bores))).toBe(
      'crankpin diameter 2: 2.4960 in, small by 1.5 thou (wear min 2.4975)',
    );
  });
});
