import type { Layout, Position } from '../../torque/order/layouts.ts';
import { numbersOfOrder } from '../../torque/order/orders.ts';
import { widthOf } from '../terminal/width.ts';
import { drawCircle } from './circleDrawing.ts';
import type { DrawnFastener } from './drawnFastener.ts';
import { drawGrid } from './gridDrawing.ts';

export interface JointToDraw {
  readonly kind: Layout['kind'];
  /** Names are shown as they are: hidden characters must have been made visible before. */
  readonly positions: readonly Position[];
  /** Names in the order they are tightened. */
  readonly order: readonly string[];
  /** Columns there are; meant for 60 to 120. */
  readonly width: number;
}

/**
 * The joint seen from above, in lines of characters: `(1)` is tightened first. Names stand with the numbers
 * where there is room, else in a list below; a joint with no room at all is the list alone. Not to scale, but
 * for circles: rows and columns keep their order. ASCII, with `─` for edges and `·` for what lies behind.
 */
export function drawJoint({ kind, positions, order, width }: JointToDraw): readonly string[] {
  const [inBrackets, alone] = [numbered(positions, order, true), numbered(positions, order, false)];
  const list = listInOrder(inBrackets, order, width);
  if (kind === 'circle') {
    const named = drawCircle(inBrackets, width, true);
    if (named !== undefined) return [...named, BESIDE];
    return [...(drawCircle(inBrackets, width, false) ?? []), ...list];
  }
  const named = drawGrid(inBrackets, width, kind, true);
  if (named !== undefined) return [...named, BELOW];
  const bare = drawGrid(inBrackets, width, kind, false) ?? drawGrid(alone, width, kind, false);
  return [...(bare ?? []), ...list];
}

const BELOW = "(1) is tightened first; below it is the fastener's name";
const BESIDE = "(1) is tightened first; beside it is the fastener's name";

function numbered(
  positions: readonly Position[],
  order: readonly string[],
  brackets: boolean,
): readonly DrawnFastener[] {
  const numbers = numbersOfOrder(order);
  return positions.map((each) => {
    const number = `${numbers.get(each.name) ?? '-'}`;
    return { ...each, number: brackets ? `(${number})` : number };
  });
}

/** Fasteners that the order leaves out come last. */
function listInOrder(
  fasteners: readonly DrawnFastener[],
  order: readonly string[],
  width: number,
): readonly string[] {
  const place = numbersOfOrder(order);
  const placeOf = ({ name }: DrawnFastener): number => place.get(name) ?? order.length + 1;
  const inOrder = [...fasteners].sort((a, b) => placeOf(a) - placeOf(b));
  return wrap(
    inOrder.map(({ number, name }) => `${number} ${name}`),
    width,
  );
}

/** Items two blanks apart, in lines no wider than there is room; an item that is wider by itself is cut. */
function wrap(items: readonly string[], width: number): readonly string[] {
  const lines: string[] = [];
  for (const item of items.map((each) => cut(each, width))) {
    const line = lines.at(-1);
    const joined = `${line}  ${item}`;
    if (line !== undefined && widthOf(joined) <= width) lines.splice(-1, 1, joined);
    else lines.push(item);
  }
  return lines;
}

function cut(text: string, width: number): string {
  if (widthOf(text) <= width) return text;
  let kept = '';
  for (const character of text) {
    if (widthOf(kept + character) >= width) break;
    kept += character;
  }
  return `${kept}·`;
}
