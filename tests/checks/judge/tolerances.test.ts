import { expect, it } from 'vitest';
import { tolerancesOf } from '../../../src/checks/judge/tolerances.ts';
import { toNumber } from '../../../src/quantity/fraction.ts';
import { shopFiles } from '../../shopOf.ts';
import { characteristicIn, viewIn } from '../viewIn.ts';

const tenths = (amount: number): number => amount / 25_400;

function tolerances(limits: string): readonly (readonly [string, number, number, number])[] {
  const view = viewIn(shopFiles(limits, '- { measure: main_journal_diameter, at: { 1: 3 } }'));
  return tolerancesOf(characteristicIn(view, 'main_bearing_clearance'), view.engine).map(
    ({ band, min, max, width }) => [band, tenths(toNumber(min)), tenths(toNumber(max)), tenths(width)],
  );
}

it.each([
  [
    'each band with two limits, once',
    '{ target: 0.0022 to 0.0032, new: 0.0020 to 0.0038 }',
    [
      ['target', 22, 32, 10],
      ['new', 20, 38, 18],
    ],
  ],
  [
    'what differs at a position as well',
    '{ new: 0.0020 to 0.0038, at: { 2: { new: 0.0025 to 0.0035 } } }',
    [
      ['new', 20, 38, 18],
      ['new', 25, 35, 10],
    ],
  ],
  ['no band with one limit', '{ new: { max: 0.0038 }, wear: { min: 0.0010 } }', []],
  ['no band without width', '{ new: 0.0020 to 0.0020 }', []],
  [
    'no band with a formula',
    '{ new: { min: 0.0020, max: { formula: "0.0038" } }, wear: { min: { formula: "0.0010" }, max: 0.0050 } }',
    [],
  ],
])('the tolerances of a characteristic are %s', (_, limits, expected) => {
  expect(tolerances(`main_bearing_clearance: ${limits}`)).toEqual(expected);
});
