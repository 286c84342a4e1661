import type { Element } from '../element.ts';
import { line, type Size, scale, words } from './marks.ts';

export interface AxisEnds {
  readonly from: number;
  readonly to: number;
  readonly fromText: string;
  readonly toText: string;
}

export const SIZE: Size = { width: 320, height: 154 };

/** Where the axes of a plot lie. */
export const [LEFT, RIGHT, TOP, BOTTOM] = [56, 312, 14, 122] as const;

/** The places of numbers between two axes, and the axes with what stands at their ends. */
export const plot = (across: AxisEnds, up: AxisEnds) => ({
  x: scale(across.from, across.to, LEFT + 6, RIGHT - 6),
  y: scale(up.from, up.to, BOTTOM - 6, TOP + 6),
  axes: [
    line('axis', LEFT, BOTTOM, RIGHT, BOTTOM),
    line('axis', LEFT, TOP, LEFT, BOTTOM),
    words('figure', LEFT - 4, BOTTOM - 3, 'end', up.fromText),
    words('figure', LEFT - 4, TOP + 9, 'end', up.toText),
    words('name', LEFT, BOTTOM + 13, 'start', across.fromText),
    words('name', RIGHT, BOTTOM + 13, 'end', across.toText),
  ] satisfies readonly Element[],
});
