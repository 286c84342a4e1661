import {
  AMOUNT_ITEM,
  AMOUNT_OR_NOTHING,
  about,
  amount,
  amountOrNothing,
  choice,
  date,
  PATTERNS,
  READING_SCALARS,
  type Schema,
  text,
  word,
  wordOrWords,
  words,
} from './scalars.ts';
import {
  by,
  directions,
  map,
  mapShape,
  named,
  note,
  type Properties,
  photos,
  reference,
  stations,
} from './shared.ts';

const POINT_HELP =
  'write a number, a number with its unit such as 82.495 mm, a range such as 0.003 to 0.004, under 0.004, or ~';

const trace: Properties = {
  was: amountOrNothing(about('Was', 'What stood here before a slip was put right.', 2.8374)),
  why: text(about('Why', 'Why it was put right.', 'misread')),
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
const position: Schema = {
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
      TOGETHER,
    ),
  ],
  errorMessage: `${POINT_HELP}; or a list of them along the stations`,
};

export const readingDefinitions: Properties = { point, pointShape: mapShape(onePoint, TOGETHER), position };

export const at: Schema = named(
  about('At', 'A position and what was read there: a point, a list along the stations, or rows.', {
    1: 3.2478,
    2: [3.2475, 3.2476],
  }),
  { $ref: '#/definitions/position' },
);

export const conditions: Schema = {
  ...about('Conditions', 'How it was when measured; unlike conditions are not compared silently.', {
    bearings: 'dry',
    threads: 'oiled',
    oil_pump: 'off',
  }),
  type: 'object',
  additionalProperties: false,
  properties: {
    bearings: { title: 'Bearings', description: 'dry or oiled.' },
    threads: { title: 'Threads', description: 'dry or oiled.' },
    oil_pump: { title: 'Oil pump', description: 'off, on, or as it was driven.' },
    caps: { title: 'Caps', description: 'How far they were tightened.' },
  },
  patternProperties: {
    [PATTERNS.identifier]: {
      anyOf: [{ type: 'string', pattern: PATTERNS.notBlank }, { type: 'number' }, { type: 'boolean' }],
      errorMessage: 'write a word, a number, or true or false',
    },
  },
};

export const day = date(about('Date', "The day, where it is not the session's.", '2026-02-04'));
export const temperature = amount(about('Temperature', 'Of the parts when measured.', '64 degF'));

const work = text(about('Work', 'What was done to a part; readings before it step back.', 'honed'));
const on = wordOrWords(about('On', 'The part or parts that were worked on.', 'cylinder 3'));

const after: Schema = {
  ...about('After', 'Turning torque after each step of assembly, in order.', [
    { step: 'crankshaft', value: 2.1 },
  ]),
  type: 'array',
  minItems: 1,
  items: mapShape(
    {
      step: word(about('Step', 'What had just been fitted.', 'piston 1')),
      value: amountOrNothing(about('Value', 'The running torque.', 2.9)),
      running: amountOrNothing(about('Running', 'The torque that keeps it turning; this is judged.', 2.9)),
      breakaway: amountOrNothing(about('Breakaway', 'The torque that starts it turning.', 3.6)),
      ...trace,
      note,
    },
    {
      required: ['step'],
      anyOf: [{ required: ['value'] }, { required: ['running'] }, { required: ['breakaway'] }],
      dependencies: { was: ['value'], why: ['was'] },
    },
  ),
  errorMessage: 'write a list: one step after each dash',
};

const setTo: Schema = {
  ...about(
    'Set to',
    'The master that the gauge was zeroed in, or journal when it was zeroed at each.',
    3.25,
    'journal',
  ),
  anyOf: [{ type: 'number' }, { type: 'string', pattern: PATTERNS.withUnit }, { enum: ['journal'] }],
  errorMessage: "write the master's size, or journal",
};

const whole: Schema = reference(
  about('Value', 'A reading of the whole engine, such as end play.', 0.009),
  'position',
);

const workEntry: Schema = mapShape({ work, on, by, date: day, note, photos }, { required: ['on'] });

/** `work` is listed here to be offered; a block that has it is read as a work entry and nothing else. */
const measurement: Schema = mapShape(
  {
    measure: reference(about('Measure', 'What was measured.', 'main_journal_diameter'), 'measure'),
    with: word(about('With', 'The instrument, by its name in the register.', 'mic-3-4')),
    set_with: word(about('Set with', 'The instrument that the gauge was zeroed with.', 'mic-3-4')),
    set_to: setTo,
    base: amount(about('Base', 'Added to every reading below; arithmetic only.', 3.24)),
    in: choice(about('In', 'Readings are whole counts of this; hundredths are of a millimetre.', 'tenths'), [
      'tenths',
      'thou',
      'hundredths',
    ]),
    stations,
    directions,
    at,
    value: whole,
    after,
    supported_on: words(about('Supported on', 'The mains the shaft rested on, for runout.', [1, 5])),
    conditions,
    temperature,
    by,
    date: day,
    note,
    photos,
    work,
  },
  {
    required: ['measure'],
    anyOf: [{ required: ['at'] }, { required: ['value'] }, { required: ['after'] }],
    errorMessage: 'write measure: and what was read, or work: and what was done',
  },
);

export const readings: Schema = {
  ...about('Readings', 'Blocks of readings in the order they were taken, with the work done between.', [
    { measure: 'crankshaft_end_play', value: 0.009 },
    { work: 'honed', on: 'cylinder 3' },
  ]),
  type: 'array',
  items: {
    if: { type: 'object', required: ['work'] },
    // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
    then: workEntry,
    else: measurement,
  },
  errorMessage: 'write a list: one block after each dash',
};

const person: Schema = {
  type: 'array',
  minItems: 1,
  items: { anyOf: AMOUNT_OR_NOTHING, errorMessage: 'write a number, or ~ where none was taken' },
  errorMessage: 'write the repeats as a list, such as [3.2478, 3.2477, 3.2478]',
};

export const study: Schema = map(
  about('Study', 'Several people measure several parts several times with one instrument.', {
    measure: 'main_journal_diameter',
    with: 'mic-3-4',
    parts: { P1: { RK: [3.2478, 3.2477], JM: [3.2478, 3.2478] } },
  }),
  {
    measure: reference(about('Measure', 'What was measured.', 'main_journal_diameter'), 'measure'),
    with: word(about('With', 'The instrument under study.', 'mic-3-4')),
    parts: named(
      about('Parts', 'Each part, and the repeats of each person.', { P1: { RK: [3.2478, 3.2477] } }),
      { type: 'object', minProperties: 1, additionalProperties: person },
    ),
    note,
  },
  { required: ['measure', 'parts'] },
);
