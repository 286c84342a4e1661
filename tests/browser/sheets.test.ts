import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { HtmlValidate } from 'html-validate';
import { beforeAll, describe, expect, it } from 'vitest';
import { call } from '../cli/call.ts';
import { boardPageOf, pageOf, sheetOf } from '../cli/report/page.ts';
import { inCopyOf } from '../replay.ts';
import { withBrowser } from './browser.ts';
import { readInBrowser } from './inPage.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const SHEETS: readonly (readonly [title: string, words: readonly string[], folder?: string])[] = [
  ['worn pump with a trend', [], 'tests/cases/trend/one-gauge'],
  ['pump that drags', [], 'tests/cases/findings/turning-jump'],
  ['six for the shop', ['engines/generator-set-6']],
  ['pump for the shop', ['engines/reservoir-pump-2']],
  ['pump for its customer', ['engines/reservoir-pump-2', '--for', 'customer']],
  ['six for its customer', ['engines/generator-set-6', '--for', 'customer']],
  ['six for a machine shop', ['engines/generator-set-6', '--for', 'machine-shop', '--session', 'teardown']],
  ['pump before it is closed up', ['engines/reservoir-pump-2', '--closing']],
  ['six that is still to be measured', ['engines/generator-set-6', '--blank', 'rebuild']],
];

/** What other commands write as a page. */
const OTHER_PAGES: readonly (readonly [title: string, words: string, folder?: string])[] = [
  ['plan of the six', 'plan engines/generator-set-6 --session teardown'],
  ['comparison of the pump', 'diff teardown rebuild engines/reservoir-pump-2'],
  ['card of the main caps', 'torque main-caps engines/reservoir-pump-2'],
  ['trend of a bore', 'trend cylinder_bore', 'tests/cases/trend/one-gauge'],
];

/** Pages of the board, each with where it lies. */
const BOARD_PAGES: readonly (readonly [title: string, page: string])[] = [
  ['board', 'index.html'],
  ['part', 'parts/crankshaft-G6-1.html'],
];

/** The paper between its margins, at 96 dots an inch: A4 and Letter. */
const PAPERS = { A4: Math.floor(((210 - 22 - 12) / 25.4) * 96), Letter: Math.floor((8.5 - 34 / 25.4) * 96) };

const OPEN_ALL = "for (const each of document.querySelectorAll('details')) each.open = true";

const open = withBrowser();
const sheets = new Map<string, string>();

beforeAll(async () => {
  for (const [title, words, from = 'examples'] of SHEETS)
    await inCopyOf(from, async (folder) => sheets.set(title, await sheetOf(folder, words)));
  for (const [title, words, from = 'examples'] of OTHER_PAGES)
    await inCopyOf(from, async (folder) => sheets.set(title, (await pageOf(folder, words.split(' '))).html));
  for (const [title, page] of BOARD_PAGES)
    await inCopyOf('examples', async (folder) => sheets.set(title, await boardPageOf(folder, page)));
});

const sheet = (title: string): string => sheets.get(title) ?? '';
const TITLES = [...SHEETS, ...OTHER_PAGES, ...BOARD_PAGES].map(([title]) => title);

describe.each(TITLES)('the sheet of the %s', (title) => {
  it('is valid', async () => {
    const validator = new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: {
        // Presentation of ours: the library ends empty elements as XML does, and pictures carry their size.
        'void-style': 'off',
        'no-self-closing': 'off',
        'long-title': 'off',
        'no-inline-style': 'error',
      },
    });
    const report = await validator.validateString(sheet(title));
    expect(
      report.results.flatMap(({ messages }) => messages.map((each) => `${each.line}: ${each.message}`)),
    ).toEqual([]);
  });

  it('can be read by everybody, in light and in dark', async () => {
    const { page, events } = await open(sheet(title));
    await page.evaluate(OPEN_ALL);
    await page.evaluate(AXE);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      const violations = await page.evaluate<{ id: string; nodes: { html: string }[] }[]>(
        'axe.run(document).then((found) => found.violations)',
      );
      expect(violations.map(({ id, nodes }) => `${colorScheme}, ${id}: ${nodes[0]?.html}`)).toEqual([]);
    }
    expect(events).toEqual([]);
    await page.close();
  });

  it('fits screens of 360, 800 and 1280 pixels', async () => {
    const { page, events } = await open(sheet(title));
    for (const width of [360, 800, 1280]) {
      await page.setViewportSize({ width, height: 800 });
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(width);
      if (process.env.TENTHS_PICTURES !== undefined) {
        const path = join(process.env.TENTHS_PICTURES, `${title}-${width}.png`);
        await page.screenshot({ path, fullPage: true });
      }
    }
    expect(events).toEqual([]);
    await page.close();
  });

  it('prints on A4 and Letter with nothing cut off', async () => {
    const { page } = await open(sheet(title));
    await page.emulateMedia({ media: 'print' });
    await page.evaluate("dispatchEvent(new Event('beforeprint'))");
    for (const [paper, width] of Object.entries(PAPERS)) {
      await page.setViewportSize({ width, height: 1000 });
      expect(await page.evaluate(readInBrowser('cutOff', width)), paper).toEqual([]);
    }
    expect(await page.evaluate(readInBrowser('breakable'))).toEqual([]);
    await page.close();
  });

  it('has every word of its pictures inside them', async () => {
    const { page } = await open(sheet(title));
    await page.evaluate(OPEN_ALL);
    expect(await page.evaluate(readInBrowser('outsidePictures'))).toEqual([]);
    await page.close();
  });
});

