import { describe, expect, test } from 'vitest';
import { CAUTION_RULES, cautionsFor, type TighteningSituation } from '../../src/torque/cautions.ts';

const BRACKET: TighteningSituation = {
  joint: 'bracket',
  lubricant: 'engine oil',
  reuse: 'allowed',
  actions: new Set(['to']),
  generatedOrder: false,
  unorderedFasteners: false,
  adapter: false,
  runOn: false,
  estimate: false,
};

const idsFor = (more: Partial<TighteningSituation>): readonly string[] =>
  cautionsFor({ ...BRACKET, ...more }).map(({ id }) => id);

const { lubricant: _, ...UNSTATED_LUBRICANT } = BRACKET;

test("a plain bracket is told that the maker's manual comes first and what lubricant its torque holds for", () => {
  expect(cautionsFor(BRACKET)).toEqual([
    {
      id: 'manual-first',
      text: "The engine maker's manual and a qualified engineer come first: these figures were supplied by the user.",
    },
    {
      id: 'lubricant-stated',
      text: 'Torques hold only for this lubricant and for clean, sound threads: engine oil.',
    },
  ]);
});

describe('a caution is shown when, and only when, it fits', () => {
  test.each<[string, Partial<TighteningSituation>]>([
    ['generated-order', { generatedOrder: true }],
    ['no-order', { unorderedFasteners: true }],
    ['use-once', { reuse: 'once' }],
    ['reuse-unstated', { reuse: 'unstated', actions: new Set(['to', 'turn']) }],
    ['reuse-unstated', { reuse: 'unstated', actions: new Set(['stretch']) }],
    ['mark-the-turn', { actions: new Set(['to', 'turn']) }],
    ['stretch-zero', { actions: new Set(['stretch']) }],
    ['adapter', { adapter: true }],
    ['run-on', { runOn: true }],
    ['estimate', { estimate: true }],
    ['heavy', { joint: 'cylinder head' }],
    ['heavy', { joint: 'main caps' }],
    ['stored-energy', { joint: 'valve gear' }],
    ['stored-energy', { joint: 'crankshaft damper' }],
    ['oil-before-start', { joint: 'rod bolts' }],
    ['oil-before-start', { joint: 'main caps' }],
  ])('%s: %j', (id, more) => {
    expect(idsFor(more)).toContain(id);
    expect(idsFor({})).not.toContain(id);
  });

  test('a valve cover holds no spring down', () => {
    expect(idsFor({ joint: 'valve cover' })).not.toContain('stored-energy');
  });

  test('without a stated lubricant the card says so instead', () => {
    const ids = cautionsFor(UNSTATED_LUBRICANT).map(({ id }) => id);
    expect(ids).toContain('lubricant-unstated');
    expect(ids).not.toContain('lubricant-stated');
  });

  test('a stretch alone needs no lubricant', () => {
    expect(idsFor({ actions: new Set(['stretch']) })).not.toContain('lubricant-stated');
  });

  test('a torque alone on fasteners of unstated reuse is not taken for a one-time bolt', () => {
    expect(idsFor({ reuse: 'unstated' })).not.toContain('reuse-unstated');
  });
});

