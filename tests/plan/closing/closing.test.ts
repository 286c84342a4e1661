import { describe, expect, it } from 'vitest';
import { closingOf, mayClose, openCount } from '../../../src/plan/closing/closing.ts';
import { leftOutOf } from '../../../src/plan/closing/leftOut.ts';
import { openTexts } from '../../../src/plan/closing/openTexts.ts';
import { reportWithPlan } from '../../../src/plan/reportWithPlan.ts';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf, shopOf } from '../../shopOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }
crankpin_diameter: { new: 2.4980 to 2.4990 }`;
const caps = (joint: string): string =>
  `kind: torque\njoint: ${joint}\nsource: Invented.\nfasteners: { names: [1, 2] }\norder: [1, 2]\npasses: [{ to: 40 lbf ft }]\n`;

const mains = (first: string, second: string, third: string): string =>
  `- { measure: main_journal_diameter, with: mic, at: { 1: ${first}, 2: ${second}, 3: ${third} } }`;
const PINS =
  '- { measure: crankpin_diameter, with: mic, at: { 1: 2.4985, 2: 2.4985, 3: 2.4985, 4: 2.4985 } }';

interface Said {
  readonly blocks: string;
  readonly more?: string;
  readonly shop?: string;
  readonly stage?: string;
  readonly limits?: string;
  readonly files?: Files;
}

const engineWith = ({
  blocks,
  more = '',
  shop = '',
  stage = 'rebuild',
  limits = LIMITS,
  files = {},
}: Said): Files => ({
  'shop.yaml': `kind: shop\nunits: { length: in }\n${shop}`,
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf(stage, blocks, more),
  ...files,
});

function standing(said: Said) {
  const { engine, registry } = shopOf(engineWith(said));
  if (engine === undefined) throw new Error('not judged');
  const report = reportWithPlan(engine, registry, {});
  const { state } = report;
  if (state === undefined) throw new Error('no session');
  const closing = closingOf(report, state);
  return { report, state, closing, layout: engine.document.layout, texts: openTexts(closing, report) };
}

const GOOD = `${mains('2.9984', '2.9984', '2.9984')}\n${PINS}`;

describe('what is open is said a sentence each, the gravest first', () => {
  it.each<readonly [string, Said, readonly string[]]>([
    ['nothing where all is well', { blocks: GOOD }, []],
    [
      'values that are out or left blank, each with its verdict',
      { blocks: `${mains('2.9965', '~', '2.9984')}\n${PINS}` },
      [
        'main journal diameter 1: 2.9965 in, small by 1.5 thou (new min 2.9980): out',
        'main journal diameter 2: missing',
      ],
    ],
    [
      'a value that is undecided',
      { blocks: `${mains('2.9980', '2.9984', '2.9984')}\n${PINS}`, shop: 'decision_rule: guarded\n' },
      ['main journal diameter 1: 2.9980 in: undecided'],
    ],
    [
      'documents with errors, by how many',
      {
        blocks: GOOD,
        files: {
          'e/later.yaml': sessionOf('rebuild', '- { measure: nonsense, value: 1 }'),
          'e/last.yaml': sessionOf(
            'rebuild',
            '- { measure: nonsense, value: 1 }\n- { measure: bananas, value: 1 }',
          ),
        },
      },
      ['e/later.yaml has 1 error and is not taken', 'e/last.yaml has 2 errors and is not taken'],
    ],
    [
      'what was found, with what is to become of it where that is said',
      {
        blocks: GOOD,
        more: 'found: [{ on: [main 3 shell lower, main 2 shell lower], is: wiped, do: renew }, { on: head, is: stained }]\n',
      },
      ['main 3 shell lower, main 2 shell lower: wiped, each to be renewed', 'head: stained, not decided yet'],
    ],
    [
      'characteristics that have limits and were not measured, by their names',
      { blocks: mains('2.9984', '2.9984', '2.9984') },
      ['limits, and not measured: crankpin diameter'],
    ],
    [
      'joints that nobody tightened',
      { blocks: GOOD, files: { 'e/torque/caps.yaml': caps('main caps') } },
      ['main caps: nobody has logged that this joint was tightened (caps)'],
    ],
    [
      'worn parts that are used again without a word',
      {
        blocks: `${mains('2.9975', '2.9984', '2.9984')}\n${PINS}`,
        more: 'fitted: { crankshaft: { condition: used } }\n',
      },
      [
        'main journal diameter 1: 2.9975 in, small by 5 tenths (new min 2.9980): used again, and nobody says who decided so',
      ],
    ],
    [
      "others' figures",
      { blocks: `${GOOD.replace('with: mic', 'from: North grinding')}` },
      [1, 2, 3].map((at) => `main journal diameter ${at}: 2.9984 in: known by others' figures alone`),
    ],
    [
      'boxes that nobody ticked',
      {
        blocks: GOOD,
        shop: 'plan: { required: [second initials, gauge fitted] }\n',
        more: 'confirmed: { what: second initials, by: RK }\n',
      },
      ['not confirmed: gauge fitted'],
    ],
  ])('%s', (_, said, texts) => {
    const found = standing(said);
    expect(found.texts).toEqual(texts);
    expect(mayClose(found.closing)).toBe(texts.length === 0);
    expect(openCount(found.closing)).toBe(texts.length);
  });

  it('in the order of their weight', () => {
    const { texts } = standing({
      blocks: mains('2.9965', '2.9984', '2.9984'),
      more: 'found: [{ on: head, is: cracked, do: renew }]\n',
      shop: 'plan: { required: [second initials] }\n',
      files: {
        'e/torque/caps.yaml': caps('main caps'),
        'register.yaml': REGISTER.replace('mic:', 'other:'),
        'e/later.yaml': sessionOf('rebuild', '- { measure: nonsense, value: 1 }'),
      },
    });
    expect(texts).toEqual([
      'e/later.yaml has 1 error and is not taken',
      'mic is not in the register of instruments',
      'main journal diameter 1: 2.9965 in, small by 1.5 thou (new min 2.9980): out',
      'head: cracked, to be renewed',
      'main caps: nobody has logged that this joint was tightened (caps)',
      'limits, and not measured: crankpin diameter',
      'not confirmed: second initials',
    ]);
  });
});

