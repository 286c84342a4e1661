import { describe, expect, it } from 'vitest';
import { latestRun, runsOf } from '../../../src/checks/state/run.ts';
import type { SessionDocument } from '../../../src/documents/session/session.ts';
import { shopOf } from '../../shopOf.ts';
import { engine } from './standing.ts';

type Told = readonly [stage: string, hours?: string];

const sessions = (told: readonly Told[]): readonly SessionDocument[] =>
  shopOf(engine(...told.map(([stage, hours]) => [stage, '', hours ? `hours: ${hours}` : ''] as const))).engine
    ?.sessions ?? [];

/** The day of the month of each session, run by run. */
const runs = (...told: readonly Told[]): readonly string[] =>
  runsOf(sessions(told)).map((run) => run.map(({ date }) => date.slice(-1)).join(' '));

describe('a run goes from one running of the engine to the next', () => {
  it.each<[string, readonly Told[], readonly string[]]>([
    ['no session is no run', [], []],
    ['a teardown begins one', [['rebuild'], ['teardown'], ['trial']], ['1', '2 3']],
    ['no other stage does', [['trial'], ['machined'], ['rebuild'], ['service']], ['1 2 3 4']],
    [
      'more hours begin one',
      [
        ['rebuild', '10'],
        ['service', '10.1'],
        ['service', '20'],
      ],
      ['1', '2', '3'],
    ],
    [
      'the same hours do not',
      [
        ['rebuild', '10'],
        ['service', '10.0'],
      ],
      ['1 2'],
    ],
    [
      'nor do fewer, from which is then counted',
      [
        ['rebuild', '10'],
        ['service', '8'],
        ['service', '9'],
      ],
      ['1 2', '3'],
    ],
    ['the first hours that are stated begin none', [['rebuild'], ['service', '10']], ['1 2']],
    [
      'hours are known through a session without them',
      [['rebuild', '10'], ['service'], ['service', '11']],
      ['1 2', '3'],
    ],
  ])('%s', (_, told, expected) => expect(runs(...told)).toEqual(expected));

  it('and the latest is the last of them', () => {
    const all = sessions([['rebuild'], ['teardown'], ['trial']]);
    expect(latestRun(all)).toEqual(all.slice(1));
    expect(latestRun([])).toEqual([]);
  });
});
