import { by, note } from './document.ts';
import { PATTERNS } from './patterns.ts';
import {
  AMOUNT_HELP,
  AMOUNT_OR_NOTHING,
  about,
  amount,
  amountOrNothing,
  amountOrRange,
  choice,
  date,
  flag,
  RANGE_TEXT,
  type Schema,
  text,
  texts,
  word,
  words,
} from './scalars.ts';
import { mapShape, named, type Properties } from './shared.ts';

const stretchShapes: readonly Schema[] = [
  mapShape(
    {
      min: amount(about('Least', 'The least stretch.', 0.012)),
      max: amount(about('Greatest', 'The greatest stretch.', 0.0165)),
    },
    { minProperties: 1, errorMessage: 'give min, max or both' },
  ),
  RANGE_TEXT,
];

const stretch: Schema = {
  ...about('Stretch', 'The window of bolt stretch.', { min: 0.012, max: 0.0165 }, '0.0125 to 0.0165'),
  anyOf: stretchShapes,
  errorMessage: 'write { min: 0.0125, max: 0.0165 } or 0.0125 to 0.0165',
};

/** What one pass does: by torque, by angle, by loosening, by stretch. */
const step: Properties = {
  to: {
    ...about('To', 'The torque of this pass; a window, or a percentage of the last.', 40, '58 to 69', '70 %'),
    anyOf: [
      { type: 'number' },
      { type: 'string', pattern: PATTERNS.withUnitOrRange },
      { type: 'string', pattern: PATTERNS.percent },
    ],
    errorMessage:
      'write a torque such as 40 or 95 N m, a window such as 58 to 69, or a percentage such as 70 %',
  },
  turn: amountOrRange(about('Turn', 'Turn further by this angle.', '90 deg')),
  loosen: {
    ...about('Loosen', 'Back off by this angle, or fully.', '360 deg', 'fully'),
    anyOf: [{ type: 'number' }, { type: 'string', pattern: PATTERNS.withUnitOrRange }, { enum: ['fully'] }],
    errorMessage: 'write an angle such as 360 deg, or fully',
  },
  stretch,
  check: {
    ...about(
      'Check',
      'The fastener must hold this torque without turning; a percentage of the last may do.',
      90,
    ),
    anyOf: [
      { type: 'number' },
      { type: 'string', pattern: PATTERNS.withUnitOrRange },
      { type: 'string', pattern: PATTERNS.percent },
    ],
    errorMessage: 'write a torque such as 90 or 122 N m, or a percentage such as 90 %',
  },
  at_most: amount(about('At most', 'Beside check: more than this is wrong as well.', 120)),
  reversed: flag(about('Reversed', 'true where a pass goes against the order, as loosening may.', true)),
  fasteners: words(
    about('Fasteners', 'Only these fasteners or groups, where a pass is not for all.', ['1L', '1R']),
  ),
  note,
};

const NEEDS_A_STEP: Schema = {
  anyOf: ['to', 'turn', 'loosen', 'stretch', 'check'].map((key) => ({ required: [key] })),
};

export const passes: Schema = {
  ...about('Passes', 'The passes, first to last.', [{ to: 40 }, { to: 80 }, { turn: '90 deg' }]),
  type: 'array',
  minItems: 1,
  items: mapShape(step, NEEDS_A_STEP),
  errorMessage: 'write a list such as [{ to: 40 }, { to: 80 }]',
};

/** A stretch may be logged as the two lengths it was measured by. */
const reached: Schema = {
  ...about('Value', 'What this fastener was brought to.', 40, { zero: 4.5012, tight: 4.5171 }),
  anyOf: [
    ...AMOUNT_OR_NOTHING,
    mapShape(
      {
        zero: amount(about('Zero', 'Its length while slack.', 4.5012)),
        tight: amount(about('Tight', 'Its length when tight.', 4.5171)),
      },
      { required: ['zero', 'tight'] },
    ),
  ],
  errorMessage: `${AMOUNT_HELP}, ~ where none was taken, or { zero: 4.5012, tight: 4.5171 }`,
};

/** What was measured is a figure; what was only kept inside of is a window. */
const loggedStretch: Schema = {
  ...about(
    'Stretch',
    'The stretch that was reached, or the window that was kept.',
    0.0091,
    '0.0125 to 0.0165',
  ),
  anyOf: [{ type: 'number' }, { type: 'string', pattern: PATTERNS.withUnitOrRange }, ...stretchShapes],
  errorMessage: 'write a stretch such as 0.0091, or the window 0.0125 to 0.0165',
};

const loggedPasses: Schema = {
  ...about('Passes', 'The passes as they were made.', [{ to: 40, values: { '1L': 40 } }]),
  type: 'array',
  minItems: 1,
  items: mapShape(
    {
      ...step,
      stretch: loggedStretch,
      values: named(
        about('Values', 'What each fastener was brought to: its torque, angle or stretch.', { '1L': 40 }),
        reached,
      ),
      torques: named(
        about('Torques', 'Beside values of stretch: the torque that each fastener had reached.', {
          '1L': 62,
        }),
        amountOrNothing(about('Torque', 'What this fastener had reached.', 62)),
      ),
      left_out: words(about('Left out', 'Fasteners that this pass did not reach.', ['5L'])),
    },
    NEEDS_A_STEP,
  ),
  errorMessage: 'write a list such as [{ to: 40 }, { to: 80 }]',
};

/** How a joint was tightened in a session. */
export const tightened: Schema = {
  ...about('Tightened', 'The joints tightened in this session.', [
    { sequence: 'main-caps', passes: [{ to: 40 }] },
  ]),
  type: 'array',
  items: mapShape(
    {
      sequence: word(about('Sequence', 'The torque document followed, by its file name.', 'main-caps')),
      with: word(about('With', 'The wrench, by its name in the register.', 'beam-60')),
      lubricant: text(about('Lubricant', 'What the threads were oiled with.', 'engine oil')),
      fasteners: choice(about('Fasteners', 'Whether new ones were used.', 'new'), ['new', 'reused']),
      confirmed: {
        ...about(
          'Confirmed',
          'Steps of before and after that were confirmed, or all.',
          ['threads clean'],
          'all',
        ),
        anyOf: [
          texts(about('Steps', 'The steps in the words of the sequence.', ['threads clean'])),
          { enum: ['all'] },
        ],
        errorMessage: 'write a list of steps, or all',
      },
      order: words(about('Order', 'The order that was followed.', ['3L', '3R'])),
      passes: loggedPasses,
      by,
      date: date(about('Date', "The day, where it is not the session's.", '2026-03-14')),
      note,
    },
    { required: ['sequence'] },
  ),
  errorMessage: 'write a list: one joint after each dash',
};
