import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import stringWidth from 'string-width';
import { expect, test } from 'vitest';
import { ONE_COLUMN_EACH } from '../../../src/output/terminal/oneColumnEach.ts';
import { widthOf } from '../../../src/output/terminal/width.ts';

test('every character that is counted as one column takes one', () => {
  const counted = Array.from({ length: 0x10000 }, (_, code) => String.fromCharCode(code)).filter(
    (character) => ONE_COLUMN_EACH.test(character),
  );
  expect(counted.length).toBeGreaterThan(600);
  expect(counted.filter((character) => stringWidth(character) !== 1)).toEqual([]);
});

test('nothing that the program itself writes needs a look into the tables, which take longer to load than to judge an engine', () => {
  const src = fileURLToPath(new URL('../../../src', import.meta.url));
  const sources = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.ts'),
  );
  const written = sources.flatMap((name) => readFileSync(join(src, name), 'utf8').match(/[^\0-\x7f]/g) ?? []);
  expect(written.length).toBeGreaterThan(100);
  expect([...new Set(written)].filter((character) => !ONE_COLUMN_EACH.test(character))).toEqual([]);
});

test.each([
  ['├──●━●────┤', 11],
  ['±0.00016', 8],
  ['水', 2],
  ['e\u0301', 1],
])('%s takes %i columns', (text, columns) => {
  expect(widthOf(text)).toBe(columns);
});