test('everything at once is told in this order, each caution in its own words', () => {
  const all: TighteningSituation = {
    joint: 'main cap beside the damper spring',
    reuse: 'unstated',
    actions: new Set(['to', 'turn', 'stretch']),
    generatedOrder: true,
    unorderedFasteners: true,
    adapter: true,
    runOn: true,
    estimate: true,
  };
  expect(cautionsFor(all)).toEqual([
    {
      id: 'manual-first',
      text: "The engine maker's manual and a qualified engineer come first: these figures were supplied by the user.",
    },
    {
      id: 'generated-order',
      text: "The order was generated from where the fasteners stand: the maker's order wins.",
    },
    {
      id: 'no-order',
      text: 'No order is stated: find the one of the engine maker before you tighten.',
    },
    {
      id: 'lubricant-unstated',
      text: 'No lubricant is stated: torques hold only for the thread condition their source meant. Find out which.',
    },
    {
      id: 'reuse-unstated',
      text: 'Fasteners tightened by angle or stretch are often for one use only: ask the maker before using them again.',
    },
    {
      id: 'mark-the-turn',
      text: 'Mark each fastener before its turn. One that went too far is loosened fully and done again from the start, if its maker allows.',
    },
    {
      id: 'stretch-zero',
      text: 'Measure each bolt slack first, at the same temperature and from the same points as tight.',
    },
    {
      id: 'adapter',
      text: 'The setting holds only with the hand on the middle of the grip and the adapter at the stated angle.',
    },
    {
      id: 'run-on',
      text: 'Measure the run-on torque of each locknut anew, on the last turn before the faces meet (FAA AC 43.13-1B, 7-40).',
    },
    {
      id: 'estimate',
      text: 'Clamp load is an estimate: at one torque a single bolt may lie a quarter or more off. It is no reason to change a torque.',
    },
    {
      id: 'heavy',
      text: 'Heavy part: lift it with tackle rated for it and never reach under it while it hangs.',
    },
    {
      id: 'stored-energy',
      text: 'Stored energy: release springs and pressed parts slowly and stand clear of their path.',
    },
    {
      id: 'oil-before-start',
      text: 'Before the first start, bring up oil pressure with the engine turned by hand or by a pump.',
    },
  ]);
  expect(cautionsFor({ ...all, reuse: 'once' })).toContainEqual({
    id: 'use-once',
    text: 'Fit new fasteners: these must not be used twice.',
  });
});

test.each<[TighteningSituation['actions'], boolean]>([
  [new Set(['check']), true],
  [new Set(['to']), true],
  [new Set(['turn', 'loosen', 'stretch']), false],
])('%o needs to know the lubricant: %s', (actions, isNeeded) => {
  const { lubricant: _oil, ...unstated } = BRACKET;
  const said = [cautionsFor({ ...BRACKET, actions }), cautionsFor({ ...unstated, actions })].map((all) =>
    all.map(({ id }) => id).filter((id) => id.startsWith('lubricant')),
  );
  expect(said).toEqual(isNeeded ? [['lubricant-stated'], ['lubricant-unstated']] : [[], []]);
});

test.each<[TighteningSituation['reuse'], 'turn' | 'stretch' | 'to', readonly string[]]>([
  ['once', 'turn', ['use-once']],
  ['allowed', 'turn', []],
  ['allowed', 'stretch', []],
  ['unstated', 'turn', ['reuse-unstated']],
  ['unstated', 'stretch', ['reuse-unstated']],
  ['unstated', 'to', []],
])('fasteners whose reuse is %s, with a pass of %s: %j', (reuse, action, expected) => {
  const ids = idsFor({ reuse, actions: new Set([action]) });
  expect(ids.filter((id) => /use/.test(id))).toEqual(expected);
});

test.each([
  [
    'heavy',
    ['head', 'heads', 'cylinder', 'crankcase', 'main', 'flywheel', 'block', 'gearbox', 'bell housing'],
  ],
  ['stored-energy', ['valve springs', 'valve train', 'rocker shaft', 'rocker bracket', 'pulley', 'clutch']],
  ['oil-before-start', ['mains', 'rods', 'bearing', 'crank', 'camshaft', 'oil pump']],
])('%s is said of %j, and of no bracket, manifold or cover', (id, joints) => {
  for (const joint of joints) expect(idsFor({ joint }), joint).toContain(id);
  for (const joint of ['bracket', 'manifold', 'valve cover', 'header', 'blocked', 'turmoil'])
    expect(idsFor({ joint }), joint).not.toContain(id);
});

test('every caution has its own name, says when it is shown and ends as a sentence', () => {
  expect(new Set(CAUTION_RULES.map(({ id }) => id)).size).toBe(CAUTION_RULES.length);
  for (const { when, text } of CAUTION_RULES) {
    expect(when).not.toBe('');
    expect(text(BRACKET)).toMatch(/^[A-Z].*\.$/);
  }
});
