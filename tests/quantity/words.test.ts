import { describe, expect, it } from 'vitest';
import { capital, inOneSentence, namesOrSome, plural, withArticle } from '../../src/quantity/words.ts';

it.each([
  ['bore gauge', 'a bore gauge'],
  ['inside micrometer', 'an inside micrometer'],
  ['eccentric', 'an eccentric'],
  ['protractor', 'a protractor'],
])('%s has its article: %s', (noun, expected) => {
  expect(withArticle(noun)).toBe(expected);
});

it.each([
  [0, '0 engines'],
  [1, '1 engine'],
  [2, '2 engines'],
])('%i of a thing are counted', (count, expected) => {
  expect(plural(count, 'engine')).toBe(expected);
});

it.each([
  ['main journal', 'Main journal'],
  ['µm', 'Μm'],
  ['', ''],
])('%j begins a sentence as %j', (text, expected) => {
  expect(capital(text)).toBe(expected);
});

it.each([
  [['oil pressure, idling'], 'oil pressure, idling'],
  [['bore', 'stroke'], 'bore and stroke'],
  [['bore', 'stroke', 'taper'], 'bore, stroke and taper'],
])('%j stand in a sentence as %s', (names, expected) => {
  expect(inOneSentence(names)).toBe(expected);
});

describe('of many names the first twenty-four are told', () => {
  const names = Array.from({ length: 26 }, (_, index) => `n${index + 1}`);
  const upTo = (count: number): string => names.slice(0, count).join(', ');

  it.each([
    ['none', 0, ''],
    ['as many', 24, upTo(24)],
    ['one more, which takes no more room than to say so', 25, upTo(25)],
    ['two more', 26, `${upTo(24)} and 2 parts more`],
  ])('%s', (_, count, expected) => {
    expect(namesOrSome(names.slice(0, count), 'parts')).toBe(expected);
  });
});
