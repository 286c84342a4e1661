import { join } from 'node:path';
import { expect, it } from 'vitest';
import { HIDDEN } from '../../output/escape/hidden.ts';
import { nodesOf, parsedMarkdown, REFERENCE, textsOf } from '../../output/escape/readMarkdown.ts';
import { numbered, TAKEN_SHOPS } from '../attack/attacks.ts';
import { harmlessAs, putShops } from '../attack/hostileShop.ts';
import { SOUND_SHOP } from '../attack/soundShop.ts';
import { benchFolder } from '../calling.ts';
import { sheetOf } from './page.ts';

const bench = benchFolder();

const TAG = /<\/?([a-z][\w-]*)((?:\s+[\w:-]+(?:="[^"]*")?)*)\s*\/?>/gi;

/** What a page consists of: its tags, with the names of their attributes. */
const tagsOf = (page: string): readonly string[] =>
  [...page.matchAll(TAG)].map(([, tag, rest = '']) => `${tag}${rest.replaceAll(/="[^"]*"/g, '')}`);

it.each(numbered(TAKEN_SHOPS))(
  'of hostile shop %i no text means anything in Markdown',
  async (_, textFor) => {
    putShops(bench, SOUND_SHOP, textFor, harmlessAs(textFor));
    const [hostile, plain] = [
      await sheetOf(join(bench.folder(), 'hostile'), ['engines/pump'], 'sheet.md'),
      await sheetOf(join(bench.folder(), 'plain'), ['engines/pump'], 'sheet.md'),
    ];
    const page = parsedMarkdown(hostile);
    expect(nodesOf(page)).toEqual(nodesOf(parsedMarkdown(plain)));
    expect(textsOf(page).filter((each) => REFERENCE.test(each))).toEqual([]);
    expect(hostile.split('\n').filter((each) => HIDDEN.test(each))).toEqual([]);
  },
);

it.each(numbered(TAKEN_SHOPS))('of hostile shop %i no text means anything in HTML', async (_, textFor) => {
  putShops(bench, SOUND_SHOP, textFor, harmlessAs(textFor));
  const [hostile, plain] = [
    await sheetOf(join(bench.folder(), 'hostile'), ['engines/pump'], 'sheet.html'),
    await sheetOf(join(bench.folder(), 'plain'), ['engines/pump'], 'sheet.html'),
  ];
  expect(tagsOf(plain).length).toBeGreaterThan(100);
  expect(tagsOf(hostile)).toEqual(tagsOf(plain));
  expect(hostile.split('\n').filter((each) => HIDDEN.test(each))).toEqual([]);
});
