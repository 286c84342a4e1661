import fc from 'fast-check';
import { expect, it } from 'vitest';
import { cssString } from '../../../src/output/escape/css.ts';
import { runs } from '../../propertyRuns.ts';

/** As the syntax of CSS reads a string: a backslash, up to six figures, and one blank that ends them. */
const read = (source: string): string =>
  source
    .slice(1, -1)
    .replaceAll(/\\([0-9a-f]{1,6}) /g, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)));

it('a text in a style sheet is read as it was, and ends nothing', () =>
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      const source = cssString(text);
      expect(source).toMatch(/^"(?:[A-Za-z0-9 ]|\\[0-9a-f]{1,6} )*"$/);
      expect(read(source)).toBe(text);
    }),
    runs(300),
  ));

it.each([
  ['no. 2', '"no\\2e  2"'],
  ['"; } </style>', '"\\22 \\3b  \\7d  \\3c \\2f style\\3e "'],
])('%s is written as %s', (text, source) => expect(cssString(text)).toBe(source));
