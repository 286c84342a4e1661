import { paintWith } from './paint.ts';
import type { TextStyle } from './textStyle.ts';

/** A page of a printer, and a terminal, have this many columns. */
export const PAGE = 80;

/** Text in a fence of a page: without colours, and as wide as a page shows without a bar to move it. */
export const onPage = (style: TextStyle): TextStyle => ({ ...style, paint: paintWith(0), width: PAGE });
