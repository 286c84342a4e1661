import { json, spreadJson, writtenJson } from '../../output/escape/json.ts';
import type { Written } from '../../output/escape/language.ts';
import { withGaps, writtenLines } from '../../output/escape/line.ts';
import { md, writtenMarkdown } from '../../output/escape/markdown.ts';
import { pagesJson } from '../../output/page/pagesJson.ts';
import type { Page } from '../../output/plan/page.ts';
import { pageMarkdown } from '../../output/plan/pageMarkdown.ts';
import { pageLines } from '../../output/plan/pageText.ts';
import type { TextStyle } from '../../output/terminal/textStyle.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/outputs.ts';
import { PAGE_FORMATS, type PageFormat } from './pageFormats.ts';

/** Pages in every format of a call, each whole; a format may ask for pages of its own. */
export function printPages(
  name: string,
  pagesFor: (format: PageFormat) => readonly Page[],
  { format: choices, exit }: { readonly format: readonly FormatChoice[]; readonly exit: 0 | 2 },
  world: World,
): number {
  printFormats(choices, world, (word, style) => {
    const format = PAGE_FORMATS.find((each) => each === word) ?? 'text';
    return writtenPages(name, pagesFor(format), format, exit, style);
  });
  return exit;
}

function writtenPages(
  name: string,
  pages: readonly Page[],
  format: PageFormat,
  exit: 0 | 2,
  style: TextStyle,
): Written {
  switch (format) {
    case 'text':
      return writtenLines(withGaps(pages.map((page) => pageLines(page, style))));
    case 'markdown':
      return writtenMarkdown(
        pages.flatMap((page, index) => [...(index === 0 ? [] : [md`---`]), ...pageMarkdown(page)]),
      );
    case 'json':
      return writtenJson(json`${spreadJson(pagesJson(name, pages, exit))}\n`);
  }
}
