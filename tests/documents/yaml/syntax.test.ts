import { describe, expect, test } from 'vitest';
import { found, load } from '../load.ts';

/** What is wrong, the text, where and what is said, and a part of the message or the help. */
const CASES: readonly (readonly [string, string, readonly string[], string])[] = [
  ['a tab as indentation', 'a:\n\tb: 1\n', ['2:1 yaml'], 'tab'],
  ['two keys on a line', 'a: b: c\n', ['1:4 yaml'], 'second key'],
  ['an open bracket', 'a: [1, 2\n', ['1:9 yaml'], 'still open'],
  ['an open brace', 'a: { b: 1\n', ['1:10 yaml'], 'still open'],
  ['a bracket left open above a key', 'a:\n  - b: [x, y\n    c: 1\n', ['2:8 yaml'], 'this `[` is not closed'],
  ['a brace left open above an item', 'a:\n  - { b: 1\n  - c: 1\n', ['2:5 yaml'], 'write the }'],
  ['a bracket left open within braces', 'a: { b: [1, 2 }\nc: 1\n', ['1:9 yaml'], 'write the ]'],
  ['an open double quote', 'a: "x\n', ['1:6 yaml'], 'still open'],
  ['an open single quote', "a: 'x\n\n", ['1:6 yaml'], 'still open'],
  ['an unknown escape', 'a: "\\q"\n', ['1:5 yaml'], '`\\q` is not an escape'],
  ['a forgotten colon', 'kind session\nstage: teardown\n', ['1:1 yaml'], '`kind session` has no colon'],
  ['a forgotten space', 'kind:session\nstage: teardown\n', ['1:1 yaml'], 'has no colon and space'],
  ['a forgotten colon at the end', 'a: 1\nfoo\n', ['2:1 yaml'], '`foo` is where a key'],
  ['a reserved first character', 'a: @x\n', ['1:4 yaml'], 'begin with `@`'],
  ['a list out of line', 'a:\n  - 1\n - 2\n', ['3:1 yaml'], 'list begins on the line of a key'],
  ['keys out of line', 'a:\n  b: 1\n c: 2\n', ['3:1 yaml'], 'indentation'],
  ['keys out of line below a comment', 'a:\n  b: 1\n# c\n\n c: 2\n', ['5:2 yaml'], 'indentation'],
  ['keys below empty braces', 'a: {}\n#   b: 1\n  c: 2\n', ['3:3 yaml'], 'take the {} away'],
  ['items below empty brackets', 'a: [] # none\n  - 1\n', ['2:1 yaml'], 'take the [] away'],
  ['a stray bracket', 'a: 1\n]\n', ['2:1 yaml'], '`]` does not belong here'],
  ['a comment without a space', 'a: "x"#c\n', ['1:7 yaml'], 'space before #'],
  ['a block in brackets', 'a: [\n  - 1\n  ]\n', ['2:3 yaml'], 'brackets'],
  ['a second document', 'a: 1\n---\nb: 2\n', ['2:1 yaml'], 'second document'],
  ['text after the end', 'a: 1\n...\nb: 2\n', ['3:1 yaml'], 'second document'],
  ['a quoted key over lines', '"a\n b": 1\n', ['1:1 yaml'], 'key goes over several lines'],
  ['a very long key', `${'k'.repeat(1100)}: 1\n`, ['1:1 yaml'], '1024'],
];

describe('text that is not well-formed', () => {
  test.each(CASES)('%s is reported in our own words, with its place', (_what, text, places, words) => {
    const loaded = load(text);
    expect(found(loaded)).toEqual(places);
    expect(`${loaded.diagnostics[0]?.message} ${loaded.diagnostics[0]?.help}`).toContain(words);
    expect(loaded.root).toBeUndefined();
    expect(loaded.data).toBeUndefined();
  });

  test('all of it is reported in one run, in the order of the file', () => {
    const text = 'a: 012\nb: "\\q"\nc: @x\nd: &y 1\nd: 2\n';
    expect(found(load(text))).toEqual([
      '1:4 scalar',
      '2:5 yaml',
      '3:4 yaml',
      '4:4 alias',
      '5:1 duplicate-key',
    ]);
  });

  test('a hundred problems are listed and the rest are counted', () => {
    const { diagnostics } = load('x: 0x1\n'.repeat(250));
    expect(diagnostics).toHaveLength(101);
    expect(diagnostics.at(-1)?.message).toContain('399 more problems');
  });

  test('control characters of the file never come back in a message', () => {
    const { diagnostics } = load('a: \x1b[31m]\n\x1b]0;x\x07: &\x1b 1\nb: @\x1b\n"\x1b": "\\q\x1b"\n');
    expect(diagnostics.length).toBeGreaterThan(3);
    for (const { message, help } of diagnostics)
      expect(`${message}${help}`).not.toMatch(/[\x00-\x1f\x7f-\x9f]/);
  });
});
