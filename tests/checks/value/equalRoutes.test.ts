import { describe, expect, it } from 'vitest';
import { REGISTER, rowsOf, shopFiles } from '../../shopOf.ts';

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
