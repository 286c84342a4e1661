import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../../src/diagnostic/diagnostic.ts';
import { readWindow } from '../../../src/documents/limits/window.ts';
import { childOf } from '../../../src/documents/yaml/access.ts';
import { toDecimal } from '../../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../../src/quantity/units.ts';
import { readYaml } from '../readYaml.ts';

/** A window in newton metres and the unit it is written in, and what is said of it. */
function windowOf(text: string) {
  const { root, source } = readYaml(text);
  const problems: Diagnostic[] = [];
  const context = { source, units: new Map([['torque', unitNamed('N m')] as const]), problems };
  const found = readWindow(childOf(root, 'to'), 'torque', context);
  const told = problems.map(({ code, message, help, place: { line, column } }) => [
    `${line}:${column}`,
    code,
    message,
    help,
  ]);
  const ends =
    found && [found.least, found.greatest].map((end) => toDecimal(fromBase(end, unitNamed('N m')), 2));
  return { window: found && `${ends?.join(' to ')}, in ${found.unit.name}`, told };
}

describe('a window', () => {
  it.each([
    ['of one figure', 'to: 40', '40.00 to 40.00, in N m'],
    ['of one figure with its unit', 'to: 100 lbf ft', '135.58 to 135.58, in lbf ft'],
    ['from one to another', 'to: 58 to 69', '58.00 to 69.00, in N m'],
    ['with a unit at the end, which is meant for both', 'to: 50 to 100 lbf ft', '67.79 to 135.58, in lbf ft'],
    ['with a unit at each end', 'to: 50 N m to 100 lbf ft', '50.00 to 135.58, in lbf ft'],
    [
      'with its ends as keys, in the unit of the greatest',
      'to: { min: 50, max: 100 lbf ft }',
      '50.00 to 135.58, in lbf ft',
    ],
    ['that is not stated', 'other: 1', undefined],
    ['that is a list, which was told when it was read', 'to: [1, 2]', undefined],
  ])('%s', (_, text, expected) => expect(windowOf(text)).toEqual({ window: expected, told: [] }));

  const A_LENGTH = (text: string) => [
    'document/wrong-quantity',
    `${text} is a length, and a torque is wanted here`,
    'write it in one of: lbf ft, lbf in, ozf in, N m, kgf m',
  ];

  it.each([
    [
      'that has no least',
      'to: { max: 40 }',
      [['1:5', 'document/missing-key', 'the window has no least', 'give min and max']],
    ],
    [
      'that has no greatest',
      'to: { min: 40 }',
      [['1:5', 'document/missing-key', 'the window has no greatest', 'give min and max']],
    ],
    [
      'that has neither',
      'to: {}',
      [['1:5', 'document/missing-key', 'the window has no least', 'give min and max']],
    ],
    ['of another quantity', 'to: 40 mm', [['1:5', ...A_LENGTH('40 mm')]]],
    ['whose least is of another', 'to: 40 mm to 50 N m', [['1:5', ...A_LENGTH('40 mm')]]],
    ['whose greatest is', 'to: 40 N m to 50 mm', [['1:5', ...A_LENGTH('50 mm')]]],
    ['whose least by its key is', 'to: { min: 40 mm, max: 50 }', [['1:12', ...A_LENGTH('40 mm')]]],
    ['whose greatest by its key is', 'to: { min: 40, max: 50 mm }', [['1:21', ...A_LENGTH('50 mm')]]],
  ])('%s is told, and is none', (_, text, told) =>
    expect(windowOf(text)).toEqual({ window: undefined, told }),
  );
});
