import { describe, expect, it } from 'vitest';
import { codesOf, type Files, limitsOf, refusalsOf, shopFiles, shopOf, verdictsOf } from '../shopOf.ts';

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

describe('four-valve heads', () => {
  const four = (layout: string): Files => ({
    'e/engine.yaml': `kind: engine\nname: A\nunits: { length: in }\nlayout: { cylinders: 2, ${layout} }\n`,
    'shop.yaml':
      'kind: shop\ncharacteristics: { valve_lash: { label: valve lash, quantity: length, positions: valve } }\n',
    'e/limits.yaml': limitsOf('valve_lash: { new: { max: 0.012 } }'),
    'e/session.yaml':
      'kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings:\n  - { measure: valve_lash, at: { 1E1: 0.010, 2E2: 0.013, 1: { I1: 0.010 }, 2 I1: 0.010 } }\n',
  });

  it('have valves called 1E1 and 2E2', () => {
    const files = four('valves: { 1: [I1, I2, E1, E2], 2: [I1, I2, E1, E2] }');
    expect(refusalsOf(files)).toEqual([]);
    expect(verdictsOf(files)).toMatchObject({
      'valve_lash 1 E1': 'ok',
      'valve_lash 2 E2': 'out',
      'valve_lash 1 I1': 'ok',
      'valve_lash 2 I1': 'ok',
      'valve_lash 1 I2': 'missing',
    });
  });

  it.each([1, 3, 4, 8])('of %i cylinders may name the valves of each in one list', (cylinders) => {
    const files = four('valves: [I1, I2, E1, E2]');
    const engine = files['e/engine.yaml']?.replace('cylinders: 2', `cylinders: ${cylinders}`) ?? '';
    const session =
      files['e/session.yaml']?.replace(/at: .*/, 'at: { 1E1: 0.010, 1: { E2: 0.013 } } }') ?? '';
    const all = { ...files, 'e/engine.yaml': engine, 'e/session.yaml': session };
    expect(refusalsOf(all)).toEqual([]);
    expect(verdictsOf(all)).toMatchObject({ 'valve_lash 1 E1': 'ok', 'valve_lash 1 E2': 'out' });
  });

  it.each(['[I1, E1, I2, E2]', '[1I, 1E]'])('refuse %s, which may be valves of the engine', (valves) => {
    expect(shopOf(four(`valves: ${valves}`)).diagnostics[0]).toMatchObject({ code: 'document/value' });
  });

  it('are written by cylinder: a flat list shows the map to type', () => {
    const { diagnostics } = shopOf(four('valves: [1I, 1E, 2I, 2E]'));
    expect(diagnostics[0]).toMatchObject({ code: 'document/value' });
    expect(diagnostics[0]?.help).toContain('valves: { 1: [I, E], 2: [I, E] }');
  });

  it('an engine that names no valves is told that the limits on them judge nothing', () => {
    const files = {
      ...four('mains: 3'),
      'e/session.yaml': 'kind: session\nstage: rebuild\ndate: 2026-02-03\n',
    };
    expect(refusalsOf(files)).toEqual(['e/limits.yaml:4:3 unknown-position']);
  });
});

const RINGS = `kind: engine
name: Ringed
units: { length: in }
layout: { cylinders: 3 }
labels: { cylinder: { 3: flywheel end } }
`;

