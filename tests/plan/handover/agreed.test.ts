import { describe, expect, it } from 'vitest';
import { agreementsOf } from '../../../src/plan/handover/agreement.ts';
import { answerTo } from '../../../src/plan/handover/answer.ts';
import { byYes } from '../../../src/plan/handover/byYes.ts';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { reportWithPlan } from '../../../src/plan/reportWithPlan.ts';
import { planContext } from '../../../src/plan/work/context.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../src/plan/work/jobTitle.ts';
import {
  ENGINE,
  type Files,
  limitsOf,
  REGISTER,
  refusalsOf,
  reportOf,
  sessionOf,
  shopOf,
} from '../../shopOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 }, last_size: 2.9680 }
crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }`;

/** Mains of which the third needs 0.020 under, pins that need 0.010 under, bores that need 0.010 over: mains read twice. */
const WORN = (main: string): string => `${[1, 2]
  .map(() => `- { measure: main_journal_diameter, with: mic, at: { 1: 2.9960, 2: 2.9960, 3: ${main} } }`)
  .join('\n')}
- { measure: crankpin_diameter, with: mic, at: { 1: 2.4968, 2: 2.4968, 3: 2.4968, 4: 2.4968 } }
- { measure: cylinder_bore, with: bore, at: { 1: 4.1315, 2: 4.1315, 3: 4.1315, 4: 4.1315 } }`;

const agreed = (items: string, date = '2026-02-05'): string =>
  `agreed: { by: Owner, date: ${date}, items: [${items}] }\n`;

const shop = (items: string, more: Files = {}): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE.replace('layout:', 'labels: { main: { 1: free end } }\nlayout:'),
  'e/limits.yaml': limitsOf(LIMITS),
  'e/teardown.yaml': sessionOf('teardown', WORN('2.9880'), agreed(items)),
  ...more,
});

function planOf(files: Files) {
  const { engine, registry, diagnostics } = shopOf(files);
  if (engine === undefined || diagnostics.length > 0) throw new Error('not sound');
  const report = reportWithPlan(engine, registry, {});
  if (report.state === undefined) throw new Error('no session');
  const agreements = agreementsOf(engine, registry, report.state.session);
  const jobs = jobsOf(planContext(engine, registry, report.state)).flatMap((job) => byYes(job, agreements));
  const answers = jobs.map((job) => [titleOf(job, engine.document), answerTo(job, agreements)] as const);
  return {
    yes: answers.flatMap(([title, answer]) => (answer?.kind === 'yes' ? [title] : [])),
    another: answers.flatMap(([title, answer]) =>
      answer?.kind === 'another' ? [`${title}: ${answer.to}`] : [],
    ),
    told: report.state.findings
      .filter(({ code }) => code === 'plan/unknown-work' || code === 'plan/other-work')
      .map(({ message, place }) => `${place.line}:${place.column} ${message}`),
  };
}

const MAINS = ['clean crankshaft', 'crack test crankshaft', 'grind main journals 1 to 3', 'wash crankshaft'];
const CYLINDERS = ['clean block', 'bore cylinders 1 to 4', 'wash block'];

describe('the yes of a customer is taken', () => {
  it.each([
    ['bore cylinders 1 to 4', CYLINDERS],
    ['bore cylinders', CYLINDERS],
    ['rebore bores 1-4', CYLINDERS],
    ['"bore cylinders 1, 2, 3 and 4"', CYLINDERS],
    ['bore cylinders to 0.010 over', CYLINDERS],
    ['Grind  main_journals', MAINS],
    ['grind mains', MAINS],
    ['regrind mains 1 to 3', MAINS],
    ['grind main journals free end to 3', MAINS],
    ['grind main journals 1 to 3 to 0.020 under', MAINS],
    ['grind main journals to .020 under', MAINS],
  ])('as %s', (item, titles) => {
    const { yes, told } = planOf(shop(item));
    expect(yes.filter((each) => each !== 'weigh and balance pistons')).toEqual(titles);
    expect(told).toEqual([]);
  });

  it('for all that one word names', () => {
    expect(planOf(shop('grind crankshaft')).yes).toEqual([
      ...MAINS.slice(0, 3),
      'grind crankpins 1 to 4',
      'wash crankshaft',
    ]);
  });

  it('in every line that the page prints', () => {
    const lines = ['bore cylinders 1 to 4', 'grind main journals 1 to 3', 'grind crankpins 1 to 4'];
    const { yes, told } = planOf(shop(lines.map((each) => `"${each}"`).join(', ')));
    expect(yes).toEqual(expect.arrayContaining(lines));
    expect(told).toEqual([]);
  });
});

describe('a yes to something else', () => {
  const HAS =
    'no line of the plan, which has bore cylinders 1 to 4, grind main journals 1 to 3, grind crankpins 1 to 4';

  it.each(['bananas', 'grind camshaft', 'bore cylinder 9', 'grind main journals 1 to 9'])(
    'is told with what the plan has, at its place: %s',
    (item) => {
      const { yes, told } = planOf(shop(item));
      expect(yes).toEqual([]);
      expect(told).toEqual([`4:48 agreed to ${item}: ${HAS}`]);
    },
  );

  it.each([
    ['grind mains to 0.010 under', '0.010 under', ' to 0.020 under'],
    ['grind main journal 3', 'grind main journal 3 alone', ' to 0.020 under'],
  ])('is no yes to this: %s', (item, to, size) => {
    const { yes, another, told } = planOf(shop(item));
    expect(yes).toEqual([]);
    expect(another).toContain(`grind main journals 1 to 3: ${to}`);
    expect(told).toEqual([
      `4:48 the yes of 2026-02-05 is to ${to}, and the plan is to grind main journals 1 to 3${size}: ask again`,
    ]);
  });

  it('is that of a plan which went a step farther since', () => {
    const later = sessionOf('machined', WORN('2.9780')).replace(/date: .*/, 'date: 2026-03-01');
    const { another } = planOf(shop('grind mains', { 'e/later.yaml': later }));
    expect(another).toEqual(['grind main journals 1 to 3: 0.020 under']);
  });

  it('is refused where the size is on the wrong side', () => {
    expect(refusalsOf(shop('bore cylinders to 0.020 under'))).toEqual(['e/teardown.yaml:4:48 value']);
  });
});

describe('what came back of another size than was agreed', () => {
  const made = (says: string, more = '', date = '2026-03-01'): string =>
    sessionOf(
      'machined',
      '- { measure: crankshaft_crack_test, value: pass }',
      `machined: [${says}]\n${more}`,
    ).replace('2026-02-03', date);
  const toldOf = (items: string, ...later: readonly string[]): readonly string[] =>
    planOf(
      shop(items, Object.fromEntries(later.map((text, index) => [`e/u${index}.yaml`, text]))),
    ).told.filter((each) => each.includes('was made'));

  it('is told once for all its places, at the line that says so', () => {
    expect(
      toldOf('grind main journals to 0.010 under', made('{ part: main journals, size: 0.020 under }')),
    ).toEqual([
      '4:12 main journals 1 to 3: agreed to 0.010 under on 2026-02-05, and 0.020 under was made: tell the customer, and write down the new yes',
    ]);
    expect(
      toldOf(
        'grind mains to 0.010 under, grind pins to 0.010 under',
        made(
          '{ part: main journals, at: [1, 3], size: 0.020 under }, { part: crankpins, size: 0.010 under }',
        ),
      ),
    ).toEqual([expect.stringMatching(/^4:12 main journals 1, 3: agreed to 0\.010 under/)]);
    expect(toldOf('grind crankshaft to 0.010 under', made('{ part: crankpins, size: 0.030 under }'))).toEqual(
      [expect.stringContaining('crankpins 1 to 4: agreed to 0.010 under')],
    );
    expect(toldOf('bore cylinders to 0.020 over', made('{ part: cylinders, size: 0.030 over }'))).toEqual([
      expect.stringContaining('cylinders 1 to 4: agreed to 0.020 over'),
    ]);
  });

  it.each<[string, string, readonly string[]]>([
    ['the size is as agreed', 'grind mains to 0.010 under', [made('{ part: mains, size: 0.010 under }')]],
    ['no size was agreed', 'grind mains', [made('{ part: main journals, size: 0.020 under }')]],
    [
      'another place was agreed',
      'grind main journal 1 to 0.010 under',
      [made('{ part: main journal 3, size: 0.020 under }')],
    ],
    [
      'another part was agreed',
      'grind pins to 0.010 under',
      [made('{ part: main journals, size: 0.020 under }')],
    ],
    ['no size is stated', 'grind mains to 0.010 under', [made('{ part: main journals }')]],
    [
      'the customer said yes to it since',
      'grind mains to 0.010 under',
      [
        made(
          '{ part: main journals, size: 0.020 under }',
          agreed('grind mains to 0.020 under', '2026-03-02'),
        ),
      ],
    ],
    [
      'it was made before the yes',
      'bore cylinders',
      [
        made('{ part: main journals, size: 0.010 under }'),
        sessionOf(
          'machined',
          '- { measure: crankshaft_crack_test, value: pass }',
          agreed('grind mains to 0.020 under', '2026-03-05'),
        ).replace('2026-02-03', '2026-03-05'),
      ],
    ],
  ])('is not told where %s', (_, items, later) => {
    expect(toldOf(items, ...later)).toEqual([]);
  });
});

it('a yes to one size is one to the bore that comes to it, and none to the other', () => {
  const bores =
    '- { measure: cylinder_bore, with: bore, at: { 1: 4.1315, 2: 4.1415, 3: 4.1255, 4: 4.1255 } }\n';
  const { yes, another } = planOf(
    shop('', {
      'shop.yaml': 'kind: shop\nunits: { length: in }\nplan: { separate: [cylinders] }\n',
      'e/teardown.yaml': sessionOf('teardown', bores.repeat(2), agreed('bore cylinders to 0.010 over')),
    }),
  );
  expect([yes, another]).toEqual([['bore cylinder 1'], ['bore cylinder 2: 0.010 over']]);
});

describe('what is ordered of a machine shop', () => {
  it('is agreed to in any of these words', () => {
    const files = (items: string): Files =>
      shop(items, {
        'e/sent.yaml':
          'kind: session\nstage: machined\ndate: 2026-03-01\nsent: { part: crankshaft, to: North grinding, work: [grind main journals] }\n',
      });
    const codes = (items: string): readonly string[] => {
      const { engine, registry } = shopOf(files(items));
      return engine === undefined
        ? ['not judged']
        : (reportWithPlan(engine, registry, {}).sessions.at(-1)?.findings ?? []).map(({ code }) => code);
    };
    expect(codes('grind mains')).not.toContain('plan/unagreed');
    expect(codes('grind main journal 2')).toContain('plan/unagreed');
  });
});

it('a yes to every place is one to a job that names none', () => {
  const scored = `${agreed('bore cylinders 1 to 4')}found: [{ on: cylinder 3, is: scored, do: machine }]\n`;
  const mains = '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9985, 3: 2.9985 } }';
  const { yes, told } = planOf(shop('', { 'e/teardown.yaml': sessionOf('teardown', mains, scored) }));
  expect(told).toEqual([]);
  expect(yes).toContain('bore cylinders');
});

describe('of a part that must be renewed at one place and should be at others', () => {
  const BORES =
    '- { measure: cylinder_bore, with: bore, at: { 1: 4.1290, 2: 4.1290, 3: 4.1315, 4: 4.1290 } }\n'.repeat(
      2,
    );
  const files = (items: string): Files =>
    shop('', {
      'shop.yaml': 'kind: shop\nunits: { length: in }\nplan: { steps: { cylinders: [] } }\n',
      'e/teardown.yaml': sessionOf('teardown', BORES, agreed(items)),
    });

  it.each(['renew cylinder 3', '"renew cylinders 1, 2, 4"'])(
    'a yes to one line is that alone: %s',
    (item) => {
      expect(planOf(files(item))).toEqual({ yes: [item.replaceAll('"', '')], another: [], told: [] });
    },
  );

  it('a yes to a part of a line is a yes for that part', () => {
    expect(planOf(files('"renew cylinders 1, 3"'))).toEqual({
      yes: ['renew cylinder 3', 'renew cylinder 1'],
      another: [],
      told: [],
    });
  });
});

describe('of what was found to be machined', () => {
  const BENT = 'found: [{ on: rod 4, is: bent, do: machine }]\n';
  const files = (items: string, later?: string): Files => {
    const said = agreed(items);
    return shop('', {
      'e/teardown.yaml': sessionOf(
        'teardown',
        '- { measure: cylinder_bore, with: bore, at: { 1: 4.1255, 2: 4.1255, 3: 4.1255, 4: 4.1255 } }',
        `${BENT}${later === undefined ? said : ''}`,
      ),
      ...(later === undefined
        ? {}
        : { 'e/z.yaml': `kind: session\nstage: machined\ndate: ${later}\n${said}` }),
    });
  };
  const linesOf = (of: Files) => {
    const { engine, registry, state } = reportOf(of);
    if (state === undefined) throw new Error('no session');
    const context = planContext(engine, registry, state);
    return orderList(context, jobsOf(context))
      .filter((line) => line.for !== 'opened engine')
      .map(({ count, what, when, for: job }) => `${count} ${what}, ${when}, ${job}`);
  };

  it.each<readonly [string, string, readonly string[]]>([
    ['renew connecting rod 4', 'renew connecting rod 4', ['1 connecting rod, now, renew connecting rods']],
    ['new rod 4', 'renew connecting rod 4', ['1 connecting rod, now, renew connecting rods']],
    ['machine rod 4', 'machine connecting rod 4', []],
    ['machine or renew connecting rod 4', 'machine connecting rod 4', []],
  ])('%s is the choice, and plan and order list follow it', (items, title, lines) => {
    for (const of of [files(items), files(items, '2026-03-01')]) {
      expect(planOf(of)).toEqual({ yes: [title], another: [], told: [] });
      expect(linesOf(of)).toEqual(lines);
    }
  });

  it('a choice of another one is none', () => {
    expect(linesOf(files('renew connecting rod 3'))).toEqual([]);
  });
});

it('one line needs no list', () => {
  const files = shop('', {
    'e/teardown.yaml': sessionOf(
      'teardown',
      WORN('2.9880'),
      'agreed: { by: Owner, items: bore cylinders }\n',
    ),
  });
  expect(planOf(files).yes).toEqual(expect.arrayContaining(CYLINDERS));
});

it('a comma that parts one line in two is told as that', () => {
  expect(planOf(shop('grind main journals 1, 3')).told).toContain(
    '4:71 agreed to 3: a comma begins a new item; put the line in quotes, as in "grind main journals 1, 3"',
  );
});
