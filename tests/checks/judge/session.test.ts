import { describe, expect, it } from 'vitest';
import {
  type Files,
  findingsOf,
  REGISTER,
  reportOf,
  rowsOf,
  sessionOf,
  shopFiles,
  shopOf,
  verdictsOf,
} from '../../shopOf.ts';

const LIMITS = 'cylinder_bore: { wear: { max: 4.1300 } }\npiston_clearance: { new: { max: 0.0060 } }';
const blocks = (...lines: readonly string[]): Files => shopFiles(LIMITS, lines.join('\n'), 'machined');
const bore = (at: string): string => `- { measure: cylinder_bore, at: { ${at} } }`;
const CLEAR = '- { measure: piston_clearance, at: { 3: 0.0090 } }';

describe('a size that fits another grade', () => {
  const limits =
    'main_journal_diameter: { new: 2.9990 to 3.0000, wear: { min: 2.9980 } }\nmain_bearing_bore: { new: 3.0000 to 3.0030, wear: { max: 3.0040 } }';
  const lists =
    '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9928, 2: 2.9929 } }\n- { measure: main_bearing_bore, with: bore, set_with: mic, at: { 1: 2.9902, 2: 2.9903, 3: 2.9902 } }';

  it('is told where two lists are not exchanged, and there as that slip alone', () => {
    const files = shopFiles(limits, lists, 'teardown', { 'instruments.yaml': REGISTER });
    expect(findingsOf(files).map(({ message }) => message)).toEqual([
      'main journal diameter and main bearing bore: at all 2 positions the inner part is larger than the outer, so that main bearing clearance is below zero, which is impossible: are the two lists exchanged?',
      'main bearing bore 3: 2.9902 in, small by 9.8 thou (new min 3.0000)',
      'main journal diameter 3 is missing; other positions were measured',
      'main bearing bore 3: 2.9902 in fits 0.010 under, and no size is stated',
    ]);
  });
});

const rowOf3 = (files: Files) => rowsOf(files).find(({ position }) => position.name === '3');

describe('work on a part', () => {
  const honed = '- { work: honed, on: cylinder 3 }';

  it('lets what was read of it before step back', () => {
    expect(verdictsOf(blocks(bore('3: 4.1310'), honed, bore('3: 4.1290')))['cylinder_bore 3']).toBe('ok');
    const row = rowOf3(blocks(bore('3: 4.1310'), honed, bore('3: 4.1290')));
    expect(row?.routes).toHaveLength(1);
  });

  it('leaves other positions as they were', () => {
    const row = (id: string) =>
      verdictsOf(blocks(bore('2: 4.1310, 3: 4.1310'), honed, bore('3: 4.1290')))[id];
    expect(row('cylinder_bore 2')).toBe('out');
    expect(row('cylinder_bore 3')).toBe('ok');
  });

  it('lets what follows from the part step back too, such as a clearance in that cylinder', () => {
    expect(Object.keys(verdictsOf(blocks(CLEAR, bore('1: 4.1250'), honed)))).not.toContain(
      'piston_clearance 3',
    );
    expect(verdictsOf(blocks(honed, CLEAR))['piston_clearance 3']).toBe('out');
  });

  it('without work between them both readings count', () => {
    const row = rowOf3(blocks(bore('3: 4.1310'), bore('3: 4.1290')));
    expect(row?.routes).toHaveLength(2);
  });

  it('leaves the position missing where nothing was read after it', () => {
    expect(
      verdictsOf(blocks(bore('1: 4.1250, 2: 4.1250, 3: 4.1250, 4: 4.1250'), honed))['cylinder_bore 3'],
    ).toBe('missing');
  });

  it('on several parts lets each of them step back', () => {
    const both = '- { work: honed, on: [cylinder 2, cylinder 3] }';
    const files = blocks(bore('1: 4.1310, 2: 4.1310, 3: 4.1310'), both, bore('4: 4.1250'));
    expect(verdictsOf(files)).toMatchObject({
      'cylinder_bore 1': 'out',
      'cylinder_bore 2': 'missing',
      'cylinder_bore 3': 'missing',
      'cylinder_bore 4': 'ok',
    });
  });

  const leftAfter = (work: string) =>
    Object.keys(
      verdictsOf(
        shopFiles(
          'cylinder_bore: { new: { max: 5 } }',
          `- { measure: rod_bearing_clearance, at: { 1: 0.002, 2: 0.002, 3: 0.002, 4: 0.002 } }\n- { measure: crankpin_diameter, at: { 1: 2.5, 2: 2.5 } }\n- { measure: main_journal_diameter, at: { 1: 3, 3: 3 } }\n- { measure: thrust_journal_width, value: 1.5 }\n- { work: ground, on: ${work} }`,
          'rebuild',
          { 'e/engine.yaml': VEE },
        ),
      ),
    );
  const VEE = `kind: engine\nname: Vee\nunits: { length: in }\nlayout: { cylinders: 4, mains: 3, crankpins: 2, pins: { 1: [1, 3], 2: [2, 4] } }\nlabels: { main: { 3: Flywheel end } }\n`;
  const MAINS = ['main_journal_diameter 1', 'main_journal_diameter 3'];
  const RODS = [1, 2, 3, 4].map((at) => `rod_bearing_clearance ${at}`);

  it('on a crankpin lets the clearances of both rods on it step back', () => {
    expect(leftAfter('crankpin 1')).toEqual([
      ...MAINS,
      'crankpin_diameter 2',
      'rod_bearing_clearance 2',
      'rod_bearing_clearance 4',
      'thrust_journal_width engine',
    ]);
  });

  it('names a main by its label, a part that there is but once, and all of a kind', () => {
    expect(leftAfter('main journal flywheel end')).not.toContain('main_journal_diameter 3');
    expect(leftAfter('main journal flywheel end')).toContain('main_journal_diameter 1');
    expect(leftAfter('main 3')).not.toContain('main_journal_diameter 3');
    expect(leftAfter('thrust journal')).not.toContain('thrust_journal_width engine');
    expect(leftAfter('thrust journal')).toEqual(expect.arrayContaining(MAINS));
    expect(leftAfter('crankpins')).toEqual([...MAINS, 'thrust_journal_width engine']);
    expect(leftAfter('rod 2')).toEqual(expect.arrayContaining(RODS.filter((rod) => !rod.endsWith('2'))));
    expect(leftAfter('rod 2')).not.toContain('rod_bearing_clearance 2');
  });

  it.each([
    ['cylnder 1', 'value', 'did you mean cylinder 1?'],
    ['crankshft', 'value', 'did you mean crankshaft?'],
    [
      'water pump',
      'value',
      'name what is measured, such as cylinder 3, main journal 1, pistons or crankshaft; other work goes into a note',
    ],
    ['cylinder', 'value', 'did you mean cylinders?'],
    ['cylinder 9', 'unknown-position', 'it has 1, 2, 3, 4'],
    ['main journal 9', 'unknown-position', 'it has 1, 2, 3'],
    ['thrust journal 2', 'unknown-position', 'there is only one: leave out what follows its name'],
  ])('that names nothing is refused: %s', (on, code, help) => {
    const { diagnostics } = shopOf(blocks(bore('1: 4.1'), `- { work: honed, on: ${on} }`));
    expect(diagnostics).toMatchObject([{ code: `document/${code}`, help }]);
  });

  it('on the crankshaft lets every journal and pin step back', () => {
    const files = shopFiles(
      'main_journal_diameter: { wear: { min: 2.9 } }',
      '- { measure: main_journal_diameter, at: { 1: 2.5 } }\n- { measure: crankpin_diameter, at: { 1: 2.5 } }\n- { measure: main_housing_bore, at: { 1: 3.2 } }\n- { work: reground, on: crankshaft }',
    );
    expect(rowsOf(files).map(({ characteristic }) => characteristic.id)).toEqual(['main_housing_bore']);
  });
});

