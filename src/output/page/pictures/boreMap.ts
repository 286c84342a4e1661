import type { Element } from '../element.ts';
import { box, clamp, type Described, frame, line, words } from './marks.ts';

/** A bore as it was gone over: stations down, directions across. */
export interface BoreMapPicture extends Described {
  readonly kind: 'bore map';
  readonly stations: readonly string[];
  readonly directions: readonly string[];
  /** A row a station; undefined where nothing was read. */
  readonly fields: readonly (readonly (BoreField | undefined)[])[];
  /** The shade goes from the largest new bore to the wear limit. */
  readonly fresh: number;
  readonly worn: number;
  /** Greatest, least, taper and out of round. */
  readonly margin: readonly string[];
}

export interface BoreField {
  readonly value: number;
  readonly text: string;
  readonly isOut: boolean;
}

const FIELD = { width: 66, height: 22 };
const LEFT = 54;
const TOP = 18;
/** Five greys that a photocopier keeps apart. */
const SHADES = 5;

export function drawBoreMap(picture: BoreMapPicture): Element {
  const { stations, directions, fields, fresh, worn, margin } = picture;
  const right = LEFT + directions.length * FIELD.width;
  const height = TOP + Math.max(stations.length * FIELD.height, margin.length * 14) + 4;
  return frame(
    'bore-map',
    picture,
    { width: right + 122, height },
    ...directions.map((name, index) =>
      words('name', LEFT + (index + 0.5) * FIELD.width, TOP - 6, 'middle', name),
    ),
    ...stations.map((name, index) =>
      words('name', LEFT - 6, TOP + (index + 0.5) * FIELD.height + 4, 'end', name),
    ),
    ...fields.flatMap((row, down) =>
      row.flatMap((field, across) =>
        fieldMarks(field, LEFT + across * FIELD.width, TOP + down * FIELD.height, (value) =>
          shadeOf(value, fresh, worn),
        ),
      ),
    ),
    ...margin.map((text, index) => words('figure', right + 8, TOP + 12 + index * 14, 'start', text)),
  );
}

const fieldMarks = (
  field: BoreField | undefined,
  x: number,
  y: number,
  shade: (value: number) => number,
): readonly Element[] =>
  field === undefined
    ? [box('field empty', x, y, FIELD)]
    : [
        box(`field shade-${shade(field.value)}`, x, y, FIELD),
        ...(field.isOut ? hatching(x, y) : []),
        words('figure', x + FIELD.width / 2, y + FIELD.height / 2 + 4, 'middle', field.text),
      ];

/** None up to what a new bore may be, the darkest at the wear limit. */
export const shadeOf = (value: number, fresh: number, worn: number): number =>
  worn === fresh
    ? value > fresh
      ? SHADES - 1
      : 0
    : clamp(Math.ceil(((value - fresh) / (worn - fresh)) * (SHADES - 1)), 0, SHADES - 1);

/** Strokes in the corners, so that the figure between them can be read. */
const hatching = (x: number, y: number): readonly Element[] =>
  [5, 10, 15].flatMap((reach) => [
    line('hatch', x, y + reach, x + reach, y),
    line('hatch', x + FIELD.width - reach, y + FIELD.height, x + FIELD.width, y + FIELD.height - reach),
  ]);
