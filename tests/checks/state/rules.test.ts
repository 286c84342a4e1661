import { describe, expect, it } from 'vitest';
import { characteristics } from '../../../src/characteristics/registry.ts';
import type { Row } from '../../../src/checks/judge/row.ts';
import { closingOf, mayClose } from '../../../src/plan/closing/closing.ts';
import { type Files, limitsOf, reportOf } from '../../shopOf.ts';
import { ALL, bores, codes, endPlay, engine, journals, standing, type Told, WORN } from './standing.ts';

const MEASURE = 'main_journal_diameter';

describe('the size of a part ends where its metal or its place may have changed', () => {
  it.each(['machined', 'cleaned of deposits', 'straightened', 'heated', 'plated', 'pressed in', 'moved'])(
    '%s',
    (work) => {
      const files = engine(
        ['trial', journals(ALL)],
        ['rebuild', `  - { work: ${work}, on: main journal 2 }`],
      );
      expect(standing(files, MEASURE, '2')).toBe('missing');
      expect(standing(files, MEASURE, '1')).toBe('2.9985 ok');
    },
  );

  it('by work of the same session only where that stands behind the reading', () => {
    const work = '  - { work: polished, on: main journal 2 }';
    expect(standing(engine(['trial', `${journals('2: 2.9984')}\n${work}`]), MEASURE, '2')).not.toContain(
      '2.9984',
    );
    expect(standing(engine(['trial', `${work}\n${journals('2: 2.9984')}`]), MEASURE, '2')).toBe('2.9984 ok');
  });

  it('and not by what the session of the reading says was done: that came before', () => {
    for (const said of [
      'machined: [{ part: main journals }]',
      'replaced: [{ part: crankshaft }]',
      'fitted: { crankshaft: { mark: K2, condition: new } }',
    ])
      expect(standing(engine(['trial', journals(ALL), said]), MEASURE, '1'), said).toBe('2.9985 ok');
  });
});

describe('what is said to be fitted', () => {
  const fitted = (says: string): string => `fitted: { crankshaft: { ${says} } }`;
  const fittedThen = (first: string, then: string): Files =>
    engine(['machined', journals(ALL), first], ['rebuild', endPlay('0.009'), then]);

  it.each([
    ['another mark', fitted('mark: K1'), fitted('mark: K2')],
    ['another code', fitted('code: A1'), fitted('code: A2')],
    [
      'another size',
      fitted('condition: reground, main: 0.010 under'),
      fitted('condition: reground, main: 0.020 under'),
    ],
    ['new, and nothing was said before', '', fitted('condition: new')],
    ['reground, and nothing was said before', '', fitted('condition: reground')],
    ['new, and used before', fitted('condition: used'), fitted('condition: new')],
    [
      'reground, and used before',
      fitted('mark: K1, condition: used'),
      fitted('mark: K1, condition: reground'),
    ],
    [
      'new at its place, and used before',
      'fitted: { main_shells: { condition: used }, crankshaft: { condition: used } }',
      'fitted: { crankshaft: { condition: new } }',
    ],
  ])('ends what was read of it: %s', (_, first, then) => {
    expect(standing(fittedThen(first, then), MEASURE, '1')).not.toContain('2.9985');
  });

  it.each([
    ['the same again', fitted('mark: K1, condition: used'), fitted('mark: K1, condition: used')],
    ['used, and nothing was said before', '', fitted('condition: used')],
    ['another part', '', 'fitted: { main_shells: { code: M2, condition: new } }'],
    [
      'reground, and ground in the session of the reading',
      'machined: [{ part: crankshaft }]',
      fitted('condition: reground'),
    ],
    [
      'reground, and its journals were ground in the session of the reading',
      'fitted: { crankshaft: { condition: used } }\nmachined: [{ part: main journals }]',
      fitted('condition: reground'),
    ],
    [
      'new, and renewed in the session of the reading',
      'replaced: [{ part: crankshaft }]',
      fitted('condition: new'),
    ],
    ['new as before', fitted('condition: new'), fitted('condition: new')],
    ['no condition as before, and new', fitted('mark: K1'), fitted('mark: K1, condition: new')],
  ])('ends nothing: %s', (_, first, then) => {
    expect(standing(fittedThen(first, then), MEASURE, '1')).toContain('2.9985');
  });

  it('new at one place ends what was read there alone', () => {
    const shells = (says: string): string => `fitted: { main_shells: { condition: used${says} } }`;
    const files = engine(
      ['trial', '  - { measure: main_shell_thickness, with: mic, at: { 1: 0.0900, 2: 0.0900 } }', shells('')],
      ['rebuild', endPlay('0.009'), shells(', at: { 2: { condition: new } }')],
    );
    const limits = { 'e/more/limits.yaml': limitsOf('main_shell_thickness: { new: { min: 0.0890 } }') };
    expect(standing({ ...files, ...limits }, 'main_shell_thickness', '1')).toBe('0.0900 ok');
    expect(standing({ ...files, ...limits }, 'main_shell_thickness', '2')).not.toContain('ok');
  });

  it('and what was found ends nothing', () => {
    const found = 'found: [{ on: crankshaft, is: scored at main 1, do: machine }]';
    expect(standing(engine(['teardown', journals(ALL)], ['trial', '', found]), MEASURE, '1')).toBe(
      '2.9985 ok',
    );
  });
});

