import type { Element } from '../element.ts';
import { type Described, dot, frame, line, type Point, polyline, words } from './marks.ts';
import { type AxisEnds, BOTTOM, LEFT, plot, RIGHT, SIZE, TOP } from './plot.ts';

/** The film, or the flow, of one kind of bearing over its clearance, with the limits of that upright in it. */
export interface FilmPicture extends Described {
  readonly kind: 'film';
  readonly curve: readonly { readonly x: number; readonly y: number }[];
  /** As measured, each with how far its clearance may lie to either side. */
  readonly bearings: readonly {
    readonly x: number;
    readonly y: number;
    readonly uncertainty: number;
  }[];
  readonly limits: readonly { readonly x: number; readonly text: string }[];
  readonly x: AxisEnds;
  readonly y: AxisEnds;
}

export function drawFilm(picture: FilmPicture): Element {
  const { curve, bearings, limits, x: across, y: up } = picture;
  const { x, y, axes } = plot(across, up);
  return frame(
    'film',
    picture,
    SIZE,
    ...axes,
    // One below the other, so that names of limits that lie close can be read.
    ...limits.flatMap((limit, index) => [
      line('wear-limit', x(limit.x), TOP, x(limit.x), BOTTOM),
      isFarRight(x(limit.x))
        ? words('name', x(limit.x) - 2, BOTTOM - 4 - 9 * (index % 4), 'end', limit.text)
        : words('name', x(limit.x) + 2, BOTTOM - 4 - 9 * (index % 4), 'start', limit.text),
    ]),
    polyline(
      'course',
      curve.map((each): Point => [x(each.x), y(each.y)]),
    ),
    ...bearings.flatMap((each) => [
      line('whisker', x(each.x - each.uncertainty), y(each.y), x(each.x + each.uncertainty), y(each.y)),
      dot('reading', x(each.x), y(each.y)),
    ]),
  );
}

/** A name to the right of it would leave the picture. */
const isFarRight = (place: number): boolean => place > LEFT + (RIGHT - LEFT) * 0.7;
