import { accessSync, constants, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { temporaryFolder } from '../shell/gitShop.ts';

/** A page that was opened, and what it did beside being shown. */
export interface Opened {
  readonly page: Page;
  /** What it said to the console, errors, dialogs, and whatever it asked for beside itself. */
  readonly events: string[];
}

export interface Look {
  readonly width?: number;
  readonly dark?: boolean;
}

/** The browser of the machine; without one these tests fail, since nothing was looked at. */
export function withBrowser(): (html: string, look?: Look) => Promise<Opened> {
  let browser: Browser;
  const folder = temporaryFolder();
  let count = 0;
  beforeAll(async () => {
    // Root may not start its sandbox.
    const args = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
    // It writes into a home, and that of the tests is none.
    const env = { ...process.env, HOME: folder, XDG_CACHE_HOME: folder, XDG_CONFIG_HOME: folder };
    browser = await chromium.launch({ executablePath: installed(), args, env });
  });
  afterAll(() => browser.close());
  return async (html, { width = 1280, dark = false } = {}) => {
    const path = join(folder, `${count++}.html`);
    writeFileSync(path, html);
    const page = await browser.newPage({
      viewport: { width, height: 800 },
      colorScheme: dark ? 'dark' : 'light',
    });
    const events: string[] = [];
    const url = pathToFileURL(path).href;
    page.on('console', (message) => events.push(`console: ${message.text()}`));
    page.on('pageerror', (error) => events.push(`error: ${error.message}`));
    page.on('dialog', async (dialog) => {
      events.push(`dialog: ${dialog.message()}`);
      await dialog.dismiss();
    });
    page.on('request', (request) => {
      if (request.url() !== url) events.push(`request: ${request.url()}`);
    });
    await page.goto(url);
    return { page, events };
  };
}

function installed(): string {
  const folders = (process.env.PATH ?? '').split(delimiter);
  const places = ['chromium', 'chromium-browser'].flatMap((name) => folders.map((each) => join(each, name)));
  const found = places.find((path) => {
    try {
      accessSync(path, constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });
  if (found === undefined) throw new Error('no chromium is on this machine: install the package chromium');
  return found;
}
