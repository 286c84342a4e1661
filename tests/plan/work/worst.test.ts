import { expect, it } from 'vitest';
import { worstOf } from '../../../src/plan/work/worst.ts';
import { rowsOf, shopFiles } from '../../shopOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9960 } }
crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4960 } }`;

type Sizes = readonly [string, string, string];

/** Mains and pins 1 to 3 of an engine that comes apart: what is below new, and not worn out yet, is worn. */
function worst(mains: Sizes, pins: Sizes): string | undefined {
  const block = (measure: string, [first, second, third]: Sizes): string =>
    `- { measure: ${measure}, at: { 1: ${first}, 2: ${second}, 3: ${third} } }`;
  const blocks = `${block('main_journal_diameter', mains)}\n${block('crankpin_diameter', pins)}`;
  const row = worstOf(rowsOf(shopFiles(LIMITS, blocks, 'teardown')));
  return row && `${row.characteristic.id} ${row.position.name} ${row.judgement.verdict}`;
}

const MAINS: Sizes = ['2.9985', '2.9985', '2.9985'];
const PINS: Sizes = ['2.4985', '2.4985', '2.4985'];

it.each<readonly [string, Sizes, Sizes, string | undefined]>([
  ['the one farthest past its limit', ['2.9950', '2.9940', '2.9945'], PINS, 'main_journal_diameter 2 out'],
  ['the first of two as far past', ['2.9985', '2.9940', '2.9940'], PINS, 'main_journal_diameter 2 out'],
  [
    'what is out before what is worn',
    ['2.9970', '2.9985', '2.9985'],
    ['2.4985', '2.4985', '2.4950'],
    'crankpin_diameter 3 out',
  ],
  [
    'of what is worn the figure that comes first',
    ['2.9985', '2.9975', '2.9985'],
    ['2.4965', '2.4985', '2.4985'],
    'main_journal_diameter 2 worn',
  ],
  ['none where all is inside', MAINS, PINS, undefined],
])('the worst of some figures is %s', (_, mains, pins, expected) =>
  expect(worst(mains, pins)).toBe(expected),
);
