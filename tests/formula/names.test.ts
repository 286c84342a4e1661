import { expect, it } from 'vitest';
import { namesIn, referencesIn, unknownNames } from '../../src/formula/names.ts';
import { parsed } from './parsed.ts';

it.each([
  ['0.0005 * bore', ['bore']],
  ['stroke - bore / stroke', ['stroke', 'bore']],
  ['max(-bore, round(cap_2, 2), sqrt((bore)))', ['bore', 'cap_2']],
  ['spread(bore[*]) / bore[1] + stroke', ['bore', 'stroke']],
  ['1 + 2', []],
])('%s uses %j', (text, names) => {
  expect(namesIn(parsed(text))).toEqual(names);
});

it('the same name at other positions is another reference', () => {
  const found = referencesIn(parsed('max(bore[*], bore, bore[1]) - bore + stroke[ 1  top ] * bore[next]'));
  expect(found.map(({ text, maySeveral }) => [text, maySeveral])).toEqual([
    ['bore[*]', true],
    ['bore', false],
    ['bore[1]', true],
    ['stroke[1 top]', false],
    ['bore[next]', false],
  ]);
});

const KNOWN = new Set(['bore', 'stroke']);

it('every name that nothing goes by is reported where it stands', () => {
  expect(unknownNames(parsed('bor + stroke * zebra'), KNOWN)).toEqual([
    { message: 'no size or characteristic is called bor', help: 'did you mean bore?', start: 0, end: 3 },
    {
      message: 'no size or characteristic is called zebra',
      help: 'use a name under sizes, or a characteristic',
      start: 15,
      end: 20,
    },
  ]);
});

it('known names are no problem', () => {
  expect(unknownNames(parsed('bore / stroke'), KNOWN)).toEqual([]);
});

it.each(['constructor', 'toString'.toLowerCase(), 'e', 'pi', 'i'])('%s is a name like any other', (name) => {
  expect(unknownNames(parsed(name), KNOWN)).toHaveLength(1);
});