/** In points. */
const SIZES: readonly (readonly [paper: string, width: number, height: number])[] = [
  ['A4', 595, 842],
  ['Letter', 612, 792],
];

it.each(SIZES)('is printed by the command itself on %s', (paper, width, height) =>
  inCopyOf('examples', async (folder) => {
    const words = ['report', 'engines/reservoir-pump-2', '--to', 'sheet.pdf', '--paper', paper];
    expect(await call(folder, words)).toMatchObject({ exit: 0, out: 'sheet.pdf: NOT RELEASED, 3 open\n' });
    const pdf = readFileSync(join(folder, 'sheet.pdf'), 'latin1');
    const pages = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
    expect(pages.length).toBeGreaterThan(3);
    for (const [, across, down] of pages)
      expect([Math.round(Number(across)), Math.round(Number(down))]).toEqual([width, height]);
  }),
);

it.each(SIZES)('what is handed over alone fits one side of %s', (paper) =>
  inCopyOf('examples', async (folder) => {
    for (const words of [
      ['engines/generator-set-6', '--for', 'machine-shop', '--session', 'teardown'],
      ['engines/generator-set-6', '--closing', '--session', 'teardown'],
      ['engines/reservoir-pump-2', '--closing'],
    ]) {
      await call(folder, ['report', ...words, '--to', 'page.pdf', '--paper', paper]);
      const pdf = readFileSync(join(folder, 'page.pdf'), 'latin1');
      expect([...pdf.matchAll(/\/MediaBox/g)]).toHaveLength(1);
    }
  }),
);

describe('by keyboard', () => {
  it('all is opened, and folded again', async () => {
    const { page } = await open(sheet('six for the shop'));
    const opened = "[...document.querySelectorAll('details')].filter((each) => each.open).length";
    expect(await page.evaluate(opened)).toBe(0);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(opened)).toBe(
      await page.evaluate("document.querySelectorAll('details').length"),
    );
    await page.keyboard.press('Enter');
    expect(await page.evaluate(opened)).toBe(0);
  });

  it('one line is opened', async () => {
    const { page } = await open(sheet('six for the shop'));
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await page.evaluate("document.querySelector('details').open")).toBe(true);
  });

  it('a table is sorted by what was read, up and down', async () => {
    const { page } = await open(sheet('pump for the shop'));
    const readings =
      "[...document.querySelector('table.sorts[data-sorted]').querySelectorAll('td.figure:nth-child(2)')].map((each) => each.textContent)";
    await page.evaluate(
      "(() => { const table = [...document.querySelectorAll('table.measure')].find((each) => each.caption.textContent.startsWith('main bearing clearance')); table.dataset.sorted = ''; table.querySelectorAll('th button')[1].focus(); })()",
    );
    await page.keyboard.press('Enter');
    const up = await page.evaluate<string[]>(readings);
    await page.keyboard.press('Enter');
    const down = await page.evaluate<string[]>(readings);
    const first = (text: string): number => Number.parseFloat(text);
    expect(up.map(first)).toEqual(up.map(first).toSorted((a, b) => a - b));
    expect(down.map(first)).toEqual(up.map(first).toReversed());
    expect(up.length).toBe(5);
    expect(await page.evaluate("document.querySelector('th[aria-sort]').getAttribute('aria-sort')")).toBe(
      'descending',
    );
  });
});

it('can be read and unfolded without its script', async () => {
  const { page } = await open(sheet('six for the shop').replace(/<script>[\s\S]*<\/script>/, ''));
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  expect(await page.evaluate("document.querySelector('details').open")).toBe(true);
});
