import fc from 'fast-check';
import { expect, test } from 'vitest';
import { visible, visibleLines } from '../../../src/output/terminal/visible.ts';
import { runs } from '../../propertyRuns.ts';

test.each([
  ['plain words', 'main bearing 3 µm 日本 🔧', 'main bearing 3 µm 日本 🔧'],
  ['a colour', '\x1b[31mred', '\\u{1b}[31mred'],
  ['a clipboard order', '\x1b]52;c;AA\x07', '\\u{1b}]52;c;AA\\u{7}'],
  ['C1 controls', '\x9b31m', '\\u{9b}31m'],
  ['line ends and tabs', 'a\r\nb\tc', 'a\\r\\nb\\tc'],
  ['a backspace', 'out\b\b\bok', 'out\\u{8}\\u{8}\\u{8}ok'],
  ['writing from right to left', '\u202egp\u2066.\u061c', '\\u{202e}gp\\u{2066}.\\u{61c}'],
  ['zero width', 'a\u200bb\ufeffc\u2060d\u00ade', 'a\\u{200b}b\\u{feff}c\\u{2060}d\\u{ad}e'],
  ['tags', 'a\u{e0041}', 'a\\u{e0041}'],
  ['noncharacters', '\uffff\ufffe', '\\u{ffff}\\u{fffe}'],
  ['half a pair', 'a\ud800b', 'a\\u{d800}b'],
])('%s can be seen and obey nobody', (_what, text, expected) => {
  expect(visible(text)).toBe(expected);
});

test('any text becomes one line without a hidden character', () => {
  const property = fc.property(fc.string({ unit: 'binary' }), (text) => {
    expect(visible(text)).not.toMatch(
      /[\x00-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]|\p{Cs}/u,
    );
    expect(visible(visible(text))).toBe(visible(text));
  });
  fc.assert(property, runs(2000));
});

test('line ends that are meant stay', () => {
  expect(visibleLines('a\x1b\nb\r\n')).toBe('a\\u{1b}\nb\\r\n');
});
