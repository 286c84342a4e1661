import { describe, expect, it } from 'vitest';
import { runsOf } from '../../../src/checks/state/run.ts';
import { sessionsBehind } from '../../../src/checks/state/sessionsBehind.ts';
import { judgeState, standingRows } from '../../../src/checks/state/state.ts';
import type { EngineRoutes } from '../../../src/checks/value/routes.ts';
import { ENGINE, type Files, reportOf } from '../../shopOf.ts';
import { ALL, bores, codes, endPlay, engine, journals, standing, unmeasured, WORN } from './standing.ts';

describe('of each thing the latest value stands', () => {
  it('a later session puts a new value in the place of an old one, and leaves the others', () => {
    const files = engine(['teardown', journals(ALL)], ['machined', journals('2: 2.9988')]);
    expect(standing(files, 'main_journal_diameter', '2')).toBe('2.9988 ok');
    expect(standing(files, 'main_journal_diameter', '1')).toBe('2.9985 ok');
  });

  it('the latest of those that hold, though the last session measured it no more', () => {
    const files = engine(
      ['trial', journals(ALL)],
      ['trial', journals('1: 2.9987')],
      ['rebuild', endPlay('0.009')],
    );
    expect(standing(files, 'main_journal_diameter', '1')).toBe('2.9987 ok');
    expect(standing(files, 'main_journal_diameter', '2')).toBe('2.9984 ok');
  });

  it('a value that was out and was measured anew is judged no more', () => {
    const files = engine(['teardown', journals('2: 2.9950')], ['machined', journals('2: 2.9985')]);
    expect(codes(files)).not.toContain('reading/out');
  });

  it.each([
    ['a figure misread', '3.9984', 'reading/implausible'],
    ['a sign', '-2.9984', 'reading/impossible'],
  ])('%s is told until that position is measured anew, and then no more', (_, slip, code) => {
    const teardown = ['teardown', journals(`1: 2.9985, 2: ${slip}, 3: 2.9986`)] as const;
    expect(codes(engine(teardown, ['machined', journals('3: 2.9985')]))).toContain(code);
    expect(codes(engine(teardown, ['machined', journals('2: 2.9985')]))).not.toContain(code);
  });

  it('what no session measured is told once', () => {
    const files = engine(['teardown', journals(ALL)], ['machined', journals('2: 2.9985')]);
    expect(unmeasured(files)).toEqual(['main_bearing_clearance', 'crankshaft_end_play', 'cylinder_taper']);
  });

  it('what several sessions measured is put together: bore of one, journal of the other', () => {
    const files = engine(['machined', journals(ALL)], ['trial', bores('1: 3.0013')]);
    expect(standing(files, 'main_bearing_clearance', '1')).toBe('0.0028 ok');
  });

  it('of two routes that hold the surer one is judged, whichever is the later', () => {
    const strip = '  - { measure: main_bearing_clearance, with: strip, at: { 1: 0.003 } }';
    const files = engine(['trial', `${journals(ALL)}\n${bores('1: 3.0013')}`], ['rebuild', strip]);
    expect(standing(files, 'main_bearing_clearance', '1')).toBe('0.0028 ok');
  });

  it('of two that disagree across sessions the warning names both days; of one day it names none', () => {
    const strip = '  - { measure: main_bearing_clearance, with: strip, at: { 1: 0.004 } }';
    const sizes = `${journals('1: 2.9985')}\n${bores('1: 3.0010')}`;
    const disagreement = (files: Files) =>
      reportOf(files).state?.findings.find(({ code }) => code === 'method/disagree')?.message;
    expect(disagreement(engine(['trial', sizes], ['rebuild', strip]))).toMatch(
      /\(bearing bore − journal, [^)]*, 2026-03-01\) and .*\(read directly, strip, 2026-03-02\) differ/,
    );
    expect(disagreement(engine(['trial', `${sizes}\n${strip}`]))).not.toContain('2026');
  });

  it('one session that measured everything is the state', () => {
    const report = reportOf(
      engine(['trial', `${journals(ALL)}\n${bores('1: 3.0013')}\n${endPlay('0.009')}`]),
    );
    expect(report.state?.rows).toEqual(report.sessions[0]?.rows);
    expect(report.state?.findings).toEqual(report.sessions[0]?.findings);
  });

  it('the same measured again in a second session of the stage gives the same verdicts', () => {
    const blocks = `${journals(ALL)}\n${bores('1: 3.0013')}\n${endPlay('0.009')}`;
    const report = reportOf(engine(['rebuild', blocks], ['rebuild', blocks]));
    const verdicts = (rows = report.state?.rows ?? []) =>
      rows.map(({ characteristic, position, judgement }) => [
        characteristic.id,
        position.name,
        judgement.verdict,
      ]);
    expect(verdicts()).toEqual(verdicts([...(report.sessions[1]?.rows ?? [])]));
  });
});

