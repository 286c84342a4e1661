import type { Line } from '../../escape/line.ts';
import type { TextStyle } from '../../terminal/textStyle.ts';

export type ShownLines = (style: TextStyle) => readonly Line[];
