import { describe, expect, it } from 'vitest';
import { ALL, endPlay, engine, journals, standing } from './standing.ts';

/** What stands of an end play that was read at one stage after a session of another. */
const playAfter = (read: string, ...later: readonly string[]): string =>
  standing(
    engine([read, endPlay('0.009')], ...later.map((stage) => [stage, journals('1: 2.9985')] as const)),
    'crankshaft_end_play',
    'engine',
  );

describe('a figure of parts put together, read at one stage and not at a later one,', () => {
  it.each([
    ['service', 'machined'],
    ['service', 'trial'],
    ['service', 'rebuild'],
    ['trial', 'machined'],
    ['rebuild', 'trial'],
    ['machined', 'rebuild'],
  ])('ends where %s is followed by %s', (read, later) => {
    expect(playAfter(read, later)).toBe('nothing');
  });

  it.each([
    ['rebuild', 'service'],
    ['trial', 'service'],
    ['machined', 'machined'],
    ['trial', 'trial'],
  ])('holds where %s is followed by %s', (read, later) => {
    expect(playAfter(read, later)).toBe('0.009 ok');
  });

  it('ends by any one of the sessions that follow', () => {
    expect(playAfter('rebuild', 'service', 'trial')).toBe('nothing');
    expect(playAfter('rebuild', 'trial', 'service')).toBe('nothing');
    expect(playAfter('rebuild', 'service', 'service')).toBe('0.009 ok');
  });
});

it('a size holds after work that the session of its reading tells of, in whichever session of the run that is', () => {
  const files = engine(
    ['trial', endPlay('0.009')],
    ['trial', journals(ALL), 'machined: [{ part: main journals }]'],
    ['rebuild', endPlay('0.009')],
  );
  expect(standing(files, 'main_journal_diameter', '1')).toBe('2.9985 ok');
});
