import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { TAKEN_SHOPS } from '../cli/attack/attacks.ts';
import { harmlessAs, NAME, putShops } from '../cli/attack/hostileShop.ts';
import { SOUND_SHOP } from '../cli/attack/soundShop.ts';
import { benchFolder } from '../cli/calling.ts';
import { boardPageOf, pageOf, sheetOf } from '../cli/report/page.ts';
import { HIDDEN } from '../output/escape/hidden.ts';
import { type Opened, withBrowser } from './browser.ts';
import { readInBrowser } from './inPage.ts';

const bench = benchFolder();
const open = withBrowser();

const SHEETS: readonly (readonly string[])[] = [
  ['--for', 'shop'],
  ['--for', 'customer'],
  ['--for', 'machine-shop'],
  ['--closing'],
  ['--blank', 'teardown'],
];

const PAGES = [
  'plan engines/pump',
  'plan engines/pump --order',
  'diff teardown rebuild engines/pump --all',
  'torque caps engines/pump',
  'trend main_bearing_clearance engines/pump',
];

/** What a page, a picture or a style sheet would obey, beside what the lists of the other tests hold. */
const PAYLOADS = [
  '</script><script>alert(1)</script>',
  '</style><style>body{display:none}</style>',
  '"; } body { background: url(http://a.example/x) } @import "http://a.example/y',
  '<svg onload=alert(1)><foreignObject><iframe src=javascript:alert(1)>',
  '" onmouseover="alert(1)',
  "' style='display:none",
  'javascript:alert(1)',
  '</title><base href=http://a.example/>',
  '<meta http-equiv=refresh content=0;url=http://a.example/>',
  '{{alert(1)}} <%= 1 %>',
  '\\22 ;} * { color: red } /*',
];

/** Of both shops the same templates: what a text of a document added would be one node or attribute more. */
it.each([...TAKEN_SHOPS.keys()])('of hostile shop %i every text is shown as text', async (number) => {
  const textFor = (name: string): string =>
    `${PAYLOADS[(number + name.length) % PAYLOADS.length]} ${TAKEN_SHOPS[number]?.(name)}`;
  putShops(bench, SOUND_SHOP, textFor, harmlessAs(textFor));
  const [hostile, plain] = [
    await pagesOf(join(bench.folder(), 'hostile')),
    await pagesOf(join(bench.folder(), 'plain')),
  ];
  const shapes: string[] = [];
  for (const each of hostile) shapes.push(await shapeOf(each, showsText));
  const plainShapes: string[] = [];
  for (const each of plain) plainShapes.push(await shapeOf(each));
  // Parts are listed by their marks, which are hostile too.
  expect(shapes.sort()).toEqual(plainShapes.sort());
});

/** Its elements and their attributes; what else is to hold of the page is looked at on the way. */
async function shapeOf(html: string, look?: (opened: Opened) => Promise<void>): Promise<string> {
  const opened = await open(html);
  await look?.(opened);
  const shape = await opened.page.evaluate<string[]>(readInBrowser('shape'));
  await opened.page.close();
  return shape.join('\n');
}

async function showsText({ page, events }: Opened): Promise<void> {
  expect(events).toEqual([]);
  const text = await page.evaluate<string>('document.body.textContent');
  expect(text).toMatch(NAME);
  expect(text.split('\n').filter((each) => HIDDEN.test(each))).toEqual([]);
  expect(
    await page.evaluate("document.querySelectorAll('iframe, img, object, embed, base, form').length"),
  ).toBe(0);
  expect((await page.evaluate<string[]>(readInBrowser('addresses'))).filter(leadsAway)).toEqual([]);
}

/** To a page of the board or to a photograph of the shop, by names that mean nothing to a browser. */
const leadsAway = (address: string): boolean =>
  !/^(?:\.\.\/)*(?:[\w.-]|%[\dA-F]{2})+(?:\/(?:[\w.-]|%[\dA-F]{2})+)*\.(?:html|jpg)$/.test(address);

/** Every sheet, the page of every command, the board, and the pages of engines and parts that it leads to. */
async function pagesOf(folder: string): Promise<readonly string[]> {
  const sheets: string[] = [];
  for (const words of SHEETS) sheets.push(await sheetOf(folder, ['engines/pump', ...words]));
  for (const words of PAGES) sheets.push((await pageOf(folder, words.split(' '))).html);
  const index = await boardPageOf(folder, 'index.html');
  const pages = [...index.matchAll(/href="([^"]*)"/g)].map(([, address = '']) => decodeURIComponent(address));
  expect(pages).toContainEqual(expect.stringMatching(/^parts\//));
  return [...sheets, index, ...pages.map((each) => readFileSync(join(folder, 'board', each), 'utf8'))];
}