describe('sessions of one engine', () => {
  const session = (date: string, value: string): string =>
    sessionOf('teardown', `- { measure: cylinder_bore, at: { 3: ${value} } }`).replace('2026-02-03', date);
  const files: Files = {
    ...shopFiles(LIMITS, bore('3: 4.1250'), 'rebuild'),
    'e/b.yaml': session('2024-05-01', '4.1270'),
    'e/a.yaml': session('2025-05-01', '4.1280'),
  };

  it('stand in the order of their dates, whatever their files are called', () => {
    expect(reportOf(files).sessions.map(({ session: { date } }) => date)).toEqual([
      '2024-05-01',
      '2025-05-01',
      '2026-02-03',
    ]);
  });

  it('know the value of the latest one before', () => {
    const last = reportOf(files).sessions.at(-1);
    const row = last?.rows.find(({ position }) => position.name === '3');
    expect(row && last?.before(row)?.date).toBe('2025-05-01');
    const first = reportOf(files).sessions[0];
    const earliest = first?.rows.find(({ position }) => position.name === '3');
    expect(earliest).toBeDefined();
    expect(earliest && first?.before(earliest)).toBeUndefined();
  });

  it('do not lend each other readings', () => {
    const piston = {
      ...files,
      'e/c.yaml': sessionOf('rebuild', '- { measure: piston_diameter, at: { 3: 4.1 } }').replace(
        '02-03',
        '02-04',
      ),
    };
    expect(Object.keys(verdictsOf(piston))).toEqual(['piston_diameter 3']);
  });
});

describe('findings', () => {
  it('stand worst first, then in the order of the file', () => {
    const found = findingsOf(
      shopFiles(
        `${LIMITS}\nmain_bearing_clearance: { target: { max: 0.0020 }, new: { max: 0.0040 } }`,
        '- { measure: main_bearing_clearance, with: mic, at: { 1: 0.0030, 2: 0.0041 } }\n- { measure: main_journal_diameter, with: mikc, at: { 1: 3.0 } }',
        'rebuild',
        { 'instruments.yaml': REGISTER },
      ),
    );
    const weights = found.map(({ severity }) => ['error', 'warning', 'remark'].indexOf(severity));
    expect(weights).toEqual([...weights].sort());
    expect(new Set(weights).size).toBe(3);
    const warnings = found.filter(({ severity }) => severity === 'warning').map(({ place }) => place.line);
    expect(warnings).toEqual([...warnings].sort((a, b) => a - b));
  });
});
