import { describe, expect, it } from 'vitest';
import { applyConcessions, bearsOn, reachOf } from '../../../src/checks/judge/applyConcessions.ts';
import { type ConcessionInForce, concessionsFor } from '../../../src/checks/judge/concessionInForce.ts';
import type { Row } from '../../../src/checks/judge/row.ts';
import type { SideLimit } from '../../../src/checks/judge/sideLimit.ts';
import type { Verdict } from '../../../src/checks/judge/verdict.ts';
import { startOfFile } from '../../../src/diagnostic/place.ts';
import { fraction } from '../../../src/quantity/fraction.ts';
import { type Files, sessionOf, shopFiles } from '../../shopOf.ts';
import { viewIn } from '../viewIn.ts';

const limit = (amount: number): SideLimit => ({
  amount: fraction(amount),
  written: `${amount}`,
  band: 'new',
  place: startOfFile('l.yaml'),
});
const HERE = { key: '1' };
const THERE = { key: '2' };

/** A value of a clearance between limits of 20 and 38. */
const rowOf = (least: number, greatest = least, verdict: Verdict = 'out', more: object = {}): Row =>
  ({
    characteristic: { id: 'clearance', cycle: undefined },
    position: HERE,
    routes: [
      {
        least: fraction(least),
        mean: fraction(least),
        greatest: fraction(greatest),
        spans: undefined,
        ...more,
      },
    ],
    judgement: {
      verdict,
      deciding: { min: limit(20), max: limit(38) },
      probability: null,
      marginal: false,
      past: undefined,
    },
    concessions: [],
  }) as unknown as Row;

interface Stated {
  readonly upTo?: number;
  readonly downTo?: number;
  readonly at?: readonly object[];
  readonly id?: string;
  readonly isOver?: boolean;
  readonly name?: string;
}

const conceded = ({
  upTo,
  downTo,
  at = [HERE],
  id = 'clearance',
  isOver = false,
  name = '',
}: Stated): ConcessionInForce =>
  ({
    concession: {
      measure: { id },
      positions: at,
      upTo: upTo === undefined ? undefined : { amount: fraction(upTo) },
      downTo: downTo === undefined ? undefined : { amount: fraction(downTo) },
      reason: name,
    },
    isOwn: true,
    isOver,
  }) as unknown as ConcessionInForce;

const told = ({ judgement: { verdict, past }, concessions }: Row) => ({
  verdict,
  past: past?.side,
  concessions: concessions.map(({ side, isEnough, concession }) => [side, isEnough, concession.reason]),
});

const apply = (row: Row, ...stated: readonly Stated[]) => told(applyConcessions(row, stated.map(conceded)));

describe('a value that is out', () => {
  it.each<readonly [string, Row, readonly Stated[], ReturnType<typeof told>]>([
    [
      'is accepted as far as was conceded',
      rowOf(45),
      [{ upTo: 45, name: 'a' }],
      { verdict: 'accepted', past: 'max', concessions: [['max', true, 'a']] },
    ],
    [
      'and no farther',
      rowOf(46),
      [{ upTo: 45, name: 'a' }],
      { verdict: 'out', past: 'max', concessions: [['max', false, 'a']] },
    ],
    [
      'down as well as up',
      rowOf(10),
      [{ downTo: 10, name: 'a' }],
      { verdict: 'accepted', past: 'min', concessions: [['min', true, 'a']] },
    ],
    [
      'and no farther down',
      rowOf(9),
      [{ downTo: 10, name: 'a' }],
      { verdict: 'out', past: 'min', concessions: [['min', false, 'a']] },
    ],
    [
      'by the first that covers it, though another reaches farther',
      rowOf(45),
      [
        { upTo: 40, name: 'a' },
        { upTo: 46, name: 'b' },
        { upTo: 50, name: 'c' },
      ],
      { verdict: 'accepted', past: 'max', concessions: [['max', true, 'b']] },
    ],
    [
      'or by none, and then the one that reaches farthest up is told',
      rowOf(60),
      [
        { upTo: 40, name: 'a' },
        { upTo: 50, name: 'b' },
        { upTo: 45, name: 'c' },
      ],
      { verdict: 'out', past: 'max', concessions: [['max', false, 'b']] },
    ],
    [
      'or farthest down',
      rowOf(5),
      [
        { downTo: 15, name: 'a' },
        { downTo: 10, name: 'b' },
        { downTo: 12, name: 'c' },
      ],
      { verdict: 'out', past: 'min', concessions: [['min', false, 'b']] },
    ],
    [
      'where all speak of the other side the first of them is told',
      rowOf(45),
      [
        { downTo: 15, name: 'a' },
        { downTo: 10, name: 'b' },
      ],
      { verdict: 'out', past: 'max', concessions: [['max', false, 'a']] },
    ],
    [
      'on both sides is accepted where both are covered',
      rowOf(10, 60),
      [{ upTo: 60, downTo: 10, name: 'a' }],
      {
        verdict: 'accepted',
        past: 'max',
        concessions: [
          ['max', true, 'a'],
          ['min', true, 'a'],
        ],
      },
    ],
    [
      'and else is out on the side that is open, however near',
      rowOf(19, 60),
      [{ upTo: 60, name: 'a' }],
      {
        verdict: 'out',
        past: 'min',
        concessions: [
          ['max', true, 'a'],
          ['min', false, 'a'],
        ],
      },
    ],
    [
      'stays out by one that has ended',
      rowOf(45),
      [{ upTo: 45, isOver: true }],
      { verdict: 'out', past: undefined, concessions: [] },
    ],
    [
      'stays out by one for another place',
      rowOf(45),
      [{ upTo: 45, at: [THERE] }],
      { verdict: 'out', past: undefined, concessions: [] },
    ],
    [
      'stays out by one for something else',
      rowOf(45),
      [{ upTo: 45, id: 'bore' }],
      { verdict: 'out', past: undefined, concessions: [] },
    ],
  ])('%s', (_, row, stated, expected) => {
    expect(apply(row, ...stated)).toEqual(expected);
  });

  it('of a range is accepted where all of it is covered', () => {
    const spans = [
      { from: fraction(39), to: fraction(41) },
      { from: fraction(42), to: fraction(45) },
    ];
    const ranged = rowOf(39, 45, 'out', { spans });
    expect(apply(ranged, { upTo: 45 }).verdict).toBe('accepted');
    expect(apply(ranged, { upTo: 44 }).verdict).toBe('out');
  });

  it('keeps what else is known of its judgement', () => {
    const row = rowOf(45);
    const { judgement, concessions: _, ...others } = applyConcessions(row, [conceded({ upTo: 45 })]);
    const { concessions: __, judgement: before, ...same } = row;
    expect(others).toEqual(same);
    expect(judgement).toMatchObject({ deciding: before.deciding, probability: null, marginal: false });
  });
});

