import { describe, expect, it } from 'vitest';
import { choicesOf, compareRoutes, equalToFirst, isOfOthers } from '../../../src/checks/value/equalRoutes.ts';
import type { Route } from '../../../src/checks/value/route.ts';
import { REGISTER, rowsOf, shopFiles } from '../../shopOf.ts';
import { measuredAs, routeOf } from './routeOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9990 to 3.0000 }
main_bearing_clearance: { new: 0.0020 to 0.0038 }
main_journal_taper: { new: { max: 0.0003 } }`;

/** Verdict and reading, judged first, of a session with these blocks. */
function judged(measure: string, blocks: readonly string[]): readonly string[] {
  const files = shopFiles(LIMITS, blocks.map((block) => `- { ${block} }`).join('\n'), 'rebuild', {
    'instruments.yaml': REGISTER,
  });
  const row = rowsOf(files).find(
    ({ characteristic, position }) => characteristic.id === measure && position.name === '2',
  );
  return (row?.routes ?? []).map(({ verdict, route, least }) => {
    const ten = Number(least.n) / Number(least.d) / 25_400;
    return `${verdict} ${(ten / 10_000).toFixed(4)} ${route.name}`;
  });
}

const journal = (reading: string, more = ''): string =>
  `measure: main_journal_diameter, with: mic${more}, at: { 2: ${reading} }`;

const BORE = 'measure: main_bearing_bore, with: bore, at: { 2: 3.0020 }';

describe('of readings by one instrument, with nothing else between them', () => {
  it.each([
    [
      'the one that is out is judged',
      [journal('2.9995'), journal('2.9989')],
      ['out 2.9989 read directly', 'ok 2.9995 read directly'],
    ],
    [
      'the one that is out by more is judged',
      [journal('3.0001'), journal('2.9988')],
      ['out 2.9988 read directly', 'out 3.0001 read directly'],
    ],
    [
      'the one that is nearer its limit is judged',
      [journal('2.9999'), journal('2.9995')],
      ['ok 2.9999 read directly', 'ok 2.9995 read directly'],
    ],
    [
      'the one of a later day is judged, and the other stays in sight',
      [journal('2.9995', ', date: 2026-02-04'), journal('2.9989')],
      ['ok 2.9995 read directly', 'out 2.9989 read directly'],
    ],
    [
      'the one of an earlier day is not judged',
      [journal('2.9989', ', date: 2026-02-02'), journal('2.9995')],
      ['ok 2.9995 read directly', 'out 2.9989 read directly'],
    ],
  ])('%s', (_, blocks, expected) => {
    expect(judged('main_journal_diameter', blocks)).toEqual(expected);
    expect(judged('main_journal_diameter', blocks.toReversed())).toEqual(expected);
  });

  it.each([
    ['the loosest', [journal('2.9981'), journal('2.9985'), journal('2.9990')], 'out 0.0039'],
    ['the tightest', [journal('3.0001'), journal('2.9999'), journal('2.9990')], 'out 0.0019'],
  ])('a clearance is judged by %s that comes of them, and shown once', (_, blocks, expected) => {
    const both = [`${expected} bearing bore − journal`];
    expect(judged('main_bearing_clearance', [BORE, ...blocks])).toEqual(both);
    expect(judged('main_bearing_clearance', [...blocks.toReversed(), BORE])).toEqual(both);
  });

  it('taper is judged by the greatest that any of them shows', () => {
    const ends = ', stations: [front, rear]';
    const blocks = [
      journal('[2.9995, 2.9994]', ends),
      journal('[2.9998, 2.9993]', ends),
      journal('2.9995'),
      journal('[2.9995, 2.9993]', ends),
    ];
    const expected = ['out 0.0005 from diameters'];
    expect(judged('main_journal_taper', blocks)).toEqual(expected);
    expect(judged('main_journal_taper', blocks.toReversed())).toEqual(expected);
  });
});

const ofOthers = { from: 'Machine shop' } as unknown as Route['block'];
const derived = { block: undefined } as const;

describe('which of two routes comes first', () => {
  it.each<readonly [string, Partial<Route>, Partial<Route>]>([
    ['what was read here, before finer figures of others', { u: 2 }, { u: 1, block: ofOthers }],
    [
      'and before what comes of such',
      { u: 2, ...derived },
      { u: 1, ...derived, inputs: [routeOf({ block: ofOthers })] },
    ],
    ['the finer', { u: 1, ...derived, takenOn: '' }, { u: 2 }],
    ['of equally fine ones what was read', { takenOn: '2026-01-01' }, { ...derived, takenOn: '2026-02-03' }],
    ['of two readings the later', { takenOn: '2026-02-04' }, { takenOn: '2026-02-03' }],
    [
      'in a tie the one with the smaller least',
      { measured: measuredAs(1, 9) },
      { measured: measuredAs(2, 8) },
    ],
    ['then with the smaller greatest', { measured: measuredAs(1, 8) }, { measured: measuredAs(1, 9) }],
    ['then with the smaller mean', { measured: measuredAs(1, 9, 4) }, { measured: measuredAs(1, 9, 5) }],
    ['then by what was written', { written: ['1'] }, { written: ['2'] }],
    ['then by its instruments', { with: ['a'] }, { with: ['b'] }],
    [
      'then by its stations',
      { grid: { stations: [{ name: 'front' }], directions: [], rows: [] } },
      { grid: { stations: [{ name: 'rear' }], directions: [], rows: [] } },
    ],
    [
      'then by its directions',
      { grid: { stations: [], directions: ['a'], rows: [] } },
      { grid: { stations: [], directions: ['b'], rows: [] } },
    ],
  ])('%s', (_, first, second) => {
    expect(compareRoutes(routeOf(first), routeOf(second))).toBeLessThan(0);
    expect(compareRoutes(routeOf(second), routeOf(first))).toBeGreaterThan(0);
  });

  it('neither of two that are alike in all of it', () => expect(compareRoutes(routeOf(), routeOf())).toBe(0));

  it('figures of others are those of a block that says so, and what comes of any of them', () => {
    expect(isOfOthers(routeOf())).toBe(false);
    expect(isOfOthers(routeOf({ block: ofOthers }))).toBe(true);
    const mixed = routeOf({ ...derived, inputs: [routeOf(), routeOf({ block: ofOthers })] });
    expect(isOfOthers(mixed)).toBe(true);
    expect(isOfOthers(routeOf({ ...derived, inputs: [routeOf(), routeOf()] }))).toBe(false);
    expect(isOfOthers(routeOf({ ...derived, inputs: [mixed] }))).toBe(true);
  });
});

describe('what a value may be worked out from', () => {
  const low = routeOf({ measured: measuredAs(1) });
  const middle = routeOf({ measured: measuredAs(5) });
  const high = routeOf({ measured: measuredAs(9) });
  const coarse = routeOf({ u: 2 });
  const ways = (...inputs: readonly (readonly Route[])[]) => [...choicesOf(inputs)];

  it('of one input those in a tie, then the next best, and so on', () => {
    expect(ways([low, high, coarse])).toEqual([[[low], [high]], [[coarse]]]);
    expect(ways([low])).toEqual([[[low]]]);
    expect(ways([])).toEqual([]);
  });

  it('of two every pair of those in a tie, and never what is below them', () => {
    expect(ways([low, high, coarse], [middle])).toEqual([
      [
        [low, middle],
        [high, middle],
      ],
    ]);
  });

  it.each([[[low, middle, high]], [[high, low, middle]]])(
    'of three in a tie the lowest and the highest, between which all lies',
    (tied) => {
      expect(ways(tied, [middle])).toEqual([
        [
          [low, middle],
          [high, middle],
        ],
      ]);
      const wide = routeOf({ measured: measuredAs(0, 10) });
      expect(ways([wide, low, middle], [high])).toEqual([[[wide, high]]]);
    },
  );

  it('of two in a tie both, though one spans the other', () => {
    const wide = routeOf({ measured: measuredAs(0, 10) });
    expect(ways([wide, low], [high])).toEqual([
      [
        [wide, high],
        [low, high],
      ],
    ]);
  });

  it('where one is lacking nothing', () => expect(ways([low], [])).toEqual([[]]));

  it('of no input one way', () => expect(ways()).toEqual([[[]]]));

  it.each([
    [6, 64],
    [7, 64],
    [12, 64],
  ])('of %i inputs in a tie, each read twice, %i ways', (inputs, expected) => {
    expect(ways(...Array.from({ length: inputs }, () => [low, high]))[0]).toHaveLength(expected);
  });

  it('those that nothing sets below the first are equal to it', () => {
    expect(equalToFirst([low, high, coarse])).toEqual([low, high]);
    expect(equalToFirst([coarse])).toEqual([coarse]);
    expect(equalToFirst([])).toEqual([]);
  });
});
