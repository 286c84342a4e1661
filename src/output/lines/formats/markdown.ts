import { codeBlock, writtenMarkdown } from '../../escape/markdown.ts';
import type { Writer } from '../../formats.ts';
import { onPage } from '../../terminal/onPage.ts';
import type { ShownLines } from './shownLines.ts';

/** In Markdown they stand as they are printed, since columns have to stay below each other. */
export const markdown: Writer<ShownLines> = (linesIn, { style }) =>
  writtenMarkdown([codeBlock(linesIn(onPage(style)))]);
