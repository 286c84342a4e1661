import { describe, expect, it } from 'vitest';
import { agreedFindings } from '../../../src/plan/handover/agreedFindings.ts';
import { agreementsOf } from '../../../src/plan/handover/agreement.ts';
import { answerTo } from '../../../src/plan/handover/answer.ts';
import { carriedPart } from '../../../src/plan/handover/carriedPart.ts';
import { markOf } from '../../../src/plan/handover/marks.ts';
import type { Job } from '../../../src/plan/work/job.ts';
import { ENGINE, type Files, limitsOf, REGISTER, reportOf, sessionOf, shopOf } from '../../shopOf.ts';
import { jobsIn } from '../planOf.ts';

const LIMITS =
  'main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }\ncrankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }';

/** Read twice: one that is far from the others might be a slip. */
const mains = (third: string, first = '2.9985'): string =>
  `- { measure: main_journal_diameter, with: mic, at: { 1: ${first}, 2: 2.9983, 3: ${third} } }\n`.repeat(2);

const session = (stage: string, date: string, blocks: string, more = ''): string =>
  sessionOf(stage, blocks, more).replace(/date: .*/, `date: ${date}`);

const shop = (engine: string, sessions: Files, plan = ''): Files => ({
  'shop.yaml': `kind: shop\nunits: { length: in }\n${plan}`,
  'register.yaml': REGISTER,
  'e/engine.yaml': `${ENGINE}${engine}`,
  'e/limits.yaml': limitsOf(LIMITS),
  ...sessions,
});

const stepsOf = (jobs: readonly Job[]): string =>
  jobs
    .flatMap(({ cut }) => cut?.groups ?? [])
    .map(({ deciding: { choice } }) => (choice.kind === 'step' ? choice.step.name : choice.kind))
    .join(', ');

describe('the part that is carried to a machine shop', () => {
  const { parts } = shopOf(shop('', {})).registry;
  it.each([
    ['main_journal', 'crankshaft'],
    ['crankpin', 'crankshaft'],
    ['crankshaft', 'crankshaft'],
    ['cylinder', 'block'],
    ['main_housing', 'block'],
    ['head', 'head'],
    ['rod_housing', 'rod'],
    ['camshaft', 'camshaft'],
    ['cam_journal', 'camshaft'],
    ['valve_seat', 'head'],
    ['piston', 'piston'],
    ['flywheel', 'flywheel'],
  ])('for a job on a %s is the %s', (id, carried) => {
    expect(carriedPart({ part: parts.find(id) } as Job, parts)?.id).toBe(carried);
  });

  it('is none for a job on no known part', () => {
    expect(carriedPart({ part: undefined } as Job, parts)).toBeUndefined();
  });
});

describe('what is stamped on a part', () => {
  const markIn = (engine: string, more: string): string | undefined => {
    const files = shop(engine, { 'e/s.yaml': session('teardown', '2026-02-03', mains('2.9985'), more) });
    const { engine: read, registry } = reportOf(files);
    const crankshaft = registry.parts.find('crankshaft');
    if (crankshaft === undefined) throw new Error('no crankshaft');
    return markOf({ part: crankshaft, at: undefined }, read);
  };
  const fitted = (mark: string): string => `fitted: { crankshaft: { mark: ${mark}, main: std } }\n`;
  const sent = (mark: string, part = 'Crankshaft'): string =>
    `sent: { part: ${part}, to: North grinding, work: [grind crankpins]${mark} }\n`;

  it.each([
    ['is none where nobody said any', '', '', undefined],
    ['is that of the engine document', fitted('K1'), '', 'K1'],
    ['is that which was fitted last', fitted('K1'), fitted('K2'), 'K2'],
    ['is that with which it was sent', fitted('K1'), sent(', mark: K3'), 'K3'],
    ['is that of the engine document’s own sending', sent(', mark: K4'), '', 'K4'],
    ['is not that of another part that was sent', fitted('K1'), sent(', mark: B1', 'block'), 'K1'],
    ['is that which was fitted where it was sent with none', fitted('K1'), sent(''), 'K1'],
    ['is not that of another part that was fitted', 'fitted: { rods: { mark: R1 } }\n', '', undefined],
  ])('%s', (_, engine, more, mark) => expect(markIn(engine, more)).toBe(mark));
});

