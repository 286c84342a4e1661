import { describe, expect, it } from 'vitest';
import { evidenceOf, suspectDays } from '../../../src/compare/instruments/evidence.ts';
import { shopOf } from '../../shopOf.ts';

const checkOn = (day: string, read: string): string =>
  `  - { instrument: mic, standard: 3.0000, read: ${read}, date: ${day} }\n`;

const GOOD = '3.0001';
const OFF = '3.0003';

function daysAfter(checks: readonly (readonly [day: string, read: string])[], asked?: string) {
  const { engine, registry } = shopOf({
    'instruments.yaml':
      'kind: instruments\ninstruments:\n  mic: { type: micrometer, max_error: 0.0001 in, calibrated: 2026-01-10 }\n',
    'e/engine.yaml': 'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 1 }\n',
    'e/session.yaml': `kind: session\nstage: trial\ndate: 2026-02-03\nchecked:\n${checks.map(([day, read]) => checkOn(day, read)).join('')}readings: []\n`,
  });
  if (engine === undefined) throw new Error('not sound');
  const days = suspectDays(evidenceOf('mic', [{ engine, registry }]), asked);
  const year = Array.from({ length: 12 }, (_, month) => `2026-${String(month + 1).padStart(2, '0')}-10`);
  return { from: days.from, suspect: year.filter(days.has).map((day) => Number(day.slice(5, 7))) };
}

describe('readings in question', () => {
  it.each([
    [
      'since the certificate, where nothing else is known',
      [],
      '2026-01-10',
      [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
    ],
    ['since the last good check', [['2026-03-10', GOOD]], '2026-03-10', [3, 4, 5, 6, 7, 8, 9, 10, 11, 12]],
    [
      'from the last good check before it was found off, with that day and the day itself, until it was good again',
      [
        ['2026-03-10', GOOD],
        ['2026-05-10', OFF],
        ['2026-07-10', GOOD],
      ],
      '2026-03-10',
      [3, 4, 5, 6],
    ],
    [
      'of the day too, where it was set right on the day it was found off',
      [
        ['2026-05-10', OFF],
        ['2026-05-10', GOOD],
      ],
      '2026-01-10',
      [1, 2, 3, 4, 5],
    ],
    [
      'before the last of several times that it was off',
      [
        ['2026-02-10', OFF],
        ['2026-03-10', GOOD],
        ['2026-05-10', OFF],
      ],
      '2026-03-10',
      [3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
    ],
  ] as const)('are those %s', (_, checks, from, suspect) => {
    expect(daysAfter(checks)).toEqual({ from, suspect });
  });

  it('begin with a day that is asked for', () => {
    expect(
      daysAfter(
        [
          ['2026-05-10', OFF],
          ['2026-07-10', GOOD],
        ],
        '2026-04-01',
      ),
    ).toEqual({
      from: '2026-04-01',
      suspect: [4, 5, 6],
    });
  });
});
