import { note } from './document.ts';
import {
  AMOUNT_ITEM,
  about,
  amount,
  amountOrNothing,
  READING_SCALARS,
  type Schema,
  text,
} from './scalars.ts';
import { mapShape, named, type Properties, reference } from './shared.ts';

const POINT_HELP =
  'write a number, a number with its unit such as 82.495 mm, a range such as 0.003 to 0.004, under 0.004 or over 0.006, or ~; of a test write pass, fail or not done';

export const trace: Properties = {
  was: amountOrNothing(about('Was', 'What stood here before a slip was corrected.', 2.8374)),
  why: text(about('Why', 'Why it was corrected.', 'misread')),
};

/** Unlike the halves and ends below, these can stand at any point of a grid. */
const onePoint: Properties = {
  value: {
    ...about('Value', 'The reading, as the instrument showed it.', 3.2478, '82.495 mm', 'under 0.004'),
    anyOf: READING_SCALARS,
    errorMessage: POINT_HELP,
  },
  repeat: {
    ...about('Repeat', 'The same point measured several times over.', [3.2478, 3.2477, 3.2478]),
    type: 'array',
    minItems: 1,
    items: AMOUNT_ITEM,
    errorMessage: 'write a list of readings, such as [3.2478, 3.2477]',
  },
  go: amount(about('Go', 'The thickest feeler that goes in.', 0.017)),
  no_go: amount(about('No go', 'The thinnest feeler that does not.', 0.018)),
  ...trace,
  note,
};

const TOGETHER: Schema = {
  minProperties: 1,
  dependencies: { go: ['no_go'], no_go: ['go'], was: ['value'], why: ['was'] },
  errorMessage: 'give value, repeat, or go and no_go',
};

const point: Schema = {
  anyOf: [...READING_SCALARS, mapShape(onePoint, TOGETHER)],
  errorMessage: POINT_HELP,
};

const POINT: Schema = { $ref: '#/definitions/point' };

const part = (title: string, description: string, example: unknown): Schema =>
  reference(about(title, description, example), 'point');

const ROW: Schema = { type: 'array', minItems: 1, items: POINT };

/** All that can stand at one position: a point, points along it, rows of points, halves or ends. */
const positionWith = (anyOther: Schema | true): Schema => ({
  anyOf: [
    ...READING_SCALARS,
    {
      type: 'array',
      minItems: 1,
      items: {
        anyOf: [...READING_SCALARS, { $ref: '#/definitions/pointShape' }, ROW],
        errorMessage: POINT_HELP,
      },
    },
    mapShape(
      {
        ...onePoint,
        upper: part('Upper half', 'The upper shell.', 0.1247),
        lower: part('Lower half', 'The lower shell.', 0.1252),
        front: part('Front end', 'A strip at its widest, at the front end.', 0.003),
        rear: part('Rear end', 'A strip at its widest, at the rear end.', 0.004),
      },
      // Any other key is a coordinate, or told by the reader, which knows the layout.
      { ...TOGETHER, additionalProperties: anyOther },
    ),
  ],
  errorMessage: `${POINT_HELP}; or a list of them along the stations`,
});

/** Of two names along two axes the last leads to a reading. */
export const readingDefinitions: Properties = {
  point,
  pointShape: mapShape(onePoint, TOGETHER),
  position: positionWith(true),
  positionAt: positionWith({ $ref: '#/definitions/position' }),
};

export const at: Schema = named(
  about(
    'At',
    'A position and what was read there: a point, a list along the stations, or rows. Of what has two names, such as a ring of a cylinder, one below the other or in one key.',
    { 1: 3.2478, 2: [3.2475, 3.2476] },
    { 1: { top: 0.016, second: 0.018 } },
  ),
  { $ref: '#/definitions/positionAt' },
);