describe('a worn part that is used again', () => {
  const worn = (more: string, stage = 'rebuild') =>
    standing({
      blocks: `${mains('2.9975', '2.9984', '2.9984')}\n${PINS}`,
      more,
      stage,
    }).closing.undecided.map(({ position }) => position.name);
  const used = 'fitted: { crankshaft: { condition: used } }\n';

  it.each([
    ['is open', used, ['1']],
    [
      'is open where another part was found fit',
      `${used}found: [{ on: main journal 2, is: polished, do: reuse, by: RK }]\n`,
      ['1'],
    ],
    [
      'is open where it is to be held back',
      `${used}found: [{ on: main journal 1, is: worn, do: hold }]\n`,
      ['1'],
    ],
    [
      'is open where nobody says who found it fit',
      `${used}found: [{ on: main journal 1, is: worn, do: reuse }]\n`,
      ['1'],
    ],
    [
      'is decided where somebody found it fit',
      `${used}found: [{ on: main journal 1, is: worn, do: reuse, by: RK }, { on: head, is: stained, do: reuse, by: RK }]\n`,
      [],
    ],
  ])('%s', (_, more, places) => expect(worn(more)).toEqual(places));

  const says = (condition: string): string => `fitted: { crankshaft: { condition: ${condition} } }\n`;
  it.each([
    ['said so before the last', [says('used'), '']],
    ['said so last before it', ['', says('used')]],
    ['said so later than that it was new', [says('new'), says('used')]],
  ])('is open where an earlier session of the run %s', (_, [first = '', second = '']) => {
    const earlier = (date: string, more: string): string =>
      `kind: session\nstage: trial\ndate: ${date}\n${more}readings: []\n`;
    const { closing } = standing({
      blocks: `${mains('2.9975', '2.9984', '2.9984')}\n${PINS}`,
      files: { 'e/a.yaml': earlier('2026-02-01', first), 'e/b.yaml': earlier('2026-02-02', second) },
    });
    expect(closing.undecided.map(({ position }) => position.name)).toEqual(['1']);
  });

  it('is nobody’s question before the rebuild', () => expect(worn(used, 'trial')).toEqual([]));
});