describe('a crack test that was passed before the crankshaft was ground', () => {
  const TEST = '  - { measure: crankshaft_crack_test, value: pass }';
  const asked = (after: readonly Told[]): readonly string[] =>
    (reportOf(engine(['teardown', TEST], ...after)).state?.findings ?? [])
      .filter(({ measure }) => measure === 'crankshaft_crack_test')
      .map(({ severity, message }) => `${severity}: ${message}`);
  const GROUND = 'machined: [{ part: main journals }]';

  it('is asked for again', () => {
    expect(asked([['machined', journals(ALL), GROUND]])).toEqual([
      'remark: crankshaft crack test of 2026-03-01: main journals machined since; test again',
    ]);
    expect(
      asked([
        ['machined', '', GROUND],
        ['rebuild', journals(ALL)],
      ]),
    ).toEqual(['warning: crankshaft crack test of 2026-03-01: main journals machined since; test again']);
  });

  it.each([
    ['straightened', 'crankshaft'],
    ['straightened', 'main journal 2'],
    ['Cold straightened', 'crankshaft'],
    ['cleaned and straightened in the press', 'crankshaft'],
    ['reground', 'crankpins'],
    ['welded', 'crankshaft'],
  ])('is asked for again where a later session says `work: %s, on: %s`', (work, on) => {
    const done = `  - { work: ${work}, on: ${on} }`;
    const again = (severity: string): readonly string[] => [
      `${severity}: crankshaft crack test of 2026-03-01: ${on} ${work} since; test again`,
    ];
    expect(asked([['machined', done]])).toEqual(again('remark'));
    expect(asked([['rebuild', done]])).toEqual(again('warning'));
    const files = engine(['teardown', TEST], ['rebuild', done]);
    const { state } = reportOf(files);
    const closing = state && closingOf(reportOf(files), state);
    expect(closing?.unmeasured.map(({ id }) => id)).toContain('crankshaft_crack_test');
  });

  it.each(['thrust journal', 'crankshaft', 'main 2'])('is asked for again where %s was machined', (part) => {
    expect(asked([['machined', '', `machined: [{ part: ${part} }]`]])).toEqual([
      `remark: crankshaft crack test of 2026-03-01: ${part} machined since; test again`,
    ]);
  });

  it('is asked for again where the same session straightened the shaft after it', () => {
    const done = '  - { work: straightened, on: crankshaft }';
    const message = 'crankshaft crack test of 2026-03-01: crankshaft straightened since; test again';
    const told = (blocks: string): readonly (string | undefined)[] =>
      (reportOf(engine(['rebuild', blocks])).state?.findings ?? [])
        .filter(({ measure }) => measure === 'crankshaft_crack_test')
        .map((each) => each.message);
    expect(told(`${TEST}\n${done}`)).toEqual([message]);
    expect(told(`${done}\n${TEST}`)).toEqual([]);
    expect(told(`${TEST}\n${done}\n${TEST}`)).toEqual([]);
  });

  it('stands no longer as sound, and is the last that is known', () => {
    const told = (...after: readonly Told[]) => {
      const { state } = reportOf(engine(['teardown', TEST], ...after));
      const isTest = ({ characteristic }: Row): boolean => characteristic.id === 'crankshaft_crack_test';
      return {
        rows: state?.rows.filter(isTest).map(({ judgement }) => judgement.verdict),
        lastKnown: state?.lastKnown.filter(({ row }) => isTest(row)).map(({ date }) => date),
      };
    };
    expect(told(['machined', journals(ALL)])).toEqual({ rows: ['ok'], lastKnown: [] });
    expect(told(['machined', journals(ALL), GROUND])).toEqual({ rows: [], lastKnown: ['2026-03-01'] });
    expect(told(['machined', journals(ALL), GROUND], ['trial', TEST])).toEqual({
      rows: ['ok'],
      lastKnown: [],
    });
  });

  it('and failed it, is cracked still', () => {
    const failed = TEST.replace('pass', 'fail');
    const { state } = reportOf(engine(['teardown', failed], ['machined', journals(ALL), GROUND]));
    const verdicts = state?.rows.flatMap(({ characteristic, judgement }) =>
      characteristic.id === 'crankshaft_crack_test' ? judgement.verdict : [],
    );
    expect(verdicts).toEqual(['out']);
  });

  it('is asked for again of the rods that were straightened alone', () => {
    const tests = '  - { measure: rod_crack_test, at: { 1: pass, 2: pass, 3: pass } }';
    const done = '  - { work: straightened, on: [rod 2, rod 3] }';
    const told = (reportOf(engine(['teardown', tests], ['machined', done])).state?.findings ?? []).filter(
      ({ message }) => message.includes('test again'),
    );
    expect(told.map(({ message }) => message)).toEqual([
      'rod crack test 2, 3 of 2026-03-01: rod 2 straightened, rod 3 straightened since; test again',
    ]);
  });

  it.each<[string, readonly Told[]]>([
    ['nothing was ground', [['rebuild', journals(ALL)]]],
    ['cylinders were bored', [['rebuild', '', 'machined: [{ part: cylinders }]']]],
    ['a shaft was polished', [['rebuild', '  - { work: polished, on: main journals }']]],
    ['a rod was straightened', [['rebuild', '  - { work: straightened, on: rod 2 }']]],
    [
      'it was tested after it was straightened',
      [
        ['machined', '  - { work: straightened, on: crankshaft }'],
        ['rebuild', TEST],
      ],
    ],
    ['it was tested after that', [['machined', TEST, GROUND]]],
    [
      'another crankshaft went in',
      [
        ['machined', '', GROUND],
        ['rebuild', '', 'replaced: [{ part: crankshaft }]'],
      ],
    ],
  ])('is not, where %s', (_, after) => {
    expect(asked(after)).toEqual([]);
  });
});