describe('the size of a part holds', () => {
  it('though a joint is opened', () => {
    const files = engine(['trial', journals(ALL)], ['rebuild', endPlay('0.009')]);
    expect(standing(files, 'main_journal_diameter', '1')).toBe('2.9985 ok');
  });

  it.each([
    ['worked on', '  - { work: polished, on: main journal 2 }', ''],
    ['machined', endPlay('0.009'), 'machined: [{ part: main journals, at: 2 }]'],
    ['replaced', endPlay('0.009'), 'replaced: [{ part: crankshaft }]'],
    ['another by its mark', endPlay('0.009'), 'fitted: { crankshaft: { mark: K2, condition: new } }'],
  ])('until its part is %s', (_, blocks, more) => {
    const files = engine(['teardown', journals(WORN)], ['machined', blocks, more]);
    expect(standing(files, 'main_journal_diameter', '2')).not.toContain('2.9970');
  });

  it('though what is fitted is said again', () => {
    const fitted = 'fitted: { crankshaft: { mark: K1, condition: used } }';
    const files = engine(['teardown', journals(ALL), fitted], ['rebuild', endPlay('0.009'), fitted]);
    expect(standing(files, 'main_journal_diameter', '1')).toBe('2.9985 ok');
  });

  it('at the other positions, where one was worked on', () => {
    const files = engine(
      ['teardown', journals(WORN)],
      ['machined', '  - { work: polished, on: main journal 2 }'],
    );
    expect(standing(files, 'main_journal_diameter', '1')).toBe('2.9985 ok');
    expect(standing(files, 'main_journal_diameter', '2')).toBe('missing');
  });
});

describe('a figure of parts put together holds', () => {
  it('until they go together anew', () => {
    const files = engine(['trial', endPlay('0.009')], ['rebuild', journals(ALL)]);
    expect(standing(files, 'crankshaft_end_play', 'engine')).toBe('nothing');
    expect(unmeasured(files)).toContain('crankshaft_end_play');
  });

  it('through a second day of the same assembly', () => {
    const files = engine(['rebuild', endPlay('0.009')], ['rebuild', journals(ALL)]);
    expect(standing(files, 'crankshaft_end_play', 'engine')).toBe('0.009 ok');
    expect(unmeasured(files)).not.toContain('crankshaft_end_play');
  });
});

describe('what holds no longer is shown with its day, and not judged', () => {
  const known = (files: Files): readonly (readonly [string, string, string])[] =>
    (reportOf(files).state?.lastKnown ?? []).map(({ row, date }) => [
      row.characteristic.id,
      row.position.name,
      date,
    ]);

  it('a figure that ended when the parts came apart', () => {
    const files = engine(['trial', endPlay('0.009')], ['rebuild', journals(ALL)]);
    expect(known(files)).toEqual([['crankshaft_end_play', 'engine', '2026-03-01']]);
  });

  it('and the finding that it was not measured says what it was, and when', () => {
    const said = (files: Files) =>
      (reportOf(files).state?.findings ?? [])
        .filter(({ code }) => code === 'session/unmeasured')
        .map(({ message }) => message.replace(/.*not measured/, ''));
    const files = engine(['trial', endPlay('0.009')], ['rebuild', journals(ALL)]);
    expect(said(files)).toContain('; last known 0.009 in on 2026-03-01');
    const rows = engine(
      ['trial', journals(ALL)],
      ['rebuild', journals('1: 2.9987')],
      ['teardown', endPlay('0.009')],
    );
    expect(said(rows)).toContain('; last known 2.9984 to 2.9987 in on 2026-03-01 and 2026-03-02');
    expect(new Set(said(engine(['rebuild', journals(ALL)])))).toEqual(new Set(['']));
  });

  it('all of the run before a teardown that was not read again, by its last day', () => {
    const files = engine(
      ['trial', journals(ALL)],
      ['rebuild', journals('1: 2.9985')],
      ['teardown', endPlay('0.009')],
    );
    expect(known(files)).toEqual([
      ['main_journal_diameter', '1', '2026-03-02'],
      ['main_journal_diameter', '2', '2026-03-01'],
      ['main_journal_diameter', '3', '2026-03-01'],
    ]);
  });

  it('and nothing that holds', () => {
    expect(known(engine(['teardown', journals(ALL)], ['trial', endPlay('0.009')]))).toEqual([]);
  });
});

