import { md, writtenMarkdown } from '../../escape/markdown.ts';
import type { Writer } from '../../formats.ts';
import { pageMarkdown } from '../../plan/pageMarkdown.ts';
import type { ShownPages } from './shownPages.ts';

export const markdown: Writer<ShownPages> = ({ pagesFor }) =>
  writtenMarkdown(
    pagesFor('each customer').flatMap((page, index) => [
      ...(index === 0 ? [] : [md`---`]),
      ...pageMarkdown(page),
    ]),
  );
