import { describe, expect, it } from 'vitest';
import { planSession } from '../../src/bench/plan.ts';
import { scaffoldSession } from '../../src/bench/scaffold/session.ts';
import { lastJudged, messages, rowAt } from '../checks/bench.ts';
import { type Files, limitsOf, sessionOf, shopOf } from '../shopOf.ts';

const shop = (limits: string, more: Files = {}): Files => ({
  'e/engine.yaml':
    'kind: engine\nname: A\nunits: { length: mm }\nlayout: { cylinders: 2, crankpins: 2, mains: 1 }\n',
  'e/limits.yaml': limitsOf(limits),
  ...more,
});

function scaffolded(files: Files): string {
  const { engine, registry } = shopOf(files);
  if (engine === undefined) throw new Error('the documents are not sound');
  const head = { stage: 'teardown', date: '2026-02-03', by: undefined, schema: undefined } as const;
  return scaffoldSession(head, planSession(engine, registry, { stage: 'teardown' }), engine, registry);
}

const FOR_A_LENGTH = 'rod_bend: { wear: { max: 0.05 }, per: 100 mm }';
const ASKED = '# A limit is for a length: write how far each station is from one end.';

describe('the stations of a new session', () => {
  it('have distances to fill in where a limit is for a length', () => {
    const text = scaffolded(shop(FOR_A_LENGTH));
    expect(text).toContain('stations: { front: ~, rear: ~ }');
    expect(text).toContain(ASKED);
  });

  it('have none where no limit is', () => {
    const text = scaffolded(shop('rod_bend: { wear: { max: 0.05 } }'));
    expect(text).toContain('stations: [front, rear]');
    expect(text).not.toContain(ASKED);
  });

  const earlier = (stations: string): Files => ({
    'e/s.yaml': sessionOf(
      'service',
      `- { measure: rod_bar_height, stations: ${stations}, at: { 1: [0.00, 0.01], 2: [0.00, 0.01] } }`,
    ),
  });

  it('keep the distances of the session before', () => {
    expect(scaffolded(shop(FOR_A_LENGTH, earlier('{ front: 2.5, rear: 4 in }')))).toContain(
      'stations: { front: 2.5 mm, rear: 101.6 mm }',
    );
  });

  it('ask for distances that the session before has not', () => {
    expect(scaffolded(shop(FOR_A_LENGTH, earlier('[front, rear]')))).toContain(
      'stations: { front: ~, rear: ~ }',
    );
  });
});

it('a session whose distances are still open is sound, and once filled in its rods are judged', () => {
  const read = (distances: string) =>
    lastJudged({
      'engine.yaml': shop('')['e/engine.yaml'] ?? '',
      'limits.yaml': limitsOf(FOR_A_LENGTH),
      's.yaml': scaffolded(shop(FOR_A_LENGTH))
        .replace('front: ~, rear: ~', distances)
        .replaceAll('[~, ~]', '[0.00, 0.14]'),
    });
  const open = read('front: ~, rear: ~');
  expect(messages(open, 'limits/no-distance')).toHaveLength(1);
  const filled = read('front: 0, rear: 100');
  expect(messages(filled, 'limits/no-distance')).toEqual([]);
  expect(rowAt(filled, 'rod_bend', '1').judgement.verdict).toBe('out');
});