describe('what was agreed to', () => {
  const SESSIONS: Files = {
    'e/a.yaml': session(
      'teardown',
      '2025-05-01',
      mains('2.9960'),
      'agreed: { by: Owner, items: [grind mains] }\n',
    ),
    'e/b.yaml': session(
      'teardown',
      '2026-02-03',
      mains('2.9880'),
      'agreed: { by: Owner, items: [grind mains] }\n',
    ),
    'e/c.yaml': session(
      'machined',
      '2026-03-01',
      mains('2.9780'),
      'agreed: { by: Owner, date: 2026-03-02, items: [grind mains] }\n',
    ),
  };
  const agreedOn = (...dates: readonly string[]): string =>
    `agreed: [${dates.map((date) => `{ by: Owner${date === '' ? '' : `, date: ${date}`}, items: [grind mains] }`).join(', ')}]\n`;
  const plansFor = (files: Files) => {
    const { engine, registry, state } = reportOf(files);
    if (state === undefined) throw new Error('no session');
    return agreementsOf(engine, registry, state.session).all.map(({ agreement, plan, plans }) => [
      agreement.date,
      stepsOf(plan()),
      [...plans()].map(stepsOf).join(' | '),
    ]);
  };

  it('is held against the plan of its day in the run of the engine, the nearest first', () => {
    const dates = ['', '2025-06-01', '2026-02-02', '2026-02-03', '2026-02-28', '2026-03-01', '2026-04-01'];
    const first = ['0.020 under', '0.020 under | 0.030 under'];
    const second = ['0.030 under', '0.030 under | 0.020 under'];
    expect(plansFor(shop(agreedOn(...dates), SESSIONS))).toEqual([
      [undefined, ...first],
      ['2026-02-03', ...first],
      ['2026-02-28', ...first],
      ['2026-03-01', ...second],
      ['2026-04-01', ...second],
      [undefined, ...first],
      ['2026-03-02', ...second],
    ]);
  });

  it('goes by the latest plan before it that had anything to be done', () => {
    const done = session('machined', '2026-03-01', mains('2.9985'));
    expect(plansFor(shop(agreedOn('2026-03-02'), { ...SESSIONS, 'e/c.yaml': done }))[0]).toEqual([
      '2026-03-02',
      '0.020 under',
      ' | 0.020 under',
    ]);
  });

  it('goes by the plan of the earlier run for a session of that', () => {
    const { engine, registry, sessions } = reportOf(shop(agreedOn('', '2026-04-01'), SESSIONS));
    const [first] = sessions;
    if (first === undefined) throw new Error('no session');
    const { all } = agreementsOf(engine, registry, first.session);
    expect(all.map(({ plan }) => stepsOf(plan()))).toEqual(['0.010 under', '0.010 under', '0.010 under']);
  });
});

