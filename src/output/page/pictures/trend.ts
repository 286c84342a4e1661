import type { Element } from '../element.ts';
import { clamp, type Described, dot, frame, line, type Point, polygon, polyline, words } from './marks.ts';
import { type AxisEnds, BOTTOM, LEFT, plot, RIGHT, SIZE, TOP } from './plot.ts';

/** Readings over hours or days, one line for each part that was fitted. */
export interface TrendPicture extends Described {
  readonly kind: 'trend';
  readonly lines: readonly TrendPictureLine[];
  readonly limits: readonly { readonly y: number; readonly text: string }[];
  /** When the limit is reached: an interval, never a point. */
  readonly forecast: { readonly from: number; readonly to: number; readonly text: string } | undefined;
  readonly x: AxisEnds;
  readonly y: AxisEnds;
}

export interface TrendPictureLine {
  readonly points: readonly { readonly x: number; readonly y: number; readonly uncertainty: number }[];
  /** The fitted line and its band, from left to right; empty where none is drawn. */
  readonly course: readonly {
    readonly x: number;
    readonly y: number;
    readonly lower: number;
    readonly upper: number;
  }[];
  /** What began it: the part was replaced or machined. */
  readonly startedBy: string | undefined;
}

export function drawTrend(picture: TrendPicture): Element {
  const { lines, limits, forecast, x: across, y: up } = picture;
  const { x, y, axes } = plot(across, up);
  return frame(
    'trend',
    picture,
    SIZE,
    ...axes,
    ...lines.flatMap((each, index) => lineMarks(each, index, x, y)),
    ...limits.flatMap((limit) => [
      line('wear-limit', LEFT, y(limit.y), RIGHT, y(limit.y)),
      words('figure', RIGHT, y(limit.y) - 3, 'end', limit.text),
    ]),
    ...(forecast === undefined ? [] : forecastMarks(forecast, x)),
  );
}

type Scale = (value: number) => number;

const lineMarks = (
  { points, course, startedBy }: TrendPictureLine,
  index: number,
  x: Scale,
  y: Scale,
): readonly Element[] => [
  ...(course.length < 2 ? [] : courseMarks(course, x, y)),
  ...(startedBy === undefined || index === 0 ? [] : startMarks(points[0]?.x ?? 0, startedBy, x)),
  ...points.flatMap((each) => [
    ...(each.uncertainty > 0
      ? [
          line(
            'whisker',
            x(each.x),
            inside(y(each.y - each.uncertainty)),
            x(each.x),
            inside(y(each.y + each.uncertainty)),
          ),
        ]
      : []),
    dot('reading', x(each.x), y(each.y)),
  ]),
];

const inside = (y: number): number => clamp(y, TOP, BOTTOM);

const courseMarks = (course: TrendPictureLine['course'], x: Scale, y: Scale): readonly Element[] => [
  polygon('course-band', [
    ...course.map((each): Point => [x(each.x), inside(y(each.upper))]),
    ...course.toReversed().map((each): Point => [x(each.x), inside(y(each.lower))]),
  ]),
  polyline(
    'course',
    course.map((each): Point => [x(each.x), inside(y(each.y))]),
  ),
];

const startMarks = (at: number, text: string, x: Scale): readonly Element[] => [
  line('start', x(at) - 5, TOP, x(at) - 5, BOTTOM),
  words('name', x(at) - 2, TOP + 8, 'start', text),
];

/** On the axis; with an arrow where it reaches beyond the picture. */
const forecastMarks = (
  { from, to, text }: NonNullable<TrendPicture['forecast']>,
  x: Scale,
): readonly Element[] => {
  const [start, end] = [clamp(x(from), LEFT, RIGHT), clamp(x(to), LEFT, RIGHT)];
  return [
    line('forecast', start, BOTTOM, end, BOTTOM),
    ...(x(to) > RIGHT
      ? [
          polygon('beyond', [
            [SIZE.width, BOTTOM],
            [RIGHT, BOTTOM - 5],
            [RIGHT, BOTTOM + 5],
          ]),
        ]
      : []),
    words('name', RIGHT, SIZE.height - 5, 'end', text),
  ];
};
