import { writtenLines } from '../../escape/line.ts';
import type { Writer } from '../../formats.ts';
import { pageLines } from '../pageText.ts';
import type { ShownPage } from './shownPage.ts';

export const text: Writer<ShownPage> = ({ page }, { style }) => writtenLines(pageLines(page, style));
