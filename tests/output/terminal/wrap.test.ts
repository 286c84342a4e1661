import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { widthOf } from '../../../src/output/terminal/width.ts';
import { wrap } from '../../../src/output/terminal/wrap.ts';

describe('text in a narrow window', () => {
  it.each([
    ['fits and stays', 'loose by 7 tenths', 17, ['loose by 7 tenths']],
    ['breaks at a space', 'loose by 7 tenths', 16, ['loose by 7', 'tenths']],
    ['fills each line', 'a b c d e', 3, ['a b', 'c d', 'e']],
    [
      'keeps a long word whole',
      'see engines/reservoir/limits.yaml:4:5 now',
      10,
      ['see', 'engines/reservoir/limits.yaml:4:5', 'now'],
    ],
    ['counts wide characters as two', '軸 軸 軸', 5, ['軸 軸', '軸']],
    ['is nothing', '', 5, ['']],
  ])('%s', (_, text, width, lines) => {
    expect(wrap(text, width)).toEqual(lines);
  });

  it('is broken nowhere where nothing has to fit', () => {
    expect(wrap('word '.repeat(1000).trim(), Number.POSITIVE_INFINITY)).toHaveLength(1);
  });

  it('keeps every word in its order, and every line of several words within the width', () => {
    const words = fc.array(fc.stringMatching(/^[a-z0-9]{1,12}$/), { minLength: 1 });
    fc.assert(
      fc.property(words, fc.integer({ min: 1, max: 40 }), (list, width) => {
        const lines = wrap(list.join(' '), width);
        expect(lines.join(' ')).toBe(list.join(' '));
        for (const line of lines) expect(!line.includes(' ') || widthOf(line) <= width).toBe(true);
      }),
    );
  });
});