describe('figures of parts put together', () => {
  it.each([
    'crankshaft_end_play',
    'turning_torque',
    'rod_side_clearance',
    'piston_protrusion',
    'liner_protrusion',
    'valve_lash_cold',
    'valve_lash_hot',
    'gear_backlash',
    'intake_opening',
    'compression_pressure',
    'leak_down_held',
  ])('%s ends when the engine comes apart', (id) => {
    expect(characteristics.find((each) => each.id === id)?.isAssemblyFigure).toBe(true);
  });

  it.each([
    'main_journal_diameter',
    'main_housing_bore',
    'piston_diameter',
    'valve_stem_diameter',
    'ring_width',
  ])('%s is none of them', (id) => {
    const found = characteristics.find((each) => each.id === id);
    expect(found?.isAssemblyFigure).toBeUndefined();
    expect(found).toBeDefined();
  });
});

describe('what an earlier session of the run says of its readings', () => {
  it('that a shaft lay in its supports there: no runout is missing', () => {
    const runout = '  - { measure: crankshaft_runout, with: dial, supported_on: [1, 3], at: { 2: 0.0005 } }';
    const limits = { 'e/more/limits.yaml': limitsOf('crankshaft_runout: { new: { max: 0.001 } }') };
    const files = { ...engine(['trial', runout], ['rebuild', journals(ALL)]), ...limits };
    expect(standing(files, 'crankshaft_runout', '2')).toBe('0.0005 ok');
    expect(standing(files, 'crankshaft_runout', '1')).toBe('nothing');
  });

  it('of which day the parts of a clearance are: once, where all are of one', () => {
    const notes = (...sessions: readonly Told[]) =>
      reportOf(engine(...sessions)).state?.rows.find(
        ({ characteristic }) => characteristic.id === 'main_bearing_clearance',
      )?.routes[0]?.route.notes;
    const both = `${journals('1: 2.9985')}\n${bores('1: 3.0013')}`;
    expect(notes(['trial', both], ['rebuild', endPlay('0.009')])).toEqual(['read 2026-03-01']);
    expect(
      notes(['trial', journals('1: 2.9985')], ['trial', bores('1: 3.0013')], ['rebuild', endPlay('0.009')]),
    ).toEqual(['main bearing bore of 2026-03-02', 'main journal diameter of 2026-03-01']);
  });
});

