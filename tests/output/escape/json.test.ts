import fc from 'fast-check';
import { expect, test } from 'vitest';
import { json, spreadJson, writtenJson } from '../../../src/output/escape/json.ts';
import { runs } from '../../propertyRuns.ts';
import { isCommand } from './commands.ts';

const SEEN = /^(?:(?![\x00-\x09\x0b-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff])\P{Cs})*$/u;

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
  const value = fc.jsonValue({ stringUnit: 'binary' });
  fc.assert(
    fc.property(value, fc.stringMatching(/^[#[a\]:]{0,9}$/), (some, text) => {
      const told = { some, [text]: text };
      for (const written of [
        writtenJson(json`{"told":${told}}`),
        writtenJson(json`{"told":${spreadJson(told)}}`),
      ]) {
        expect(JSON.parse(written)).toEqual({ told: JSON.parse(JSON.stringify(told)) });
        expect(written).toMatch(SEEN);
        expect(written.split('\n').filter(isCommand)).toEqual([]);
      }
    }),
    runs(1000),
  );
});
