import { expect, test } from 'vitest';
import { misreadFigures } from '../../../src/measurement/slips/misreadFigures.ts';
import { equals, parseDecimal, ZERO } from '../../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../../src/quantity/units.ts';

const INCH = unitNamed('in');

function found(digits: string, decimals: number): Readonly<Record<string, readonly string[]>> {
  const slips = misreadFigures({ digits, unit: INCH.factor, start: ZERO }, decimals);
  for (const { intended, written } of slips)
    expect(equals(intended, toBase(parseDecimal(written), INCH))).toBe(true);
  const written = (words: string) => slips.filter((each) => each.words === words).map((each) => each.written);
  return Object.fromEntries(
    [...new Set(slips.map(({ words }) => words))].map((each) => [each, written(each)]),
  );
}

/** `1_5` with each of some figures in its place. */
const each = (figures: string, pattern: string): readonly string[] =>
  [...figures].map((figure) => pattern.replace('_', figure));

test.each([
  [
    'a single figure',
    '5',
    0,
    {
      'one figure misread': each('012346789', '_'),
      'a figure dropped': [...each('123456789', '_5'), ...each('0123456789', '5_')],
    },
  ],
  [
    'one below zero',
    '-2',
    0,
    {
      'one figure misread': each('013456789', '-_'),
      'a figure dropped': [...each('123456789', '-_2'), ...each('0123456789', '-2_')],
    },
  ],
  [
    'as many decimals as the others have',
    '1.5',
    1,
    {
      'one figure misread': [...each('023456789', '_.5'), ...each('012346789', '1._')],
      'a figure dropped': [...each('123456789', '_1.5'), ...each('0123456789', '1_.5')],
      'a figure too many': ['.5'],
    },
  ],
  [
    'a decimal less than the others, which must be lacking',
    '1.5',
    2,
    {
      'a figure dropped': [
        ...each('123456789', '_1.5'),
        ...each('0123456789', '1_.5'),
        ...each('0123456789', '1._5'),
        ...each('0123456789', '1.5_'),
      ],
    },
  ],
  [
    'a decimal more than the others',
    '1.25',
    1,
    {
      'one figure misread': [
        ...each('023456789', '_.25'),
        ...each('013456789', '1._5'),
        ...each('012346789', '1.2_'),
      ],
      'a figure too many': ['.25', '1.5', '1.2'],
    },
  ],
])('%s: %s with %i decimals', (_, digits, decimals, expected) => {
  expect(found(digits, decimals)).toEqual(expected);
});