describe('the check says', () => {
  const toldOf = (files: Files): readonly string[] => {
    const report = reportOf(files);
    if (report.state === undefined) throw new Error('no session');
    return agreedFindings(report, report.state).map(({ code, message }) => `${code} ${message}`);
  };
  const one = (items: string, blocks: string, plan = '', date = ', date: 2026-02-05') =>
    shop(
      '',
      {
        'e/s.yaml': session(
          'teardown',
          '2026-02-03',
          blocks,
          `agreed: { by: Owner${date}, items: [${items}] }\n`,
        ),
      },
      plan,
    );

  it.each([
    [
      'nothing where nobody agreed to anything',
      shop('', { 'e/s.yaml': session('teardown', '2026-02-03', mains('2.9880')) }),
      [],
    ],
    [
      'that the plan has nothing at all',
      one('bananas', mains('2.9985')),
      ['plan/unknown-work agreed to bananas: no line of the plan, which has none'],
    ],
    [
      'which lines the plan has, without those that come with others',
      one(
        'bananas',
        `${mains('2.9880')}- { measure: crankpin_diameter, with: mic, at: { 1: 2.4968, 2: 2.4968, 3: 2.4968, 4: 2.4968 } }`,
      ),
      [
        'plan/unknown-work agreed to bananas: no line of the plan, which has grind main journals 1 to 3, grind crankpins 1 to 4',
      ],
    ],
    [
      'every size of the plan, once',
      one('grind mains to 0.030 under', mains('2.9880', '2.9960'), 'plan: { separate: [main journals] }\n'),
      [
        'plan/other-work the yes of 2026-02-05 is to 0.030 under, and the plan is to grind main journals 1, 3 to 0.010 under, 0.020 under: ask again',
      ],
    ],
    [
      'no day of a yes that has none',
      one('grind mains to 0.010 under', mains('2.9880'), '', ''),
      [
        'plan/other-work the yes is to 0.010 under, and the plan is to grind main journals 1 to 3 to 0.020 under: ask again',
      ],
    ],
    [
      'both lines of one yes that name two sizes',
      one('grind mains to 0.010 under, grind mains to 0.030 under', mains('2.9880')),
      [
        'plan/other-work the yes of 2026-02-05 is to two sizes at one place, grind mains to 0.010 under and grind mains to 0.030 under, and the plan is to grind main journals 1 to 3 to 0.020 under: ask again',
      ],
    ],
  ])('%s', (_, files, told) => expect(toldOf(files)).toEqual(told));
});

describe('an answer', () => {
  const answersIn = (files: Files) => {
    const { engine, registry, state } = reportOf(files);
    if (state === undefined) throw new Error('no session');
    const agreements = agreementsOf(engine, registry, state.session);
    return jobsIn(files).map((job) => {
      const answer = answerTo(job, agreements);
      return `${job.name}: ${answer === undefined ? 'none' : answer.kind === 'yes' ? 'yes' : `another, to ${answer.to}`}`;
    });
  };
  const said = (items: string, found = '') =>
    answersIn(
      shop('', {
        'e/s.yaml': session(
          'teardown',
          '2026-02-03',
          mains('2.9880'),
          `agreed: { by: Owner, items: [${items}] }\n${found}`,
        ),
      }),
    );
  it('is a yes where nobody knows yet how deep the cut goes', () => {
    expect(said('grind mains', 'found: [{ on: main journal 3, is: scored, do: machine }]\n')).toContain(
      'grind main journals: yes',
    );
  });

  const CRACKED = 'found: [{ on: crankshaft, is: cracked, do: renew }]\n';

  it.each([
    [
      'grind mains',
      '',
      [
        'clean crankshaft: yes',
        'crack test crankshaft: yes',
        'grind main journals: yes',
        'wash crankshaft: yes',
      ],
    ],
    [
      'wash crankshaft',
      '',
      [
        'clean crankshaft: none',
        'crack test crankshaft: none',
        'grind main journals: none',
        'wash crankshaft: yes',
      ],
    ],
    [
      'grind mains to 0.010 under',
      '',
      [
        'clean crankshaft: none',
        'crack test crankshaft: none',
        'grind main journals: another, to 0.010 under',
        'wash crankshaft: none',
      ],
    ],
    ['grind main journals', CRACKED, ['renew crankshaft: another, to grind main journals']],
    ['straighten crankshaft', CRACKED, ['renew crankshaft: another, to straighten crankshaft']],
    ['bore cylinders', CRACKED, ['renew crankshaft: none']],
    ['"grind mains, bore cylinders"', CRACKED, ['renew crankshaft: none']],
    ['wash crankshaft', CRACKED, ['renew crankshaft: none']],
    ['crankshaft', CRACKED, ['renew crankshaft: none']],
    ['renew crankshaft', CRACKED, ['renew crankshaft: yes']],
  ])('to %s', (items, found, answers) => expect(said(items, found)).toEqual(answers));
});