describe('running ends all that was measured before', () => {
  it.each([
    ['at a teardown', ['rebuild', journals(ALL)], ['teardown', endPlay('0.009')]],
    [
      'with more hours',
      ['rebuild', journals(ALL), 'hours: 100'],
      ['service', endPlay('0.009'), 'hours: 350'],
    ],
  ] as const)('%s', (_, before, after) => {
    expect(standing(engine(before, after), 'main_journal_diameter', '1')).toBe('nothing');
  });

  it('and the same hours end nothing', () => {
    const files = engine(['trial', journals(ALL), 'hours: 100'], ['rebuild', endPlay('0.009'), 'hours: 100']);
    expect(standing(files, 'main_journal_diameter', '1')).toBe('2.9985 ok');
  });
});

describe('the band goes by the part', () => {
  it('nothing said: by the stage of the session in which it was read', () => {
    const files = engine(['teardown', journals(WORN)], ['rebuild', endPlay('0.009')]);
    expect(standing(files, 'main_journal_diameter', '2')).toBe('2.9970 worn');
  });

  it('reground: as new, also where an earlier session of the run says it', () => {
    const files = engine(
      ['machined', journals(WORN), 'fitted: { crankshaft: { mark: K1, condition: new } }'],
      ['service', endPlay('0.009')],
    );
    expect(standing(files, 'main_journal_diameter', '2')).toBe('2.9970 out');
  });
});

const taper =
  '  - { measure: cylinder_bore, with: bore, stations: [top, bottom], at: { 3: [4.1280, 4.1252] } }';
const conceded = (more = ''): string =>
  `concessions: [{ measure: cylinder_taper, at: 3, up_to: 0.0030, reason: The owner agreed., by: RK${more} }]`;

describe('a concession', () => {
  it('covers the value in later sessions of the run', () => {
    const files = engine(['teardown', taper, conceded()], ['rebuild', endPlay('0.009')]);
    expect(standing(files, 'cylinder_taper', '3')).toContain('accepted');
  });

  it('covers a later value there, up to its limit', () => {
    const again = taper.replace('4.1280', '4.1281');
    expect(
      standing(engine(['teardown', taper, conceded()], ['trial', again]), 'cylinder_taper', '3'),
    ).toContain('accepted');
    const beyond = taper.replace('4.1280', '4.1290');
    expect(
      standing(engine(['teardown', taper, conceded()], ['trial', beyond]), 'cylinder_taper', '3'),
    ).toContain('out');
  });

  it.each([
    ['without a day', ''],
    ['until a day that has not come', ', until: 2026-12-31'],
  ])('covers a value that is read after the engine has run, %s', (_, more) => {
    const files = engine(
      ['teardown', taper, `hours: 100\n${conceded(more)}`],
      ['service', taper, 'hours: 350'],
    );
    expect(standing(files, 'cylinder_taper', '3')).toContain('accepted');
  });

  it.each([
    ['after the next teardown', ['teardown', taper] as const, conceded()],
    ['after its day', ['rebuild', taper] as const, conceded(', until: 2026-03-01')],
    ['after its part was renewed', ['rebuild', taper, 'replaced: [{ part: block }]'] as const, conceded()],
  ])('covers nothing %s', (_, later, concession) => {
    expect(standing(engine(['teardown', taper, concession], later), 'cylinder_taper', '3')).toContain('out');
  });
});

describe('a concession without a teardown before it', () => {
  it('covers a value that is read after the engine has run', () => {
    const files = engine(
      ['service', taper, `hours: 100\n${conceded()}`],
      ['service', '', 'hours: 200'],
      ['service', taper, 'hours: 350'],
    );
    expect(standing(files, 'cylinder_taper', '3')).toContain('accepted');
    const torn = engine(
      ['teardown', taper, `hours: 100\n${conceded()}`],
      ['service', taper, 'hours: 350'],
      ['teardown', '', 'hours: 400'],
    );
    const report = reportOf(torn);
    const then = standingRows(report.engine, report.registry, runsOf(report.engine.sessions)[1] ?? []);
    expect(then?.rows.map(({ judgement }) => judgement.verdict)).toContain('accepted');
  });
});

