import fc from 'fast-check';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { describe, expect, it, test } from 'vitest';
import {
  codeBlock,
  type Markdown,
  markdownList,
  markdownTable,
  md,
  writtenMarkdown,
} from '../../../src/output/escape/markdown.ts';
import { anyCharacter } from '../../anyCharacter.ts';
import { isLong, runs } from '../../propertyRuns.ts';
import { isCommand } from './commands.ts';
import { MARKUP, NAUGHTY } from './hostileTexts.ts';
import { nodesOf, parsedMarkdown, REFERENCE, textOf, textsOf } from './readMarkdown.ts';

/** Where a text of others may stand, and the nodes that are ours. */
const PLACES: readonly (readonly [string, (text: string) => Markdown, readonly string[]])[] = [
  ['a paragraph', (text) => md`${text}`, ['paragraph', 'text']],
  ['a heading', (text) => md`## ${text}`, ['heading', 'text']],
  ['a list', (text) => markdownList([text]), ['list', 'listItem', 'paragraph', 'text']],
  ['a list of boxes', (text) => markdownList([text], md`- [ ] `), ['list', 'listItem', 'paragraph', 'text']],
  [
    'a table',
    (text) => markdownTable(['a'], [[text]]),
    ['table', 'tableRow', 'tableCell', 'text', 'tableRow', 'tableCell', 'text'],
  ],
  ['strong words', (text) => md`a **${text}** b`, ['paragraph', 'text', 'strong', 'text', 'text']],
  ['a drawing', (text) => codeBlock([text]), ['code']],
];

/** In `npm test` each string is tried in two of the places, in a long run in all. */
function naughtyIn(name: string): readonly string[] {
  const own = PLACES.findIndex(([each]) => each === name);
  const isTried = (index: number): boolean => isLong || [0, 1].includes((index + own) % PLACES.length);
  return NAUGHTY.filter((each, index) => each.trim() !== '' && isTried(index));
}

describe.each(PLACES)('in %s', (name, place, nodes) => {
  it.each(MARKUP)('%j is text and nothing else', (attack) => {
    const written = writtenMarkdown([md`before`, place(attack), md`after`]);
    const parsed = parsedMarkdown(written);
    expect(parsed.children).toHaveLength(3);
    expect(parsed.children.slice(1, 2).flatMap(nodesOf)).toEqual(nodes);
    expect(written.split('\n').filter(isCommand)).toEqual([]);
    for (const text of textsOf(parsed)) expect(text).not.toMatch(REFERENCE);
  });

  it('naughty strings are', () => {
    const strings = naughtyIn(name);
    const blocks = strings.map(place);
    const { children } = parsedMarkdown(writtenMarkdown(blocks.flatMap((each) => [each, md`between`])));
    expect(children).toHaveLength(2 * strings.length);
    for (const [index, child] of children.entries()) {
      expect(nodesOf(child)).toEqual(index % 2 === 0 ? nodes : ['paragraph', 'text']);
    }
  });

  it('any text is', () => {
    const text = fc.string({ unit: anyCharacter, minLength: 1 }).filter((each) => each.trim() !== '');
    fc.assert(
      fc.property(text, (any) => {
        const { children } = parsedMarkdown(writtenMarkdown([md`before`, place(any), md`after`]));
        expect(children).toHaveLength(3);
        expect(children.slice(1, 2).flatMap(nodesOf)).toEqual(nodes);
      }),
      runs(1500, 20),
    );
  });
});

test.each([
  ['a figure', '0.0025 to 0.0038, -0.5', '0.0025 to 0.0038, -0.5'],
  ['what stands in brackets', 'main caps (8)', 'main caps (8)'],
  ['a mention', '@everyone', '&#64;&#8203;everyone'],
  ['a sign that refers to nothing', 'no. # 1', 'no. &#35; 1'],
])('%s reads on', (_, text, expected) => {
  expect(md`${text}`.source).toBe(expected);
});

test('a sign that begins in a text does not end behind it', () => {
  expect(textOf(parsedMarkdown(writtenMarkdown([md`${'card :a'}: tightening`])))).not.toMatch(REFERENCE);
});

test('is read back as it was written', () => {
  const text = 'Pump <no. 2> & co: 50 % [a|b] `c` *d* ~ e';
  expect(fromMarkdown(writtenMarkdown([md`${text}`])).children.map(textOf)).toEqual([text]);
});
