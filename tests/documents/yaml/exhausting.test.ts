import { describe, expect, test } from 'vitest';
import { effort } from '../../effort.ts';
import { some } from '../../propertyRuns.ts';
import { load, told } from '../load.ts';

describe('files made to exhaust a reader', () => {
  // In `npm test` files of a sixteenth of the size that is taken, for which less time has to do.
  const KIB = some(1024, 64);
  const MOST = some(2000, 1500);
  const fill = (piece: string, size = 255 * KIB) => piece.repeat(Math.floor(size / piece.length));
  const laughs = ['a: &a [x,x,x,x,x,x,x,x,x]', ...'bcdefghi'].reduce((text, name) => {
    const before = String.fromCharCode(name.charCodeAt(0) - 1);
    return `${text}\n${name}: &${name} [${Array(9).fill(`*${before}`).join(',')}]`;
  });
  const numbered = (count: number, line: (i: number) => string) =>
    Array.from({ length: count }, (_, i) => line(i)).join('');

  test.each([
    ['a billion laughs', laughs],
    ['thousands of keys', numbered(22_000, (i) => `k${i}: 1\n`)],
    ['thousands of anchors', numbered(9_000, (i) => `- &a${i} *a${i}\n`)],
    ['stray brackets', fill('- ]\n')],
    ['stray brackets on one line', fill(']')],
    ['open brackets', fill('[')],
    ['open braces', fill('{')],
    ['open braces with keys', fill('{a: ')],
    ['lists in lists', fill('- ')],
    ['mappings in mappings', numbered(700, (i) => `${' '.repeat(i)}a:\n`)],
    ['keys of keys', fill('? ')],
    ['numbers', `[${fill('1.5,')}]`],
    ['commas', `[${fill(',')}]`],
    ['colons', fill(':')],
    ['one long word', fill('x')],
    ['one long number', fill('1')],
    ['one long underscored number', `a: 1${fill('_1')}x`],
    ['a long number with colons', `a: 1${fill(':1')}x`],
    ['open quotes', fill('"')],
    ['escapes', `"${fill('\\x')}`],
    ['directives', fill('%YAML 1.1\n')],
    ['documents', fill('---\n')],
    ['tags', fill('!a ')],
    ['anchors', fill('&a ')],
    ['anchors without values', fill('- &a\n')],
    ['tags in a list', `[${fill('!a x,')}]`],
    ['comments', fill('#\n')],
    ['carriage returns', fill('\r')],
    ['NULs', fill('\0')],
    ['zeros on one line', `[${fill('0x1,', 190 * KIB)}]`],
    ['leading zeros in readings', `readings:\n${numbered(6_000, () => '- { in: tenths, at: { 1: 05 } }\n')}`],
    ['duplicate keys', fill('a: 1\n')],
    ['as many open brackets as are parsed', fill('[', 97 * KIB)],
    ['as many stray brackets as are parsed', fill('- ]\n', 130 * KIB)],
    ['as many duplicate keys as are parsed', fill('a: 1\n', 240 * KIB)],
    ['as many commas as are parsed', `[${fill(',', 97 * KIB)}]`],
    [
      'many blocks and many leading zeros',
      `readings:\n${fill('- {in: a}\n', 80 * KIB)}b: [${fill('05,', 90 * KIB)}]`,
    ],
    ['block scalars', fill('- |\n x\n')],
  ])('%s: a clear answer in some two seconds', (_what, text) => {
    let count = 0;
    const took = effort(() => {
      count = load(text).diagnostics.length;
    }, 1);
    expect(took).toBeLessThan(MOST);
    expect(count).toBeLessThanOrEqual(101);
  });
});

test('fifty thousand values are read, one more is not', () => {
  expect(load('- 1\n'.repeat(49_999)).diagnostics).toEqual([]);
  const wanted = 'too-big: the file holds more than 50000 values; split it: one file a session';
  const items = load('- 1\n'.repeat(50_000));
  expect([told(items), Object.keys(items)]).toEqual([[`50000:3-4 ${wanted}`], ['source', 'diagnostics']]);
  expect(told(load(`${'- a: 1\n'.repeat(24_999)}- b: 1\n  c: 2`))).toEqual([`25000:3-4 ${wanted}`]);
});
