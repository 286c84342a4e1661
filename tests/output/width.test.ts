import stringWidth from 'string-width';
import { expect, test } from 'vitest';
import { ONE_COLUMN_EACH, widthOf } from '../../src/output/table.ts';

test('every character that is counted as one column takes one', () => {
  const counted = Array.from({ length: 0x10000 }, (_, code) => String.fromCharCode(code)).filter(
    (character) => ONE_COLUMN_EACH.test(character),
  );
  expect(counted.length).toBeGreaterThan(600);
  expect(counted.filter((character) => stringWidth(character) !== 1)).toEqual([]);
});

test.each([
  ['├──●━●────┤', 11],
  ['±0.00016', 8],
  ['水', 2],
  ['e\u0301', 1],
])('%s takes %i columns', (text, columns) => {
  expect(widthOf(text)).toBe(columns);
});
