import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  BELL,
  type Line,
  line,
  visible,
  writtenLines,
  writtenPrompt,
  writtenText,
} from '../../../src/output/escape/line.ts';
import { paintWith } from '../../../src/output/terminal/paint.ts';
import { anyCharacter } from '../../anyCharacter.ts';
import { runs } from '../../propertyRuns.ts';
import { isCommand } from './commands.ts';
import { HIDDEN } from './hidden.ts';
import { NAUGHTY } from './hostileTexts.ts';

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
  expect(writtenLines([text])).toBe(`${expected}\n`);
  expect(writtenLines([line`${text}`])).toBe(`${expected}\n`);
});

describe('whatever the strings, what is written has', () => {
  const { strong, bad } = paintWith(0);
  const shapes: readonly ((a: string, b: string) => Line)[] = [
    (a) => a,
    (a, b) => `  ${a} ${b}`,
    (a, b) => line`${a}${b}`,
    (a, b) => line`${strong(a)}  ${bad(line`${b}`)}`,
  ];
  const text = fc.oneof(fc.string({ unit: anyCharacter }), fc.stringMatching(/^[ \n:#[\]a]{0,12}$/));

  it('a line for each, no hidden character and no command', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(text, text, fc.constantFrom(...shapes))), (all) => {
        const written = writtenLines(all.map(([a, b, shape]) => shape(a, b)));
        expect(written.split('\n')).toHaveLength(all.length + 1);
        expect(written).not.toMatch(HIDDEN);
        expect(written.split('\n').filter(isCommand)).toEqual([]);
      }),
      runs(2000),
    );
  });
});

describe('no line is a command to the log of a CI system', () => {
  it.each([
    ['at its start', '::error file=a::b', '\\u{3a}:error file=a::b'],
    ['behind spaces', '   ::error::b', '   \\u{3a}:error::b'],
    ['behind a no-break space', '\u00a0::error::b', '\u00a0\\u{3a}:error::b'],
    ['behind an ideographic space', '\u3000 ::error::b', '\u3000 \\u{3a}:error::b'],
    ['in the middle of a line', 'pump ##[add-mask]out', 'pump \\u{23}#[add-mask]out'],
    ['with a name before the bracket', 'pump ##build[x]', 'pump \\u{23}#build[x]'],
    ['behind another sign', '###[error]a', '#\\u{23}#[error]a'],
    ['of colons in a path', 'a::b', 'a::b'],
    ['of a heading', '## Passes', '## Passes'],
  ])('%s', (_, text, expected) => {
    expect(writtenLines([text])).toBe(`${expected}\n`);
    expect(writtenPrompt(text)).toBe(expected);
    expect(writtenText(`a\n${text}\n`)).toBe(`a\n${expected}\n`);
  });

  it('put together from pieces that are none', () => {
    expect(writtenLines([line`${':'}${':error::a'}`])).toBe('\\u{3a}:error::a\n');
    expect(writtenLines([line`${'#'}${'#'}${'[error]a'}`])).toBe('\\u{23}#[error]a\n');
  });

  it('behind a colour or a bell', () => {
    const { bad } = paintWith(1);
    expect(writtenLines([bad('::error::a')])).toMatch(/m\\u\{3a\}:error::a/);
    expect(writtenLines([line`${BELL} ::error::a`])).toBe('\u0007 \\u{3a}:error::a\n');
  });
});

test('colours of our own stay, and those of others in them are seen', () => {
  const { strong } = paintWith(1);
  expect(writtenLines([line`${strong('a\u001b[0mb')} c`])).toBe('\u001b[1ma\\u{1b}[0mb\u001b[22m c\n');
});

test('naughty strings stand on one line each', () => {
  const written = writtenLines(NAUGHTY).split('\n');
  expect(written).toHaveLength(NAUGHTY.length + 1);
  expect(written.filter((each) => HIDDEN.test(each) || isCommand(each))).toEqual([]);
});

test('a piece in a plain string is a fault of ours, and seen as one', () => {
  expect(() => `${line`a`}`).toThrow(TypeError);
});

test('line ends that are meant stay', () => {
  expect(writtenText('a\x1b\nb\r\n')).toBe('a\\u{1b}\nb\\r\n');
});
