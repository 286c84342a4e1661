import { describe, expect, it } from 'vitest';
import { type Files, limitsOf, REGISTER, refusalsOf, sessionOf, shopFiles, shopOf } from '../../shopOf.ts';

const LABELLED = `kind: engine
name: Bench engine
units: { length: in, torque: lbf in }
layout: { cylinders: 4, mains: 3, crankpins: 4 }
labels: { main: { 3: rear } }
`;
const LIMIT = 'main_bearing_clearance: { new: { max: 0.004 } }';

describe('a number and its label are one position', () => {
  const at = (keys: string) =>
    refusalsOf(
      shopFiles(LIMIT, `- { measure: main_journal_diameter, at: { ${keys} } }`, 'rebuild', {
        'e/engine.yaml': LABELLED,
      }),
    );

  it('of readings only one may be given', () => {
    expect(at('3: 3.1, rear: 3.2')).toEqual(['e/session.yaml:5:53 duplicate-key']);
    expect(at('2: 3.1, rear: 3.2')).toEqual([]);
  });

  it('a step is what it is called: two names are two steps', () => {
    const files = shopFiles(
      LIMIT,
      '- { measure: turning_torque, after: [{ step: 3, value: 2 }, { step: rear, value: 3 }] }',
      'rebuild',
      { 'e/engine.yaml': LABELLED },
    );
    expect(refusalsOf(files)).toEqual([]);
  });

  it('of limits only one may be given, in the engine or above it', () => {
    const twice = limitsOf(
      'main_bearing_clearance: { at: { rear: { new: { max: 1 } }, 3: { wear: { max: 2 } } } }',
    );
    const own = { 'e/engine.yaml': LABELLED, 'e/limits.yaml': twice };
    expect(refusalsOf(own)).toEqual(['e/limits.yaml:4:62 duplicate-key']);
    const above = {
      'shop.yaml': 'kind: shop\nunits: { length: in }\n',
      'e/engine.yaml': LABELLED,
      'limits.yaml': twice,
    };
    expect(refusalsOf(above)).toEqual(['limits.yaml:4:62 duplicate-key']);
  });

  it('two documents of one folder may not set the same band of it', () => {
    const files: Files = {
      'e/engine.yaml': LABELLED,
      'e/a.yaml': limitsOf('main_bearing_clearance: { at: { rear: { new: { max: 0.004 } } } }'),
      'e/b.yaml': limitsOf('main_bearing_clearance: { at: { 3: { new: { max: 0.005 } } } }'),
    };
    expect(refusalsOf(files)).toEqual(['e/b.yaml:4:52 limits-conflict']);
    expect(shopOf(files).diagnostics[0]?.message).toBe(
      'e/a.yaml sets the new band of main_bearing_clearance at 3 as well, in the same folder',
    );
  });
});

describe('two registers', () => {
  const other = 'kind: instruments\ninstruments: { mic: { type: micrometer } }\n';

  it('of one folder may not hold an instrument of one name', () => {
    const files = shopFiles(LIMIT, '', 'rebuild', {
      'e/session.yaml': sessionOf('rebuild', '- { measure: crankshaft_end_play, value: 0.006 }'),
      'instruments.yaml': REGISTER,
      'more.yaml': other,
    });
    expect(refusalsOf(files)).toEqual(['more.yaml:2:16 limits-conflict']);
    expect(shopOf(files).diagnostics[0]?.message).toBe(
      'instruments.yaml registers mic as well, in the same folder',
    );
    expect(shopOf(files).engine).toBeUndefined();
  });

  it('of two folders may: the nearer one counts', () => {
    const files = { 'e/engine.yaml': LABELLED, 'instruments.yaml': REGISTER, 'e/instruments.yaml': other };
    expect(refusalsOf(files)).toEqual([]);
    expect(shopOf(files).engine?.instruments.get('mic')?.resolution).toBeUndefined();
  });
});

