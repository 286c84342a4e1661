import { expect, it } from 'vitest';
import { inFlow } from '../../../src/documents/writing/inFlow.ts';
import { keyText, valueText } from '../../../src/documents/writing/keyText.ts';

it.each(['yesterday', 'a b', 'a-', '\u00e9', 'cafe\u0301', 'a/b', 'a.b', '_a', 'piston 1', '\u00b5m', 'I'])(
  '%s is written bare',
  (text) => {
    expect([keyText(text), valueText(text)]).toEqual([text, text]);
  },
);

it.each([
  ...['true', 'True', 'FALSE', 'NULL', 'yes', 'No', 'on', 'oFF', 'y', 'N'],
  ...['05', '1_0', '1e5', '-', 'a ', ' a', 'a,b', 'a:', 'a#b', '12:30', '', '~'],
])('%j is written in quotes', (text) => {
  expect([keyText(text), valueText(text)]).toEqual([`"${text}"`, `"${text}"`]);
});

it.each(['3.25', '+7', '12', '-0.5'])('%s is a number bare, and a text in quotes only', (text) => {
  expect([keyText(text), valueText(text)]).toEqual([text, `"${text}"`]);
});

it.each([
  [null, '~'],
  [3.25, '3.25'],
  ['x', 'x'],
  [true, 'true'],
  [[], '[]'],
  [[1, [2, null]], '[1, [2, ~]]'],
  [{ a: 1, b: { c: [1] } }, '{ a: 1, b: { c: [1] } }'],
])('%j is written within brackets as %s', (value, text) => {
  expect(inFlow(value)).toBe(text);
});
