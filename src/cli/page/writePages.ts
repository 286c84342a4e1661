import { json, spreadJson, writtenJson } from '../../output/escape/json.ts';
import type { Written } from '../../output/escape/language.ts';
import { withGaps, writtenLines } from '../../output/escape/line.ts';
import { md, writtenMarkdown } from '../../output/escape/markdown.ts';
import { pagesJson } from '../../output/page/pagesJson.ts';
import type { Page } from '../../output/plan/page.ts';
import { pageMarkdown } from '../../output/plan/pageMarkdown.ts';
import { pageLines } from '../../output/plan/pageText.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import type { PageFormat } from './pageFormats.ts';

/** Pages in any of the ways in which they can be printed. */
export function writePages(
  name: string,
  pages: readonly Page[],
  format: PageFormat,
  exit: 0 | 2,
  world: World,
): Written {
  switch (format) {
    case 'text': {
      const style = textStyle(world.out, world.environment, false);
      return writtenLines(withGaps(pages.map((page) => pageLines(page, style))));
    }
    case 'markdown':
      return writtenMarkdown(
        pages.flatMap((page, index) => [...(index === 0 ? [] : [md`---`]), ...pageMarkdown(page)]),
      );
    case 'json':
      return writtenJson(json`${spreadJson(pagesJson(name, pages, exit))}\n`);
  }
}