describe('a layout', () => {
  const layout = (text: string) =>
    refusalsOf({ 'e/engine.yaml': `kind: engine\nname: E\nunits: { length: in }\nlayout: { ${text} }\n` });

  it.each([
    [
      'a crankpin that is not there',
      'cylinders: 4, crankpins: 2, pins: { 1: [1, 3], 7: [2, 4] }',
      ['e/engine.yaml:4:58 value'],
    ],
    [
      'a cylinder that is not there',
      'cylinders: 4, crankpins: 2, pins: { 1: [1, 9], 2: [2, 4] }',
      ['e/engine.yaml:4:54 value'],
    ],
    [
      'a cylinder on two pins',
      'cylinders: 4, crankpins: 2, pins: { 1: [1, 3], 2: [3, 4] }',
      ['e/engine.yaml:4:62 value'],
    ],
    [
      'a cylinder twice on one',
      'cylinders: 4, crankpins: { 1: [1, 1], 2: [2, 4] }',
      ['e/engine.yaml:4:45 value'],
    ],
    ['a main of the same name', 'mains: [1, 1, 2]', ['e/engine.yaml:4:22 value']],
    ['a cylinder of the same name', 'cylinders: [1L, 1R, 1L]', ['e/engine.yaml:4:31 value']],
  ])('is refused with %s', (_, text, expected) => expect(layout(text)).toEqual(expected));

  it.each([
    'cylinders: 4, crankpins: 2, pins: { 1: [1, 3], 2: [2, 4] }',
    'crankpins: { 1: [1L, 1R], 2: [2L, 2R] }',
    'cylinders: 2, crankpins: 1, pins: { 1: [1, 2] }',
    'mains: [1, 2, rear]',
  ])('and taken as %s', (text) => expect(layout(text)).toEqual([]));
});

describe('a day that is not in the calendar is refused', () => {
  it.each([
    [
      'of a block',
      '- { measure: crankshaft_end_play, date: 2026-02-30, value: 0.006 }',
      '',
      'e/session.yaml:5:43 value',
    ],
    ['of work', '- { work: honed, on: cylinder 1, date: 2026-02-30 }', '', 'e/session.yaml:5:42 value'],
    [
      'of a concession',
      '- { measure: crankshaft_end_play, value: 0.006 }',
      'concessions: [{ measure: crankshaft_end_play, up_to: 0.1, reason: r, until: 2026-02-30 }]\n',
      'e/session.yaml:4:77 value',
    ],
  ])('%s', (_, block, more, expected) => {
    const files = shopFiles(LIMIT, block, 'rebuild', { 'e/session.yaml': sessionOf('rebuild', block, more) });
    expect(refusalsOf(files)).toEqual([expected]);
  });

  it('of a calibration', () => {
    const register =
      'kind: instruments\ninstruments: { mic: { type: micrometer, calibrated: 2026-02-30, due: 2027-02-29 } }\n';
    const files = { 'e/engine.yaml': LABELLED, 'instruments.yaml': register };
    expect(refusalsOf(files)).toEqual(['instruments.yaml:2:53 value', 'instruments.yaml:2:70 value']);
  });
});

describe('one engine a folder', () => {
  const engine = (name: string) => `kind: engine\nname: ${name}\nlayout: { mains: 1 }\n`;
  const told = (files: Files) =>
    shopOf(files).diagnostics.map(({ place, message }) => `${place.path}: ${message}`);

  it('tells every other that stands beside the first', () => {
    expect(told({ 'e/a.yaml': engine('A'), 'e/b.yaml': engine('B'), 'e/c.yaml': engine('C') })).toEqual([
      'e/b.yaml: e/a.yaml is already the engine of this folder',
      'e/c.yaml: e/a.yaml is already the engine of this folder',
    ]);
  });

  it('and every one below it', () => {
    const files = {
      'e/engine.yaml': engine('A'),
      'e/b/engine.yaml': engine('B'),
      'e/c/d/engine.yaml': engine('C'),
    };
    const lies = [
      'e/b/engine.yaml: this engine lies inside the folder of e/engine.yaml',
      'e/c/d/engine.yaml: this engine lies inside the folder of e/engine.yaml',
    ];
    expect(told(files)).toEqual(lies);
    expect(shopOf(files).engine).toBeUndefined();
  });
});
