import type { Element } from '../element.ts';
import { type Described, frame, line, type Point, polygon, scale, words } from './marks.ts';

/** A journal from end to end: its diameters, their differences drawn far larger than the journal itself. */
export interface JournalPicture extends Described {
  readonly kind: 'journal';
  readonly stations: readonly {
    readonly name: string;
    readonly least: number;
    readonly greatest: number;
    readonly text: string;
  }[];
  readonly limits: readonly { readonly value: number; readonly text: string }[];
}

const WIDTH = 300;
const HEIGHT = 136;
const [LEFT, RIGHT] = [60, 180];
const MIDDLE = 50;
/** How far from the axis the smallest and the largest diameter of the picture are drawn. */
const [SMALLEST, LARGEST] = [18, 42];

export function drawJournal(picture: JournalPicture): Element {
  const { stations, limits } = picture;
  const diameters = [
    ...stations.flatMap(({ least, greatest }) => [least, greatest]),
    ...limits.map(({ value }) => value),
  ];
  const [smallest, largest] = [Math.min(...diameters), Math.max(...diameters)];
  const radius = scale(smallest, largest, SMALLEST, LARGEST);
  const x = scale(0, Math.max(1, stations.length - 1), LEFT, RIGHT);
  const place = (index: number): number => (stations.length === 1 ? (LEFT + RIGHT) / 2 : x(index));
  return frame(
    'journal',
    picture,
    { width: WIDTH, height: HEIGHT },
    profile(
      'profile',
      stations.map(({ greatest }, index) => [place(index), radius(greatest)] as const),
    ),
    profile(
      'profile least',
      stations.map(({ least }, index) => [place(index), radius(least)] as const),
    ),
    line('centre', LEFT - 12, MIDDLE, RIGHT + 12, MIDDLE),
    ...limits.flatMap(({ value, text }) => [
      line('wear-limit', LEFT - 8, MIDDLE - radius(value), RIGHT + 8, MIDDLE - radius(value)),
      line('wear-limit', LEFT - 8, MIDDLE + radius(value), RIGHT + 8, MIDDLE + radius(value)),
      words('figure', RIGHT + 12, MIDDLE - radius(value) + 4, 'start', text),
    ]),
    ...stations.flatMap(({ name, text }, index) => [
      words('name', place(index), HEIGHT - 32, 'middle', name),
      words('figure', place(index), HEIGHT - 20, 'middle', text),
    ]),
    words('name', 1, HEIGHT - 4, 'start', exaggerationText(smallest, largest)),
  );
}

/** Above and below the axis alike; a single station has no length, and gets a little. */
function profile(name: string, points: readonly Point[]): Element {
  const [only] = points;
  const ends: readonly Point[] =
    points.length === 1 && only !== undefined
      ? [
          [LEFT, only[1]],
          [RIGHT, only[1]],
        ]
      : points;
  return polygon(name, [
    ...ends.map(([x, radius]): Point => [x, MIDDLE - radius]),
    ...ends.toReversed().map(([x, radius]): Point => [x, MIDDLE + radius]),
  ]);
}

/** `differences drawn 900 times too large`: against a journal drawn as large as the largest diameter here. */
export function exaggerationText(smallest: number, largest: number): string {
  if (largest === smallest) return 'no difference between its diameters';
  const times = (LARGEST - SMALLEST) / (largest - smallest) / (LARGEST / largest);
  return `differences drawn ${Number(times.toPrecision(2))} times too large`;
}
