import { by, note } from './document.ts';
import { PATTERNS } from './patterns.ts';
import {
  about,
  amount,
  amountOrNothing,
  amountOrRange,
  choice,
  date,
  RANGE_TEXT,
  type Schema,
  text,
  texts,
  word,
  words,
} from './scalars.ts';
import { mapShape, named, type Properties } from './shared.ts';

const stretch: Schema = {
  ...about('Stretch', 'The window of bolt stretch.', { min: 0.0135, max: 0.0185 }, '0.0135 to 0.0185'),
  anyOf: [
    mapShape(
      {
        min: amount(about('Least', 'The least stretch.', 0.0135)),
        max: amount(about('Greatest', 'The greatest stretch.', 0.0185)),
      },
      { minProperties: 1, errorMessage: 'give min, max or both' },
    ),
    RANGE_TEXT,
  ],
  errorMessage: 'write { min: 0.0135, max: 0.0185 } or 0.0135 to 0.0185',
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
  loosen: amountOrRange(about('Loosen', 'Back off by this angle.', '360 deg')),
  stretch,
  fasteners: words(about('Fasteners', 'Only these, where a pass is not for all.', ['1L', '1R'])),
  note,
};

const NEEDS_A_STEP: Schema = {
  anyOf: [{ required: ['to'] }, { required: ['turn'] }, { required: ['loosen'] }, { required: ['stretch'] }],
};

export const passes: Schema = {
  ...about('Passes', 'The passes, first to last.', [{ to: 40 }, { to: 80 }, { turn: '90 deg' }]),
  type: 'array',
  minItems: 1,
  items: mapShape(step, NEEDS_A_STEP),
  errorMessage: 'write a list such as [{ to: 40 }, { to: 80 }]',
};

const loggedPasses: Schema = {
  ...about('Passes', 'The passes as they were made.', [{ to: 40, values: { '1L': 40 } }]),
  type: 'array',
  minItems: 1,
  items: mapShape(
    {
      ...step,
      values: named(
        about('Values', 'What each fastener was brought to.', { '1L': 40 }),
        amountOrNothing(about('Value', 'What this fastener was brought to.', 40)),
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
      confirmed: texts(about('Confirmed', 'Steps that were confirmed.', ['threads clean'])),
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
