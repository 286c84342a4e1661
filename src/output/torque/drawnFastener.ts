import type { Position } from '../../torque/order/layouts.ts';
import { widthOf } from '../terminal/width.ts';

/** A fastener with what the drawing writes at its place. */
export interface DrawnFastener extends Position {
  /** Its place in the order: `(3)`, or `3` where there is little room; `-` when the order leaves it out. */
  readonly number: string;
}

/** The widest of some texts, in columns of the terminal. */
export const widest = (texts: readonly string[]): number => Math.max(...texts.map((text) => widthOf(text)));
