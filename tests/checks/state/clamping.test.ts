import { describe, expect, it } from 'vitest';
import { ENGINE, type Files, reportOf } from '../../shopOf.ts';

const CAPS = (torque: string): string =>
  `kind: torque\njoint: main caps\nfasteners: { names: [1, 2, 3, 4] }\nsource: Invented.\npasses: [{ to: 30 lbf ft }, { to: ${torque} lbf ft }]\n`;

const BORES = 'readings: [{ measure: main_bearing_bore, at: { 1: 3.0013, 2: 3.0013 } }]';
const JOURNALS = 'readings: [{ measure: main_journal_diameter, at: { 1: 2.9985, 2: 2.9984 } }]';

/** Bores read at the trial with what it says, then another session. */
const engine = (trial: string, later: string, more: Files = {}): Files => ({
  'e/engine.yaml': ENGINE,
  'e/caps.yaml': CAPS('90'),
  'e/1.yaml': `kind: session\nstage: trial\ndate: 2026-03-01\n${BORES}\n${trial}\n`,
  'e/2.yaml': `kind: session\nstage: rebuild\ndate: 2026-03-02\n${JOURNALS}\n${later}\n`,
  ...more,
});

const tightened = (says: string, sequence = 'caps'): string =>
  `tightened: [{ sequence: ${sequence}, ${says} }]`;

/** How many of the bores and journals stand. */
const standing = (files: Files): Readonly<Record<string, number>> => {
  const counts = { main_bearing_bore: 0, main_bearing_clearance: 0, main_journal_diameter: 0 };
  for (const { characteristic, routes } of reportOf(files).state?.rows ?? [])
    if (characteristic.id in counts && routes.length > 0)
      counts[characteristic.id as keyof typeof counts] += 1;
  return counts;
};

const ALL = { main_bearing_bore: 2, main_bearing_clearance: 2, main_journal_diameter: 2 };
const JOURNALS_ALONE = { main_bearing_bore: 0, main_bearing_clearance: 0, main_journal_diameter: 2 };

describe('a bore with its cap on holds', () => {
  it.each([
    ['while nothing is tightened', '', ''],
    ['though it is tightened with the same fasteners', '', tightened('fasteners: reused')],
    ['with the same lubricant', tightened('lubricant: oil'), tightened('lubricant: oil')],
    [
      'with fasteners that were new when it was read',
      'replaced: [{ part: main bolts }]',
      tightened('fasteners: new'),
    ],
  ])('%s', (_, trial, later) => {
    expect(standing(engine(trial, later))).toEqual(ALL);
  });
});

describe('a bore with its cap on ends, and the journal in it stays, where the cap is tightened', () => {
  it.each([
    ['with new fasteners', '', tightened('fasteners: new')],
    ['with another lubricant', tightened('lubricant: oil'), tightened('lubricant: molybdenum paste')],
  ])('%s', (_, trial, later) => {
    expect(standing(engine(trial, later))).toEqual(JOURNALS_ALONE);
  });

  it.each([
    ['to another torque', '100', JOURNALS_ALONE],
    ['and not by a second document of the same torque', '90', ALL],
  ])('%s', (_, torque, expected) => {
    const files = engine(tightened('fasteners: reused'), tightened('fasteners: reused', 'caps-2'), {
      'e/caps-2.yaml': CAPS(torque),
    });
    expect(standing(files)).toEqual(expected);
  });

  it('of another joint changes nothing', () => {
    const files = engine('', tightened('fasteners: new', 'rods'), {
      'e/rods.yaml': CAPS('40').replace('main caps', 'rod bolts'),
    });
    expect(standing(files)).toEqual(ALL);
  });
});