describe('the boxes', () => {
  const note = (why: string): string => `{ value: ~, note: ${why} }`;
  const LEFT = mains(note('cap seized'), note('cap seized'), note('bore plugged'));
  const boxes = (said: Said) =>
    standing(said).closing.boxes.map(({ what, isRequired, by, leftOut }) =>
      [what, isRequired ? 'required' : '', by ?? '', leftOut ?? ''].join(' | '),
    );
  const sundries = [
    'gasket set renewed',
    'shaft seals renewed',
    'core plugs renewed',
    'gallery plugs renewed',
  ];
  const usual = [
    "main caps tightened by the maker's manual",
    "rod caps tightened by the maker's manual",
    "cylinder head tightened by the maker's manual",
    ...sundries,
    'oil galleries brushed, blown through and plugged',
    'every part washed, dried and oiled',
    'ring tops upward, gaps staggered',
    'rods, caps and pistons: numbers and directions as they came',
    'bearing tangs seated, oil holes in line',
    'thrust faces aligned before the thrust cap is tightened',
    'crankshaft turned by hand after each cap',
    'timing marks in line',
    'nothing left inside: rags, tools, plugs',
    'second initials',
  ];

  it('are the usual ones, each ticked by whoever said so last', () => {
    const confirmed =
      'confirmed: [{ what: Timing  marks in line, by: AB }, { what: timing_marks in line, by: CD }]\n';
    expect(boxes({ blocks: GOOD, more: confirmed })).toEqual(
      usual.map((what) => `${what} |  | ${what === 'timing marks in line' ? 'CD' : ''} | `),
    );
  });

  it.each<readonly [string, Omit<Said, 'blocks'>, readonly string[]]>([
    ['that a session of the run renewed', { more: 'replaced: [{ part: Gasket set }]\n' }, sundries.slice(1)],
    ['of an engine that was not opened', { stage: 'service' }, []],
  ])('have none for gaskets, seals and plugs %s', (_, said, left) => {
    const { closing } = standing({ blocks: GOOD, ...said });
    const all = closing.boxes.map(({ what }) => what);
    expect(all.filter((what) => /renewed$/.test(what))).toEqual(left);
  });

  it('of gaskets are known still where a session says later that they were renewed', () => {
    const { state } = standing({
      blocks: GOOD,
      more: 'replaced: [{ part: gasket set }]\nconfirmed: { what: gasket set renewed, by: RK }\n',
    });
    expect(state.findings.filter(({ code }) => code === 'plan/unknown-work')).toEqual([]);
  });

  it('are ticked in the engine document as well', () => {
    const files = { 'e/engine.yaml': `${ENGINE}confirmed: { what: second initials, by: EF }\n` };
    expect(boxes({ blocks: GOOD, files }).at(-1)).toBe('second initials |  | EF | ');
  });

  it('take in what was left out on purpose, place by place of one reason, and what the shop requires besides', () => {
    const shop = 'plan: { required: [Second initials, gauge fitted] }\n';
    expect(boxes({ blocks: `${LEFT}\n${PINS}`, shop }).slice(-4)).toEqual([
      'second initials | required |  | ',
      'left out on purpose at rebuild: main journal diameter 1, 2: cap seized | required |  | main journal diameter 1, 2',
      'left out on purpose at rebuild: main journal diameter 3: bore plugged | required |  | main journal diameter 3',
      'gauge fitted | required |  | ',
    ]);
  });

  it('name what there is but once without a place', () => {
    const blocks = `${PINS}\n- { measure: crankshaft_end_play, value: { value: ~, note: no dial } }`;
    const limits = `${LIMITS}\ncrankshaft_end_play: { new: 0.004 to 0.010 }`;
    const { state, layout } = standing({ blocks, limits });
    expect(leftOutOf(state.rows, layout)).toEqual([
      { what: 'crankshaft end play', reason: 'no dial', stage: 'rebuild' },
    ]);
  });

  it('tell apart what was left out at two stages', () => {
    const { state, layout } = standing({
      blocks: mains(note('cap seized'), '2.9984', '2.9984'),
      stage: 'teardown',
      files: {
        'e/later.yaml': sessionOf(
          'trial',
          `${PINS.replace('1: 2.4985', `1: ${note('cap seized')}`)}`,
        ).replace(/date: .*/, 'date: 2026-02-09'),
      },
    });
    expect(leftOutOf(state.rows, layout)).toEqual([
      { what: 'main journal diameter 1', reason: 'cap seized', stage: 'teardown' },
      { what: 'crankpin diameter 1', reason: 'cap seized', stage: 'trial' },
    ]);
  });
});

