import { describe, expect, it } from 'vitest';
import {
  codesOf,
  type Files,
  findingsOf,
  REGISTER,
  reportOf,
  rowsOf,
  sessionOf,
  shopFiles,
  verdictsOf,
} from '../../shopOf.ts';

const CLEARANCE =
  'main_bearing_clearance: { target: { max: 0.0032 }, new: { max: 0.0038 }, wear: { max: 0.0050 } }';
const read = (at: string) => `- { measure: main_bearing_clearance, at: { ${at} } }`;
const withRule = (rule: string): Files => ({
  'shop.yaml': `kind: shop\ndecision_rule: ${rule}\n`,
  'instruments.yaml': REGISTER,
});

describe('every verdict has its finding, with its severity', () => {
  it.each([
    ['rebuild', '0.0032', 'ok', [], []],
    ['rebuild', '0.0033', 'off target', ['reading/off-target'], ['remark']],
    ['rebuild', '0.0039', 'out', ['reading/out'], ['error']],
    ['teardown', '0.0039', 'worn', ['reading/worn'], ['remark']],
    ['service', '0.0050', 'worn', ['reading/worn'], ['remark']],
    ['service', '0.0051', 'out', ['reading/out'], ['error']],
    ['machined', '0.0039', 'out', ['reading/out'], ['error']],
    ['trial', '0.0039', 'out', ['reading/out'], ['error']],
  ] as const)('at %s %s is %s', (stage, value, verdict, codes, severities) => {
    const files = shopFiles(CLEARANCE, read(`1: ${value}, 2: 0.0010, 3: 0.0010`), stage);
    expect(verdictsOf(files)['main_bearing_clearance 1']).toBe(verdict);
    const found = findingsOf(files).filter(({ code }) => /^reading\/(?!marginal)/.test(code));
    expect(found.map(({ code }) => code)).toEqual(codes);
    expect(found.map(({ severity }) => severity)).toEqual(severities);
  });

  it('a reading without limits has none, and no finding', () => {
    const files = shopFiles('cylinder_bore: { wear: { max: 9 } }', read('1: 0.0030'));
    expect(verdictsOf(files)).toEqual({ 'main_bearing_clearance 1': null });
    expect(codesOf(files).filter((code) => code.startsWith('reading/'))).toEqual([]);
  });

  it('the rule comes from the shop, an engine’s own stands over it, and the run’s over both', () => {
    const undecided = (rule: 'simple' | 'guarded' | undefined, more: Files) =>
      verdictsOf(
        shopFiles(CLEARANCE, read('1: 0.0038'), 'rebuild', more),
        rule === undefined ? {} : { rule },
      )['main_bearing_clearance 1'];
    expect(undecided(undefined, {})).toBe('off target');
    expect(undecided(undefined, withRule('guarded'))).toBe('undecided');
    const engine =
      'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 3 }\ndecision_rule: simple\n';
    expect(undecided(undefined, { ...withRule('guarded'), 'e/engine.yaml': engine })).toBe('off target');
    expect(undecided('guarded', { ...withRule('simple'), 'e/engine.yaml': engine })).toBe('undecided');
    expect(reportOf(shopFiles(CLEARANCE, read('1: 0.0038'), 'rebuild', withRule('guarded'))).rule).toBe(
      'guarded',
    );
  });

  it('under the guarded rule what is too near is undecided, a warning; under the simple one it is marginal, a remark', () => {
    const files = shopFiles(CLEARANCE, read('1: 0.0038, 2: 0.0001, 3: 0.0001'));
    expect(findingsOf(files).find(({ code }) => code === 'reading/marginal')?.severity).toBe('remark');
    const guarded = findingsOf(files, { rule: 'guarded' });
    expect(guarded.find(({ code }) => code === 'reading/undecided')?.severity).toBe('warning');
    expect(guarded.some(({ code }) => code === 'reading/marginal')).toBe(false);
  });

  it('judged by new or by wear as the run asks', () => {
    const files = shopFiles(CLEARANCE, read('1: 0.0039'), 'teardown');
    expect(verdictsOf(files, { judgeBy: 'new' })['main_bearing_clearance 1']).toBe('out');
    expect(verdictsOf(files, { judgeBy: 'wear' })['main_bearing_clearance 1']).toBe('worn');
  });
});