const rings = (limits: string, at: string): Files => ({
  'e/engine.yaml': RINGS,
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings:\n  - { measure: ring_end_gap, at: ${at} }\n`,
});

describe('readings at a ring of a cylinder', () => {
  const GAP = 'ring_end_gap: { new: 0.010 to 0.020 }';
  const verdicts = (at: string, limits = GAP) => verdictsOf(rings(limits, at));

  it('stand one name below the other, in either order, or in one key', () => {
    const all =
      '{ 1: { top: 0.015, second: 0.030 }, oil: { 1: 0.015, 2: 0.016 }, 3 top: 0.015, flywheel end second: 0.030 }';
    expect(verdicts(all)).toMatchObject({
      'ring_end_gap 1 top': 'ok',
      'ring_end_gap 1 second': 'out',
      'ring_end_gap 1 oil': 'ok',
      'ring_end_gap 2 oil': 'ok',
      'ring_end_gap 3 top': 'ok',
      'ring_end_gap 3 second': 'out',
      'ring_end_gap 3 oil': 'missing',
    });
  });

  it('keep their shape below the last name', () => {
    expect(
      verdicts(
        '{ 1: { top: { value: 0.015, note: filed }, second: { go: 0.012, no_go: 0.013 }, oil: { repeat: [0.015, 0.016] } } }',
      ),
    ).toMatchObject({
      'ring_end_gap 1 top': 'ok',
      'ring_end_gap 1 second': 'ok',
      'ring_end_gap 1 oil': 'ok',
    });
  });

  it.each([
    ['{ 1: 0.015 }', '5:36 unknown-position', 'cylinder 1 needs its ring'],
    ['{ 1: { value: 0.015 } }', '5:41 unknown-position', 'cylinder 1 needs its ring'],
    ['{ 1: { third: 0.015 } }', '5:41 unknown-position', 'cylinder 1 has no ring third'],
    ['{ 4: { top: 0.015 } }', '5:36 unknown-position', 'the engine has no ring of a cylinder 4'],
    [
      '{ 1: { top: 0.015 }, 1 top: 0.016 }',
      '5:55 duplicate-key',
      '1 top and 1 top are the same ring of a cylinder, 1 top',
    ],
    ['{ 3: { top: 0.015 }, top flywheel end: 0.016 }', '5:55 duplicate-key', undefined],
    ['{ 1: { top: { valu: 0.015 } } }', '5:48 unknown-key', 'unknown key `valu`'],
  ])('are refused where they name no ring, or one twice: %s', (at, place, message) => {
    const { diagnostics } = shopOf(rings(GAP, at));
    const shown = diagnostics.map(
      (each) => `${each.place.line}:${each.place.column} ${each.code.replace('document/', '')}`,
    );
    expect(shown).toEqual([place]);
    if (message !== undefined) expect(diagnostics[0]?.message).toBe(message);
  });

  it('need the axis before a name that two of them share', () => {
    const numbered = (at: string): Files => ({
      ...rings(GAP, at),
      'e/engine.yaml':
        'kind: engine\nname: A\nunits: { length: in }\nlayout: { cylinders: 3, rings: [1, 2] }\n',
    });
    expect(shopOf(numbered('{ 1: { 2: 0.015 } }')).diagnostics).toMatchObject([
      { code: 'document/unknown-position', message: '1 may be cylinder 1 or ring 1' },
    ]);
    expect(
      verdictsOf(numbered('{ cylinder 1: { 2: 0.030 }, ring 1: { 2: 0.015 }, 3: { 1: 0.015 } }')),
    ).toMatchObject({
      'ring_end_gap cylinder 1 ring 2': 'out',
      'ring_end_gap cylinder 2 ring 1': 'ok',
      'ring_end_gap 3 ring 1': 'ok',
    });
  });

  it('can have no name that says what stands at a position', () => {
    const files = { 'e/engine.yaml': RINGS.replace('cylinders: 3', 'cylinders: 3, rings: [top, value]') };
    expect(refusalsOf(files)).toEqual(['e/engine.yaml:4:38 value']);
  });

  it('of an earlier document are told their new form', () => {
    const files = {
      ...rings('top_ring_end_gap: { new: { max: 0.020 } }', '{ 1 top: 0.015 }'),
      'e/session.yaml':
        'kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings:\n  - { measure: second_ring_end_gap, at: { 1: 0.015 } }\n',
    };
    expect(shopOf(files).diagnostics).toMatchObject([
      {
        message: 'top_ring_end_gap is now ring_end_gap of the top ring',
        help: 'write ring_end_gap, at: { 1: { top: … } }',
      },
      { message: 'second_ring_end_gap is now ring_end_gap of the second ring' },
    ]);
  });
});

describe('limits at some names of a position', () => {
  const AT = '{ 1: { top: 0.015, second: 0.015, oil: 0.015 }, 2: { top: 0.015, second: 0.015 } }';

  it('hold wherever those are, and more names win over fewer', () => {
    const limits =
      'ring_end_gap: { new: { max: 0.020 }, at: { top: { new: { max: 0.010 } }, 2: { top: { new: { max: 0.016 } } }, 1 oil: { new: { max: 0.001 } } } }';
    expect(verdictsOf(rings(limits, AT))).toMatchObject({
      'ring_end_gap 1 top': 'out',
      'ring_end_gap 1 second': 'ok',
      'ring_end_gap 1 oil': 'out',
      'ring_end_gap 2 top': 'ok',
    });
  });

  it('stand beside those of the names below them', () => {
    const limits = 'ring_end_gap: { at: { 2: { new: { max: 0.020 }, top: { new: { max: 0.010 } } } } }';
    expect(verdictsOf(rings(limits, AT))).toMatchObject({
      'ring_end_gap 2 top': 'out',
      'ring_end_gap 2 second': 'ok',
    });
  });

  it('in equal number that differ are reported, unless what holds at both is stated', () => {
    const limits = (more: string) =>
      `ring_end_gap: { at: { top: { new: { max: 0.010 } }, 2: { new: { max: 0.020 } }${more} } }`;
    const { diagnostics } = shopOf(rings(limits(''), AT));
    expect(diagnostics).toMatchObject([
      {
        code: 'document/limits-conflict',
        message: 'the new bands of ring_end_gap at top ring and at cylinder 2 hold at the same positions',
        help: 'write what holds there at both: at top ring cylinder 2',
      },
    ]);
    expect(refusalsOf(rings(limits(', 2 top: { new: { max: 0.016 } }'), AT))).toEqual([]);
    expect(
      refusalsOf(
        rings('ring_end_gap: { at: { top: { new: { max: 0.01 } }, 2: { wear: { max: 0.02 } } } }', AT),
      ),
    ).toEqual([]);
  });

  it('misspelt are no position of another engine', () => {
    expect(refusalsOf(rings('ring_end_gap: { at: { 2: { neww: { max: 0.020 } } } }', AT))).toEqual([
      'e/limits.yaml:4:30 unknown-key',
    ]);
    expect(
      refusalsOf(
        shopFiles(
          'main_journal_diameter: { at: { 2: { neww: 1 to 2 } } }',
          '- { measure: cylinder_bore, at: { 1: 4 } }',
        ),
      ),
    ).toEqual(['e/limits.yaml:4:39 unknown-key']);
  });
});
