import type { Element } from '../element.ts';
import { type Described, dot, frame, line, type Point, polyline, scale, words } from './marks.ts';
import type { AxisEnds } from './trend.ts';

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

const WIDTH = 320;
const HEIGHT = 150;
const [LEFT, RIGHT, TOP, BOTTOM] = [56, 312, 14, 122];

export function drawFilm(picture: FilmPicture): Element {
  const { curve, bearings, limits, x: across, y: up } = picture;
  const x = scale(across.from, across.to, LEFT + 6, RIGHT - 6);
  const y = scale(up.from, up.to, BOTTOM - 6, TOP + 6);
  return frame(
    'film',
    picture,
    { width: WIDTH, height: HEIGHT },
    line('axis', LEFT, BOTTOM, RIGHT, BOTTOM),
    line('axis', LEFT, TOP, LEFT, BOTTOM),
    words('figure', LEFT - 4, BOTTOM - 3, 'end', up.fromText),
    words('figure', LEFT - 4, TOP + 9, 'end', up.toText),
    words('name', LEFT, BOTTOM + 13, 'start', across.fromText),
    words('name', RIGHT, BOTTOM + 13, 'end', across.toText),
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