describe('a position that was left out', () => {
  it('is missing where its limits decide and others of it were measured', () => {
    const files = shopFiles(CLEARANCE, read('1: 0.0030, 3: ~'));
    expect(verdictsOf(files)).toEqual({
      'main_bearing_clearance 1': 'ok',
      'main_bearing_clearance 2': 'missing',
      'main_bearing_clearance 3': 'missing',
    });
    expect(
      findingsOf(files)
        .filter(({ code }) => code === 'reading/missing')
        .map(({ severity }) => severity),
    ).toEqual(['warning', 'warning']);
  });

  it('is nothing where only a target speaks of it, or no limit at all', () => {
    expect(
      Object.keys(
        verdictsOf(shopFiles('main_bearing_clearance: { target: { max: 0.003 } }', read('1: 0.0030'))),
      ),
    ).toEqual(['main_bearing_clearance 1']);
    const at = 'main_bearing_clearance: { at: { 2: { new: { max: 0.003 } } } }';
    expect(Object.keys(verdictsOf(shopFiles(at, read('1: 0.0030'))))).toEqual([
      'main_bearing_clearance 1',
      'main_bearing_clearance 2',
    ]);
  });

  it('is not missing where it can be worked out', () => {
    const derived = `${read('1: 0.0030')}\n- { measure: main_bearing_bore, at: { 2: 3.0030, 3: 3.0030 } }\n- { measure: main_journal_diameter, at: { 2: 3.0, 3: 3.0 } }`;
    expect(Object.values(verdictsOf(shopFiles(CLEARANCE, derived)))).not.toContain('missing');
  });

  it('is never a step of turning torque', () => {
    const limit = 'turning_torque: { new: { max: 9 }, at: { piston 4: { new: { max: 3 } } } }';
    const turning =
      '- { measure: turning_torque, after: [{ step: crankshaft, value: 2 }, { step: piston 1, value: ~ }] }';
    expect(verdictsOf(shopFiles(limit, turning))).toEqual({ 'turning_torque crankshaft': 'ok' });
    const byName = '- { measure: turning_torque, at: { crankshaft: 2, piston 1: ~ } }';
    expect(verdictsOf(shopFiles(limit, byName))).toEqual({ 'turning_torque crankshaft': 'ok' });
  });
});

describe('turning torque', () => {
  const limit = 'turning_torque: { new: { max: 9 }, at: { crankshaft: { new: { max: 3 } } } }';
  it('general limits hold after every step, one at a step by its name', () => {
    const steps =
      '- { measure: turning_torque, after: [{ step: crankshaft, value: 3.1 }, { step: piston 1, value: 9.0 }, { step: piston 2, value: 9.1 }] }';
    expect(Object.values(verdictsOf(shopFiles(limit, steps)))).toEqual(['out', 'ok', 'out']);
  });

  it('running is judged, breakaway is kept', () => {
    const steps = '- { measure: turning_torque, after: [{ step: crankshaft, breakaway: 8, running: 2 }] }';
    expect(verdictsOf(shopFiles(limit, steps))).toEqual({ 'turning_torque crankshaft': 'ok' });
  });
});

describe('rows', () => {
  it('stand in the order of the registry, and positions as numbers', () => {
    const long: Files = {
      'e/engine.yaml': 'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 11, cylinders: 2 }\n',
    };
    const blocks = `- { measure: cylinder_bore, at: { 1: 4.1 } }\n${read('10: 0.003, 2: 0.003, 1: 0.003')}\n- { measure: main_journal_diameter, at: { 2: 3.0 } }`;
    expect(
      Object.keys(verdictsOf(shopFiles('crankshaft_runout: { new: { max: 1 } }', blocks, 'rebuild', long))),
    ).toEqual([
      'main_journal_diameter 2',
      'main_bearing_clearance 1',
      'main_bearing_clearance 2',
      'main_bearing_clearance 10',
      'cylinder_bore 1',
    ]);
  });

  it('show what people call the position', () => {
    const engine =
      'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 3 }\nlabels: { main: { 3: flywheel end } }\n';
    const rows = rowsOf(
      shopFiles(CLEARANCE, read('flywheel end: 0.003'), 'rebuild', { 'e/engine.yaml': engine }),
    );
    expect(rows.map(({ position: { name, label } }) => [name, label])).toContainEqual(['3', 'flywheel end']);
  });

  it('of a diameter with several points are judged at the least and at the greatest', () => {
    const limit = 'main_journal_diameter: { new: 3.2475 to 3.2485 }';
    const journal = (row: string) =>
      verdictsOf(
        shopFiles(limit, `- { measure: main_journal_diameter, directions: [a, b], at: { 1: [${row}] } }`),
      )['main_journal_diameter 1'];
    expect(journal('3.2475, 3.2485')).toBe('ok');
    expect(journal('3.2474, 3.2485')).toBe('out');
    expect(journal('3.2475, 3.2486')).toBe('out');
  });
});

