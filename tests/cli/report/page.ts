import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { call } from '../call.ts';

/** What a browser shows of a page's text. */
export const shown = (html: string): string =>
  html
    .replaceAll(/<(style|script)>[\s\S]*?<\/\1>/g, '')
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&')
    .replaceAll(/\s+/g, ' ');

/** The readings of the rows of a page, by what was measured and where. */
export const readingsOn = (html: string): ReadonlyMap<string, string> =>
  new Map(
    [...html.matchAll(/<table [^>]*data-measure="([^"]+)">([\s\S]*?)<\/table>/g)].flatMap(
      ([, measure, table = '']) =>
        [...table.matchAll(/<tr data-position="([^"]+)">([\s\S]*?)<\/tr>/g)].map(
          ([, position, cells = '']) =>
            [`${measure} ${position}`, /<td class="figure">([^<]*)<\/td>/.exec(cells)?.[1] ?? ''] as const,
        ),
    ),
  );

/** A page of the board as the command writes it. */
export async function boardPageOf(folder: string, page: string): Promise<string> {
  const { err, exit } = await call(folder, ['report', '--all', '--to', 'board']);
  if (exit !== 0) throw new Error(`${exit}: ${err}`);
  return readFileSync(join(folder, 'board', page), 'utf8');
}

/** What another command writes as a page, and the Markdown of the same call: that something is open or different is no failure. */
export async function pageOf(
  folder: string,
  words: readonly string[],
): Promise<{ readonly html: string; readonly markdown: string }> {
  const formats = ['--format', 'html:page.html', '--format', 'markdown'];
  const { out, err, exit } = await call(folder, [...words, ...formats]);
  if (exit > 1) throw new Error(`${exit}: ${err}`);
  return { html: readFileSync(join(folder, 'page.html'), 'utf8'), markdown: out };
}

/** A sheet as the command writes it. */
export async function sheetOf(
  folder: string,
  words: readonly string[],
  name = 'sheet.html',
): Promise<string> {
  const { err, exit } = await call(folder, ['report', ...words, '--to', name]);
  if (exit !== 0) throw new Error(`${exit}: ${err}`);
  return readFileSync(join(folder, name), 'utf8');
}
