import { writtenLines } from '../../escape/line.ts';
import type { Writer } from '../../formats.ts';
import type { ShownLines } from './shownLines.ts';

export const text: Writer<ShownLines> = (linesIn, { style }) => writtenLines(linesIn(style));
