import type { Element } from '../element.ts';
import {
  clamp,
  type Described,
  dot,
  frame,
  line,
  type Point,
  polygon,
  polyline,
  scale,
  words,
} from './marks.ts';

export interface Ends {
  readonly least: number;
  readonly greatest: number;
}

export interface Sides {
  readonly min?: number | undefined;
  readonly max?: number | undefined;
}

/** Where a reading lies among its limits, and where it lay before: all in one unit. */
export interface BandPicture extends Described {
  readonly kind: 'band';
  readonly reading: Ends | undefined;
  readonly before: Ends | undefined;
  /** Expanded; 0 where nothing is known of it. */
  readonly uncertainty: number;
  readonly fresh: Sides | undefined;
  readonly target: Sides | undefined;
  readonly wear: Sides | undefined;
  /** Where a side that nothing limits is drawn to. */
  readonly openTo: number;
  /** How far it lies beyond its limit, in the trade's words. */
  readonly distance: string;
}

const WIDTH = 160;
const HEIGHT = 24;
const BASE = 14;
/** Below the line of the limits, so that the two stand apart. */
const WHISKER = 21;
/** Room beyond the outer limits, in which a reading past them is still drawn to scale. */
const MARGIN = 28;
const EDGE = 5;

/** A thin line for new parts, a thick one for the target, a stroke at each limit; dots for the readings. */
export function drawBand(picture: BandPicture): Element {
  const place = placesOf(picture);
  const { fresh, target, wear, reading, before, uncertainty, distance } = picture;
  return frame(
    'band',
    picture,
    { width: WIDTH, height: HEIGHT },
    line('usable', place(wear?.min ?? fresh?.min, 'low'), BASE, place(wear?.max ?? fresh?.max, 'high'), BASE),
    fresh && line('fresh', place(fresh.min, 'low'), BASE, place(fresh.max, 'high'), BASE),
    target && line('target', place(target.min, 'low'), BASE, place(target.max, 'high'), BASE),
    ...strokes('fresh-limit', fresh, 4, place),
    ...strokes('wear-limit', wear, 7, place),
    ...(before === undefined || isSame(before, reading) ? [] : beforeMarks(before, reading, place)),
    ...(reading === undefined ? [] : readingMarks(reading, uncertainty, distance, place)),
  );
}

/** What did not change lies below its reading, and shows nothing. */
const isSame = (before: Ends, reading: Ends | undefined): boolean =>
  before.least === reading?.least && before.greatest === reading.greatest;

type Place = (value: number | undefined, open: 'low' | 'high') => number;

/** The outer limits stand at the same places in every row, so that eyes compare down a column. */
function placesOf({ fresh, wear, openTo }: BandPicture): Place {
  const min = least([wear?.min, fresh?.min]);
  const max = greatest([wear?.max, fresh?.max]);
  const at = scale(
    min ?? openTo,
    max ?? openTo,
    min === undefined ? EDGE : MARGIN,
    max === undefined ? WIDTH - EDGE : WIDTH - MARGIN,
  );
  return (value, open) => (value === undefined ? (open === 'low' ? 0 : WIDTH) : at(value));
}

const least = (values: readonly (number | undefined)[]): number | undefined => {
  const known = values.filter((each) => each !== undefined);
  return known.length === 0 ? undefined : Math.min(...known);
};

const greatest = (values: readonly (number | undefined)[]): number | undefined => {
  const known = values.filter((each) => each !== undefined);
  return known.length === 0 ? undefined : Math.max(...known);
};

const strokes = (name: string, sides: Sides | undefined, half: number, place: Place): readonly Element[] =>
  [sides?.min, sides?.max].flatMap((value) => {
    if (value === undefined) return [];
    const x = place(value, 'low');
    return [line(name, x, BASE - half, x, BASE + half)];
  });

const withinPicture = (x: number): number => clamp(x, 0, WIDTH);

const inside = (x: number): number => clamp(x, EDGE, WIDTH - EDGE);

function beforeMarks(before: Ends, reading: Ends | undefined, place: Place): readonly Element[] {
  const [from, to] = [inside(place(before.least, 'low')), inside(place(before.greatest, 'high'))];
  const now = reading === undefined ? [] : [inside(place((reading.least + reading.greatest) / 2, 'low'))];
  return [
    ...now.map((x) => line('change', (from + to) / 2, BASE, x, BASE)),
    ...(to - from < 1 ? [] : [line('before-range', from, BASE, to, BASE)]),
    dot('before', from, BASE, 2.5),
    ...(to - from < 1 ? [] : [dot('before', to, BASE, 2.5)]),
  ];
}

function readingMarks(
  { least, greatest }: Ends,
  uncertainty: number,
  distance: string,
  place: Place,
): readonly Element[] {
  const [from, to] = [place(least, 'low'), place(greatest, 'high')];
  const [low, high] = [place(least - uncertainty, 'low'), place(greatest + uncertainty, 'high')].map(inside);
  return [
    ...(uncertainty > 0 && low !== undefined && high !== undefined ? whisker(low, high) : []),
    ...(to - from < 1 ? [] : [line('range', inside(from), BASE, inside(to), BASE)]),
    ...[...new Set([from, to].map(withinPicture))].map((x) =>
      inside(x) === x ? dot('reading', x, BASE) : arrow(x),
    ),
    ...(distance === '' || [from, to].every((x) => inside(x) === x)
      ? []
      : [distanceWords(from, to, distance)]),
  ];
}

/** One level line, with a stroke across at each end. */
const whisker = (low: number, high: number): readonly Element[] => {
  const end = (x: number): readonly Point[] => [
    [x, WHISKER - 2],
    [x, WHISKER + 2],
    [x, WHISKER],
  ];
  return [polyline('whisker', [...end(low), ...end(high).toReversed()])];
};

/** What lies beyond the edge of the picture. */
function arrow(x: number): Element {
  const [tip, back] = x > WIDTH / 2 ? [WIDTH, WIDTH - 7] : [0, 7];
  return polygon('beyond', [
    [tip, BASE],
    [back, BASE - 4],
    [back, BASE + 4],
  ]);
}

/** Above the end that lies out. */
const distanceWords = (from: number, to: number, text: string): Element =>
  to > WIDTH / 2 && to > WIDTH - from
    ? words('figure', WIDTH - 1, 8, 'end', text)
    : words('figure', 1, 8, 'start', text);
