import { join } from 'node:path';
import { expect, it } from 'vitest';
import { TAKEN_SHOPS } from '../cli/attack/attacks.ts';
import { harmlessAs, NAME, putShops } from '../cli/attack/hostileShop.ts';
import { SOUND_SHOP } from '../cli/attack/soundShop.ts';
import { benchFolder } from '../cli/calling.ts';
import { sheetOf } from '../cli/report/page.ts';
import { HIDDEN } from '../output/escape/hidden.ts';
import { withBrowser } from './browser.ts';
import { readInBrowser } from './inPage.ts';

const bench = benchFolder();
const open = withBrowser();

const READERS = ['shop', 'customer', 'machine-shop'];

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

/** Of both shops the same template: what a text of a document added would be one node or attribute more. */
it.each([...TAKEN_SHOPS.keys()])('of hostile shop %i every text is shown as text', async (number) => {
  const textFor = (name: string): string =>
    `${PAYLOADS[(number + name.length) % PAYLOADS.length]} ${TAKEN_SHOPS[number]?.(name)}`;
  putShops(bench, SOUND_SHOP, textFor, harmlessAs(textFor));
  for (const reader of READERS) {
    const words = ['engines/pump', '--for', reader];
    const [hostile, plain] = [
      await sheetOf(join(bench.folder(), 'hostile'), words),
      await sheetOf(join(bench.folder(), 'plain'), words),
    ];
    const [bad, good] = [await open(hostile), await open(plain)];
    expect(await bad.page.evaluate(readInBrowser('shape'))).toEqual(
      await good.page.evaluate(readInBrowser('shape')),
    );
    expect(bad.events).toEqual([]);
    const text = await bad.page.evaluate<string>('document.body.textContent');
    expect(text).toMatch(NAME);
    expect(text.split('\n').filter((each) => HIDDEN.test(each))).toEqual([]);
    expect(
      await bad.page.evaluate(
        "document.querySelectorAll('a[href], iframe, img, object, embed, base, form').length",
      ),
    ).toBe(0);
    await Promise.all([bad.page.close(), good.page.close()]);
  }
});