it.each(['ok', 'worn', 'undecided'] as const)('what is %s needs none', (verdict) => {
  const row = rowOf(45, 45, verdict);
  expect(applyConcessions(row, [conceded({ upTo: 50 })])).toBe(row);
});

it('where none bears on it the row is left as it is', () => {
  const row = rowOf(45);
  expect(applyConcessions(row, [conceded({ upTo: 50, at: [THERE] })])).toBe(row);
  expect(applyConcessions({ ...row, routes: [] }, [conceded({ upTo: 50 })])).toEqual({ ...row, routes: [] });
});

it('a concession bears on each place that it names, and reaches up and down by itself', () => {
  const both = conceded({ upTo: 45, downTo: 10, at: [THERE, HERE] });
  expect(bearsOn(both, rowOf(45))).toBe(true);
  expect(reachOf(both.concession, 'max')?.amount).toEqual(fraction(45));
  expect(reachOf(both.concession, 'min')?.amount).toEqual(fraction(10));
});

describe('the concessions that bear on a session', () => {
  const entry = (reason: string, until = ''): string =>
    `concessions: [{ measure: main_bearing_clearance, at: 2, up_to: 0.0045, reason: ${reason}${until === '' ? '' : `, until: ${until}`} }]\n`;
  const session = (date: string, more: string): string =>
    sessionOf('trial', '- { measure: main_bearing_clearance, at: { 2: 0.0040 } }', more).replace(
      '2026-02-03',
      date,
    );
  const files = (date: string): Files => ({
    ...shopFiles('main_bearing_clearance: { new: { max: 0.0038 } }', ''),
    'e/a.yaml': session('2026-01-01', entry('first', '2026-02-03')),
    'e/b.yaml': session('2026-01-02', entry('of that session alone')),
    'e/c.yaml': session('2026-01-03', entry('second', '2026-03-01')),
    'e/session.yaml': session(date, entry('own')),
    'e/z.yaml': session('2026-01-04', ''),
  });
  const inForce = (date: string) => {
    const view = viewIn(files(date));
    return concessionsFor(view.engine, view.session).map(({ concession, isOwn, isOver, from }) => [
      concession.reason,
      isOwn,
      isOver,
      from.date,
    ]);
  };

  it('are its own, then those of earlier ones that say until when, the latest first', () => {
    expect(inForce('2026-02-03')).toEqual([
      ['own', true, false, '2026-02-03'],
      ['second', false, false, '2026-01-03'],
      ['first', false, false, '2026-01-01'],
    ]);
  });

  it('are over from the day after the last', () => {
    expect(inForce('2026-02-04').map(([reason, , isOver]) => [reason, isOver])).toEqual([
      ['own', false],
      ['second', false],
      ['first', true],
    ]);
  });
});
