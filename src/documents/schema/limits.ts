import { ownCharacteristics } from './characteristic.ts';
import { document, note, source } from './document.ts';
import { PATTERNS } from './patterns.ts';
import { choices } from './planning/choices.ts';
import { about, amount, choice, date, RANGE_TEXT, type Schema, text } from './scalars.ts';
import { keyedByCharacteristic, map, mapShape, named, type Offered, type Properties } from './shared.ts';

export const limitsSchema = (offered: readonly Offered[]): Schema =>
  document(
    'limits',
    { title: 'Limits', description: 'The limits readings are judged by, and where they come from.' },
    {
      source,
      temperature: heldAt,
      from: date(
        about(
          'From',
          'The day from which these limits hold: of one folder the latest edition not after a session judges it.',
          '2026-01-01',
        ),
      ),
      extends: text(
        about(
          'Extends',
          'The path of limits that these stand upon and override.',
          '../../limits/family.yaml',
        ),
      ),
      characteristics: ownCharacteristics,
      limits: limits(offered),
      ...choices,
    },
    ['source'],
    {
      band,
      bandsOnly,
      entryLast: entryWith(true),
      entryAt: entryWith(orNoMap({ $ref: '#/definitions/entryLast' })),
    },
  );

const bound = (title: string, description: string, example: unknown): Schema => ({
  ...about(title, `${description} In the document's units, or with its own unit.`, example, {
    formula: '0.0005 * bore',
  }),
  anyOf: [
    { type: 'number' },
    { type: 'string', pattern: PATTERNS.withUnit },
    mapShape(
      {
        formula: text(
          about('Formula', 'Worked out of nominal sizes and readings at the same position.', '0.0005 * bore'),
        ),
      },
      { required: ['formula'] },
    ),
  ],
  errorMessage: 'write a number, a number with its unit such as 0.0635 mm, or { formula: "0.0005 * bore" }',
});

const band: Schema = {
  anyOf: [
    mapShape(
      {
        min: bound('Least', 'The least that is inside.', 0.002),
        max: bound('Greatest', 'The greatest that is inside.', 0.0038),
      },
      { minProperties: 1, errorMessage: 'give min, max or both' },
    ),
    RANGE_TEXT,
  ],
  errorMessage: 'write { min: 0.0020, max: 0.0038 }, one of the two alone, or 0.0020 to 0.0038',
};

const bandCalled = (title: string, description: string): Schema => ({
  ...about(title, description, { min: 0.002, max: 0.0038 }, '0.0020 to 0.0038'),
  allOf: [{ $ref: '#/definitions/band' }],
});

const bands: Properties = {
  target: bandCalled('Target', 'What this builder aims for; never fails a check.'),
  new: bandCalled('New', 'Sizes and fits of new parts.'),
  wear: bandCalled('Wear limit', 'Beyond it the part is not to be used again.'),
  source,
  note,
};

const heldAt = amount(
  about(
    'Temperature',
    'The temperature at which the figures hold, as a gauge reads there: readings are converted to it. Without it 20 degC.',
    '70 degF',
  ),
);

const bandsOnly: Schema = mapShape(bands);

const last = (title: string, description: string, example: number): Schema =>
  amount(about(title, `${description} It never moves with a size grade.`, example));

/** In general, and at positions of their own. */
const entry: Properties = {
  ...bands,
  temperature: heldAt,
  last_size: last('Last size', 'The least that a journal may be, however often it was ground.', 2.44),
  largest_bore: last('Largest bore', 'The most that a bore may be, however often it was bored.', 4.185),
  least_thickness: last('Least thickness', 'The least that a part may be thick.', 4.715),
  sizes: {
    ...about('Size grades', 'The limits of under and oversize parts, as makers print them.', {
      '0.010 under': { new: '3.2375 to 3.2385' },
    }),
    type: 'object',
    additionalProperties: false,
    patternProperties: { [PATTERNS.grade]: { $ref: '#/definitions/bandsOnly' } },
  },
  usual: map(
    about(
      'Usual',
      'How such parts measure as a rule, before any is measured: `explain` weighs the risk of a verdict by it.',
      { mean: 3.248, deviation: 0.0002 },
    ),
    {
      mean: amount(about('Mean', 'Of such parts.', 3.248)),
      deviation: amount(about('Deviation', 'One standard deviation of such parts.', 0.0002)),
    },
    { required: ['mean', 'deviation'] },
  ),
  per: amount(
    about(
      'Per',
      'The length that the limit is meant for: of a taper, or of flatness within any such length of a face.',
      '1 in',
    ),
  ),
  by: choice(about('Taper by', 'ends is one end minus the other; range is greatest minus least.', 'ends'), [
    'ends',
    'range',
  ]),
};

/** Any other key is a coordinate, or told by the reader, which knows how many there are. */
const entryWith = (anyOther: Schema | true): Schema => mapShape(entry, { additionalProperties: anyOther });

/** What is no map can be no coordinate: the reader tells it. */
const orNoMap = (map: Schema): Schema => ({
  anyOf: [map, ...['string', 'number', 'boolean', 'null', 'array'].map((type) => ({ type }))],
  errorMessage: 'write target, new or wear',
});

const limit: Schema = mapShape({
  ...entry,
  at: named(
    about('At', 'Positions with limits of their own; they replace the general ones band by band.', {
      5: { target: { min: 0.0024, max: 0.0032 } },
    }),
    { $ref: '#/definitions/entryAt' },
  ),
});

const limits = (offered: readonly Offered[]): Schema =>
  keyedByCharacteristic(
    about('Limits', 'A characteristic and its bands: target, new, wear.', {
      main_bearing_clearance: { new: { min: 0.002, max: 0.0038 }, wear: { max: 0.005 } },
    }),
    offered,
    limit,
  );
