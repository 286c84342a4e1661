import { withGaps, writtenLines } from '../../escape/line.ts';
import type { Writer } from '../../formats.ts';
import { pageLines } from '../../plan/pageText.ts';
import type { ShownPages } from './shownPages.ts';

export const text: Writer<ShownPages> = ({ pagesFor }, { style }) =>
  writtenLines(withGaps(pagesFor('the shop').map((page) => pageLines(page, style))));