describe('out of round and taper', () => {
  const journal =
    '- { measure: main_journal_diameter, stations: [front, rear], directions: [a, b], at: { 1: [[3.2478, 3.2471], [3.2477, 3.2475]] } }';

  it('are worked out where a limit asks for them', () => {
    const limits =
      'main_journal_out_of_round: { wear: { max: 0.0007 } }\nmain_journal_taper: { wear: { max: 0.0003 } }';
    expect(verdictsOf(shopFiles(limits, journal, 'teardown'))).toMatchObject({
      'main_journal_out_of_round 1': 'ok',
      'main_journal_taper 1': 'out',
    });
    expect(Object.keys(verdictsOf(shopFiles(CLEARANCE, journal, 'teardown')))).toEqual([
      'main_journal_diameter 1',
    ]);
  });

  it('are kept where one more reading of the diameter gives neither', () => {
    const limits =
      'main_journal_out_of_round: { wear: { max: 0.0005 } }\nmain_journal_taper: { wear: { max: 0.0003 } }';
    const check = '- { measure: main_journal_diameter, at: { 1: 3.2476 } }';
    expect(verdictsOf(shopFiles(limits, `${journal}\n${check}`, 'teardown'))).toMatchObject({
      'main_journal_out_of_round 1': 'out',
      'main_journal_taper 1': 'out',
    });
  });

  it('read directly have their row, with limits or without', () => {
    const direct = '- { measure: main_journal_out_of_round, at: { 1: 0.0005 } }';
    expect(verdictsOf(shopFiles(CLEARANCE, direct, 'teardown'))).toEqual({
      'main_journal_out_of_round 1': null,
    });
  });

  it('taper by ends or by range, as the limit says', () => {
    const three =
      '- { measure: cylinder_bore, stations: [top, middle, bottom], at: { 1: [4.1262, 4.1265, 4.1254] } }';
    const taper = (by: string) =>
      verdictsOf(shopFiles(`cylinder_taper: { ${by}wear: { max: 0.0009 } }`, three, 'teardown'))[
        'cylinder_taper 1'
      ];
    expect(taper('by: ends, ')).toBe('ok');
    expect(taper('by: range, ')).toBe('out');
    expect(taper('')).toBe('out');
  });

  it('taper for a length, where the stations carry distances', () => {
    const ends =
      '- { measure: main_journal_diameter, stations: { front: 0.25, rear: 1.75 in }, at: { 1: [3.2478, 3.2472] } }';
    const taper = (max: string) =>
      verdictsOf(shopFiles(`main_journal_taper: { per: 1 in, wear: { max: ${max} } }`, ends, 'teardown'))[
        'main_journal_taper 1'
      ];
    expect(taper('0.0004')).toBe('ok');
    expect(taper('0.00039')).toBe('out');
  });

  it('a bore with its shells in is not judged for roundness', () => {
    const bore = '- { measure: main_bearing_bore, directions: [square, "+45"], at: { 1: [3.2507, 3.2530] } }';
    const rows = rowsOf(shopFiles('main_bearing_taper: { wear: { max: 0.001 } }', bore, 'teardown'));
    expect(rows.map(({ characteristic }) => characteristic.id)).toEqual(['main_bearing_bore']);
  });
});

