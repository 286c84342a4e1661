import { by, note, photos } from './document.ts';
import { directions, stations } from './grid.ts';
import { PATTERNS } from './patterns.ts';
import { at, trace } from './points.ts';
import {
  about,
  amount,
  amountOrNothing,
  choice,
  date,
  type Schema,
  text,
  word,
  wordOrWords,
  words,
} from './scalars.ts';
import { mapShape, reference } from './shared.ts';

export const conditions: Schema = {
  ...about(
    'Conditions',
    'The conditions of the measurement; a comparison of unlike conditions is reported.',
    {
      bearings: 'dry',
      threads: 'oiled',
      oil_pump: 'off',
    },
  ),
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
    from: text(
      about(
        'From',
        'The machine shop whose figures these are: they stand beside our own, which alone are judged.',
        'North grinding',
      ),
    ),
    by,
    date: day,
    note,
    photos,
    work,
  },
  {
    required: ['measure'],
    anyOf: [{ required: ['at'] }, { required: ['value'] }, { required: ['after'] }],
    errorMessage: 'write `measure:` and what was read, or `work:` and what was done',
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