it.each([
  ['trial', ['caps']],
  ['rebuild', []],
])('a joint that nobody tightened is open at a %s, where the check does not say so', (stage, open) => {
  const { closing } = standing({ blocks: GOOD, stage, files: { 'e/caps.yaml': caps('main caps') } });
  expect(closing.untightened.map(({ name }) => name)).toEqual(open);
});

describe('a release', () => {
  const released = (said: Said) =>
    standing(said)
      .state.findings.filter(({ code }) => code === 'plan/released-open')
      .map(({ message, place }) => `${place.path}:${place.line} ${message}`);

  it('names three of what is open, and counts the others', () => {
    const [head, ...more] = released({
      blocks: mains('2.9965', '2.9966', '2.9967'),
      more: 'found: [{ on: head, is: cracked, do: renew }]\nconfirmed: { what: released, by: RK }\n',
      files: { 'e/engine.yaml': `${ENGINE}confirmed: { what: RELEASED, by: AB }\n` },
    });
    const open =
      'main journal diameter 1: 2.9965 in, small by 1.5 thou (new min 2.9980): out; main journal diameter 2: 2.9966 in, small by 1.4 thou (new min 2.9980): out; main journal diameter 3: 2.9967 in, small by 1.3 thou (new min 2.9980): out; and 2 more';
    expect([head, ...more]).toEqual([
      `e/engine.yaml:5 released by AB, and 5 are open: ${open}`,
      `e/session.yaml:5 released by RK, and 5 are open: ${open}`,
    ]);
  });

  it('names all three where there are no more', () => {
    const [only] = released({
      blocks: `${mains('2.9965', '2.9966', '2.9967')}\n${PINS}`,
      more: 'confirmed: { what: released, by: RK }\n',
    });
    expect(only).toMatch(/and 3 are open: .*2\.9965.*2\.9966.*2\.9967.*: out$/);
  });
});

it('what was conceded is told, and keeps nothing open', () => {
  const { closing, texts } = standing({
    blocks: `${mains('2.9975', '2.9984', '2.9984')}\n${PINS}`,
    more: 'concessions: [{ measure: main_journal_diameter, at: 1, down_to: 2.9970, reason: standby engine, by: RK, agreed: the owner }]\n',
  });
  expect(closing.conceded.map(({ position }) => position.name)).toEqual(['1']);
  expect(texts).toEqual([]);
});

describe('joints of which no torque document speaks', () => {
  it.each([
    ['main_bolts', 'caps', ['rod caps', 'cylinder head']],
    ['caps', 'Main bearing', ['rod caps', 'cylinder head']],
    ['big', 'end bolts', ['main caps', 'cylinder head']],
    ['connecting_rods', 'caps', ['main caps', 'cylinder head']],
    ['Heads', 'bolts', ['main caps', 'rod caps']],
    ['remains', 'overhead', ['main caps', 'rod caps', 'cylinder head']],
  ])('beside %s: %s', (name, joint, left) => {
    const files = { [`e/torque/${name}.yaml`]: caps(joint) };
    expect(standing({ blocks: GOOD, files }).closing.unstated).toEqual(left);
  });
});

describe('a rod that was renewed', () => {
  const weighed = '- { measure: rod_weight, at: { 1: 612.5 g, 2: 613.0 g, 3: 612.0 g, 4: 613.5 g } }';
  const openAfter = (more: string, blocks = '[]') =>
    standing({
      limits: 'rod_weight_spread: { new: { max: 3 g } }',
      blocks: weighed,
      stage: 'teardown',
      files: {
        'e/z.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-09\n${more}readings: ${blocks}\n`,
      },
    }).texts;
  const renewed = 'replaced: [{ part: connecting rod, at: 4 }]\n';

  it.each([
    ['is weighed against the others where limits ask for it', openAfter(renewed), ['spread of rod weight']],
    ['is weighed already', openAfter(renewed, '[{ measure: rod_weight, at: { 4: 613.0 g } }]'), []],
    ['is none', openAfter(''), []],
  ])('%s', (_, texts, open) =>
    expect(texts).toEqual(open.map((each) => `limits, and not measured: ${each}`)),
  );
});
