import type { Element } from '../element.ts';
import { box, type Described, dot, frame, scale, words } from './marks.ts';

/** The fasteners of a joint where they are, seen from above, with the order in which they are tightened. */
export interface JointPicture extends Described {
  readonly kind: 'joint';
  readonly form: 'row' | 'caps' | 'head' | 'circle';
  readonly fasteners: readonly {
    readonly name: string;
    readonly x: number;
    readonly y: number;
    /** Undefined where the order leaves it out. */
    readonly order: number | undefined;
  }[];
}

/** Places beside each other, before they touch. */
const APART = { across: 44, down: 42 };
const EDGE = 24;
const WIDEST = 420;
const ROUND = 200;

export function drawJoint(picture: JointPicture): Element {
  const { fasteners, form } = picture;
  const [xs, ys] = [fasteners.map(({ x }) => x), fasteners.map(({ y }) => y)];
  const size = form === 'circle' ? { width: ROUND, height: ROUND } : sizeOf(xs, ys);
  const x = scale(Math.min(...xs), Math.max(...xs), EDGE, size.width - EDGE);
  const y = scale(Math.min(...ys), Math.max(...ys), EDGE, size.height - EDGE - 8);
  return frame(
    'joint',
    picture,
    size,
    form === 'circle'
      ? dot('outline', ROUND / 2, (ROUND - 8) / 2, ROUND / 2 - EDGE - 2)
      : outlines(form, xs, x, size),
    ...fasteners.flatMap((each) => [
      dot('fastener', x(each.x), y(each.y), 11),
      words('order', x(each.x), y(each.y) + 4, 'middle', each.order === undefined ? '–' : `${each.order}`),
      words('name', x(each.x), y(each.y) + 22, 'middle', each.name),
    ]),
  );
}

const sizeOf = (xs: readonly number[], ys: readonly number[]) => {
  const [columns, rows] = [new Set(xs).size, new Set(ys).size];
  return {
    width: Math.min(WIDEST, 2 * EDGE + APART.across * Math.max(1, columns - 1)),
    height: 2 * EDGE + 8 + APART.down * Math.max(0, rows - 1),
  };
};

/** Caps are framed one by one, anything else as a whole. */
const outlines = (
  form: JointPicture['form'],
  xs: readonly number[],
  x: (value: number) => number,
  { width, height }: { readonly width: number; readonly height: number },
): readonly Element[] =>
  form === 'caps'
    ? [...new Set(xs)].map((each) => box('outline', x(each) - 17, 4, { width: 34, height: height - 6 }))
    : [box('outline', 2, 2, { width: width - 4, height: height - 4 })];