describe('what is not measured at all', () => {
  it('is said once for the session: a remark, and at a rebuild a warning', () => {
    const limits = `${CLEARANCE}\ncrankshaft_end_play: { new: { max: 0.013 } }\ncylinder_bore: { target: { max: 5 } }`;
    const found = (stage: string) =>
      findingsOf(shopFiles(limits, read('1: 0.003, 2: 0.003, 3: 0.003'), stage)).filter(
        ({ code }) => code === 'session/unmeasured',
      );
    expect(found('teardown').map(({ severity, measure }) => [severity, measure])).toEqual([
      ['remark', 'crankshaft_end_play'],
    ]);
    expect(found('rebuild').map(({ severity, measure }) => [severity, measure])).toEqual([
      ['warning', 'crankshaft_end_play'],
    ]);
  });

  it('is not said of what was measured, nor of steps', () => {
    const limits = 'turning_torque: { new: { max: 9 } }';
    expect(codesOf(shopFiles(limits, read('1: 0.003')))).not.toContain('session/unmeasured');
  });
});

describe('readings of one session only', () => {
  it('make a derived value', () => {
    const files = {
      ...shopFiles(CLEARANCE, '- { measure: main_bearing_bore, at: { 1: 3.0030 } }'),
      'e/earlier.yaml': sessionOf('teardown', '- { measure: main_journal_diameter, at: { 1: 3.0 } }').replace(
        '02-03',
        '01-03',
      ),
    };
    expect(Object.keys(verdictsOf(files))).toEqual(['main_bearing_bore 1']);
  });
});

describe('a position that was not measured', () => {
  const missing = (at: string, limits = CLEARANCE): readonly string[] =>
    findingsOf(shopFiles(limits, read(at)))
      .filter(({ code }) => code === 'reading/missing')
      .map(({ message, place }) => `${place.line}:${place.column} ${message}`);

  it('is told where its only limit cannot be worked out there', () => {
    const formula = 'main_bearing_clearance: { new: { max: { formula: "0.001 * main_journal_diameter" } } }';
    expect(missing('1: 0.0030, 3: 0.0030', formula).map((each) => each.replace(/^\S+ /, ''))).toContain(
      'main bearing clearance 2 is missing; other positions were measured',
    );
  });
});

it('rows stand in the order of the layout, by name as well as by number', () => {
  const files = shopFiles(
    '',
    '- { measure: main_bearing_clearance, at: { centre: 0.003, rear: 0.003, front: 0.003 } }',
    'rebuild',
    {
      'e/engine.yaml':
        'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: [front, centre, rear] }\n',
      'e/limits.yaml':
        'kind: limits\nsource: Invented.\nlimits: { crankshaft_end_play: { new: { max: 1 } } }\n',
    },
  );
  expect(rowsOf(files).map(({ position }) => position.name)).toEqual(['front', 'centre', 'rear']);
});

describe('readings of one place by several ways', () => {
  const register = (more: string): Files => ({
    'instruments.yaml': `kind: instruments\nunits: { length: in }\ninstruments:\n  a: { type: micrometer, max_error: 0.0001, resolution: 0.0001 }\n  b: { type: micrometer, ${more} }\n`,
  });
  const enOf = (second: string, more = 'max_error: 0.0002, resolution: 0.0001') =>
    rowsOf(
      shopFiles(
        'main_journal_diameter: { new: { min: 2.9 } }',
        `- { measure: main_journal_diameter, with: a, at: { 1: 2.9995 } }\n- { measure: main_journal_diameter, with: b, at: { 1: ${second} } }`,
        'rebuild',
        register(more),
      ),
    )[0]?.routes.map(({ en }) => en);

  // ISO 13528: the difference over its expanded uncertainty; in tenths 1 and 2 over √3, and two steps of 1 over √12.
  it('are held against the judged one by their normalised error', () => {
    const u = Math.sqrt(1 / 3 + 4 / 3 + 2 / 12);
    expect(enOf('2.9990')).toEqual([null, expect.closeTo(5 / (1.959964 * u), 6)]);
    expect(enOf('3.0000')).toEqual([null, expect.closeTo(5 / (1.959964 * u), 6)]);
    expect(enOf('2.9995')).toEqual([null, 0]);
  });
});

it('all places of a characteristic are printed to the finest digit that was written at any', () => {
  const finest = (at: string) =>
    rowsOf(shopFiles(CLEARANCE, read(at))).map(
      ({ lastDigit }) => lastDigit && Number(lastDigit.n) / Number(lastDigit.d) / 2540,
    );
  expect(finest('1: 0.0030, 2: 0.00305, 3: 0.003')).toEqual([1, 1, 1]);
  expect(finest('1: 0.0030, 3: 0.003')).toEqual([10, 10, 10]);
});
