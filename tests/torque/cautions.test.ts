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

test('every caution has its own name, says when it is shown and ends as a sentence', () => {
  expect(new Set(CAUTION_RULES.map(({ id }) => id)).size).toBe(CAUTION_RULES.length);
  for (const { when, text } of CAUTION_RULES) {
    expect(when).not.toBe('');
    expect(text(BRACKET)).toMatch(/^[A-Z].*\.$/);
  }
});
