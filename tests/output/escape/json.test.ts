import fc from 'fast-check';
import { expect, test } from 'vitest';
import { json, spreadJson, writtenJson } from '../../../src/output/escape/json.ts';
import { anyCharacter } from '../../anyCharacter.ts';
import { runs } from '../../propertyRuns.ts';
import { isCommand } from './commands.ts';
import { HIDDEN } from './hidden.ts';
import { NAUGHTY } from './hostileTexts.ts';

test.each([
  ['a control of a terminal', 'a\u009b31m\u007f', '"a\\u009b31m\\u007f"'],
  ['a line separator', 'a\u2028b', '"a\\u2028b"'],
  ['writing from right to left', '\u202ea', '"\\u202ea"'],
  ['a tag', '\u{e0041}', '"\\udb40\\udc41"'],
  ['a command to a log', 'a ##[error]b', '"a \\u0023#[error]b"'],
  ['plain words', 'µm 日本 🔧 # 1', '"µm 日本 🔧 # 1"'],
])('%s stands in JSON as an escape', (_, text, expected) => {
  expect(writtenJson(json`${text}`)).toBe(expected);
});

test('any value reads back as it was, and neither a terminal nor a log obeys it', () => {
  const value = fc.jsonValue({ stringUnit: anyCharacter });
  fc.assert(
    fc.property(value, fc.stringMatching(/^[#[a\]:]{0,9}$/), (some, text) => {
      const told = { some, [text]: text };
      for (const written of [
        writtenJson(json`{"told":${told}}`),
        writtenJson(json`{"told":${spreadJson(told)}}`),
      ]) {
        expect(JSON.parse(written)).toEqual({ told: JSON.parse(JSON.stringify(told)) });
        expect(written).not.toMatch(HIDDEN);
        expect(written.split('\n').filter(isCommand)).toEqual([]);
      }
    }),
    runs(1000),
  );
});

test('naughty strings read back as they were', () => {
  const written = writtenJson(spreadJson(NAUGHTY));
  expect(JSON.parse(written)).toEqual(NAUGHTY);
  expect(written.split('\n').filter((each) => HIDDEN.test(each) || isCommand(each))).toEqual([]);
});