describe('where one session is all of a run', () => {
  it.each<[string, Files, boolean]>([
    ['it is the state', engine(['trial', journals(ALL)]), true],
    ['also with what it conceded itself', engine(['teardown', taper, conceded()]), true],
    [
      'also after sessions that conceded nothing',
      engine(['teardown', '', 'hours: 1'], ['service', taper, 'hours: 2']),
      true,
    ],
    [
      'not after one that did',
      engine(['teardown', taper, `hours: 1\n${conceded()}`], ['service', taper, 'hours: 2']),
      false,
    ],
    [
      'not where it uses another',
      engine(['trial', journals(ALL)], ['teardown', bores('1: 3.0013'), 'uses: ["1"]']),
      false,
    ],
    ['not where there are two', engine(['trial', journals(ALL)], ['rebuild', endPlay('0.009')]), false],
  ])('%s', (_, files, expected) => {
    const { engine: read, registry, sessions } = reportOf(files);
    const run = sessions.slice(-(runsOf(read.sessions).at(-1)?.length ?? 0));
    const state = judgeState(read, registry, run);
    expect(state === run.at(-1)).toBe(expected);
    expect(state?.session).toBe(run.at(-1)?.session);
    const built: EngineRoutes = new Map();
    const first = standingRows(
      read,
      registry,
      run.map(({ session }) => session),
      {},
      built,
    );
    expect(first?.rows).toEqual(state?.rows);
    const again = standingRows(
      read,
      registry,
      run.map(({ session }) => session),
      {},
      built,
    );
    expect(again?.view.routes === first?.view.routes).toBe(expected);
  });

  it('and where there is none, there is no state', () => {
    const { engine: read, registry } = reportOf({ 'e/engine.yaml': ENGINE });
    expect(judgeState(read, registry, [])).toBeUndefined();
    expect(standingRows(read, registry, [])).toBeUndefined();
  });
});

describe('what was said of readings', () => {
  const warm = 'temperature: 24 degC';
  const steel = (files: Files): Files => ({
    ...files,
    'e/engine.yaml': `${ENGINE}materials: { crankshaft: aluminium }\n`,
  });
  const corrected = (later: string): number =>
    codes(steel(engine(['trial', journals(ALL), warm], ['rebuild', later]))).filter(
      (code) => code === 'temperature/corrected',
    ).length;

  it('together is said while one of them counts, and no more when all were taken again', () => {
    expect(corrected(endPlay('0.009'))).toBe(1);
    expect(corrected(journals('2: 2.9985'))).toBe(1);
    expect(corrected(journals(ALL))).toBe(0);
  });

  it('of values is said once, of where they stand', () => {
    const files = engine(
      ['teardown', journals('1: 2.9985, 2: -2.9984, 3: 2.9986')],
      ['machined', endPlay('0.009')],
    );
    expect(codes(files).filter((code) => code === 'reading/impossible')).toHaveLength(1);
  });

  it('of hours, which are no reading, is said on', () => {
    const files = engine(
      ['service', '', 'hours: 100'],
      ['rebuild', journals(ALL), 'hours: 10'],
      ['rebuild', endPlay('0.009')],
    );
    expect(codes(files)).toContain('reading/implausible');
  });

  it('is traced to the sessions in which they were taken', () => {
    const report = reportOf(engine(['trial', journals(ALL)], ['trial', bores('1: 3.0013')]));
    const behind = (id: string): readonly string[] =>
      [...(report.state?.rows ?? [])]
        .filter(({ characteristic, position }) => characteristic.id === id && position.name === '1')
        .flatMap((row) => [...sessionsBehind(row)].map(({ date }) => date));
    expect(behind('main_journal_diameter')).toEqual(['2026-03-01']);
    expect(new Set(behind('main_bearing_clearance'))).toEqual(new Set(['2026-03-01', '2026-03-02']));
    const [row] = report.state?.rows ?? [];
    if (row === undefined) throw new Error('no row');
    expect(sessionsBehind({ ...row, routes: [] })).toEqual(new Set());
  });
});
