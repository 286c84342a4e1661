import { about, choice, count, type Schema, words } from './scalars.ts';

const NAME: readonly Schema[] = [{ type: 'string' }, { type: 'number' }, { type: 'null' }];

const place: Schema = {
  anyOf: [
    ...NAME,
    { type: 'array', items: { anyOf: NAME, errorMessage: 'write a name, or ~ for an empty place' } },
  ],
  errorMessage: 'write a name, ~ for an empty place, or a row of names',
};

const caps: Schema = {
  ...about(
    'Caps',
    'How many caps stand one behind the other, or the names cap by cap from left to right.',
    5,
    [
      ['1L', '1R'],
      ['2L', '2R'],
    ],
  ),
  anyOf: [
    { type: 'integer', minimum: 1, maximum: 100 },
    {
      type: 'array',
      minItems: 1,
      items: words(about('Cap', 'Its fasteners from left to right.', ['1L', '1R'])),
    },
  ],
  errorMessage: 'write how many caps there are, or a list of names for each',
};

const circle: Schema = {
  ...about(
    'Circle',
    'How many stand round a circle, or their names, from the top clockwise.',
    8,
    [1, 2, 3, 4],
  ),
  anyOf: [
    { type: 'integer', minimum: 1, maximum: 100 },
    words(about('Names', 'In turn round the circle.', [1, 2, 3, 4])),
  ],
  errorMessage: 'write how many there are, or their names in turn',
};

/** Where fasteners stand: written out as they are seen from above, or counted. */
export const positions: Schema = {
  ...about(
    'Positions',
    'Where the fasteners sit, seen from above, for a drawing and a generated order: a row, rows, caps, or a circle.',
    [
      ['1L', '2L'],
      ['1R', '2R'],
    ],
    { caps: 5, each_cap: 2 },
    { rows: 2, columns: 5 },
    { circle: [1, 2, 3, 4, 5, 6] },
  ),
  anyOf: [
    { type: 'array', minItems: 1, items: place },
    {
      type: 'object',
      additionalProperties: false,
      minProperties: 1,
      properties: {
        caps,
        each_cap: choice(about('Each cap', 'How many fasteners a cap has.', 2), [2, 4, 6]),
        row: count(about('Row', 'How many stand in one straight row.', 9)),
        rows: count(about('Rows', 'How many rows a head has along it.', 2)),
        columns: count(about('Columns', 'How many stand in each row.', 5)),
        circle,
      },
    },
  ],
  errorMessage:
    'write rows of names such as [[1L, 2L], [1R, 2R]], or { caps: 5, each_cap: 2 }, { rows: 2, columns: 5 }, { row: 9 }, { circle: 8 }',
};
