import type { Paint } from './paint.ts';
import type { Glyphs } from './picture.ts';

/** How text is laid out; the shell looks at the terminal and says. */
export interface TextStyle {
  readonly paint: Paint;
  /** Columns to fill at most; Infinity where nothing has to fit. */
  readonly width: number;
  readonly glyphs: Glyphs;
  readonly detail: boolean;
}
