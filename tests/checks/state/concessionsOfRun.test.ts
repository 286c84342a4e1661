import { describe, expect, it } from 'vitest';
import { concessionsOfRun } from '../../../src/checks/state/concessionsOfRun.ts';
import type { Holds } from '../../../src/checks/value/routes.ts';
import { shopOf } from '../../shopOf.ts';
import { endPlay, engine } from './standing.ts';

const conceded = (at: string, more = ''): string =>
  `{ measure: cylinder_taper, at: ${at}, up_to: 0.0030, reason: The owner agreed.${more} }`;

const { engine: read, registry } = shopOf(
  engine(
    [
      'teardown',
      endPlay('0.009'),
      `concessions: [${conceded('[1, 3]')}, ${conceded('2', ', until: 2026-03-02')}]`,
    ],
    ['trial', endPlay('0.009'), `concessions: [${conceded('4', ', until: 2026-03-03')}]`],
    ['rebuild', endPlay('0.009'), `concessions: [${conceded('1')}]`],
  ),
);
const run = read?.sessions ?? [];
const [first, , last] = run;
if (first === undefined || last === undefined) throw new Error('not three sessions');

/** The day on which each was conceded, where, and what it is to the last session. */
const inForce = (isSamePart: Holds, known = registry) =>
  concessionsOfRun(run, last, known, isSamePart).map(({ concession, isOwn, isOver, from }) => [
    from.date.slice(-1),
    concession.positions.map(({ name }) => name).join(' '),
    isOwn ? 'own' : isOver ? 'over' : 'earlier',
  ]);

describe('what was conceded in a run', () => {
  it('is in force from the latest session to the first, and on its last day still', () => {
    expect(inForce(() => true)).toEqual([
      ['3', '1', 'own'],
      ['2', '4', 'earlier'],
      ['1', '1 3', 'earlier'],
      ['1', '2', 'over'],
    ]);
  });

  it('is in force where the part is the one that it was conceded of, and is none where it is nowhere', () => {
    expect(inForce((_, { name }, from) => from !== first || name === '3')).toEqual([
      ['3', '1', 'own'],
      ['2', '4', 'earlier'],
      ['1', '3', 'earlier'],
    ]);
  });

  it('is none of what is not known any more', () => {
    expect(inForce(() => true, { ...registry, find: () => undefined })).toEqual([]);
  });
});
