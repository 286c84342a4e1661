import { paintWith } from './paint.ts';
import type { TextStyle } from './textStyle.ts';

/** Text in a fence of a page: without colours, and as wide as a page shows without a bar to move it. */
export const onPage = (style: TextStyle): TextStyle => ({ ...style, paint: paintWith(0), width: 80 });