describe('of several ways that hold', () => {
  it('within one way the newest counts', () => {
    const files = engine(
      ['trial', bores('1: 3.0013, 2: 3.0013')],
      ['trial', journals(ALL)],
      ['rebuild', journals('1: 2.9990')],
    );
    expect(standing(files, 'main_bearing_clearance', '1')).toBe('0.0023 ok');
    expect(standing(files, 'main_bearing_clearance', '2')).toBe('0.0029 ok');
  });

  it('conditions that differ are a remark, though they are of different days', () => {
    const strip = (oiled: string): string =>
      `  - { measure: main_bearing_clearance, with: strip, conditions: { bearings: ${oiled} }, at: { 1: 0.003 } }`;
    const sizes = bores('1: 3.0015').replace('with:', 'conditions: { bearings: dry }, with:');
    const files = (oiled: string): Files =>
      engine(['trial', `${journals('1: 2.9985')}\n${sizes}`], ['rebuild', strip(oiled)]);
    expect(codes(files('oiled'))).toContain('method/conditions');
    expect(codes(files('dry'))).not.toContain('method/conditions');
  });
});

describe('a used part that is worn goes into a rebuild', () => {
  const closing = (more: string) => {
    const files = engine(['teardown', journals(WORN)], ['rebuild', endPlay('0.009'), more]);
    const report = reportOf(files);
    if (report.state === undefined) throw new Error('no state');
    const found = closingOf(report, report.state);
    return [found.undecided.map(({ position }) => position.name), mayClose(found)];
  };
  const used = 'fitted: { crankshaft: { condition: used } }';

  it('only when somebody decided it', () => {
    expect(closing(used)).toEqual([['2'], false]);
    expect(
      closing(`${used}\nfound: [{ on: main journal 2, is: worn evenly, do: reuse, by: RK }]`)[0],
    ).toEqual([]);
    expect(
      closing(`${used}\nfound: [{ on: main journal 1, is: worn evenly, do: reuse, by: RK }]`)[0],
    ).toEqual(['2']);
  });
});
