import { document, source } from './document.ts';
import { about, amount, flag, type Schema, text, texts, WORD_ITEM, word, words } from './scalars.ts';
import { map } from './shared.ts';
import { passes } from './tightening.ts';

export const torqueSchema = (): Schema =>
  document(
    'torque',
    { title: 'Torque', description: 'How one joint is tightened: order, passes, lubricant.' },
    {
      joint: text(about('Joint', 'What is tightened.', 'main caps')),
      fasteners,
      order,
      positions,
      lubricant: text(
        about('Lubricant', 'The torque holds for this alone.', 'engine oil on threads and under heads'),
      ),
      passes,
      before: texts(about('Before', 'What must be confirmed first.', ['threads clean', 'shells seated'])),
      after: texts(about('After', 'What must be confirmed at the end.', ['crankshaft turns freely'])),
      source,
    },
    ['joint', 'fasteners', 'passes', 'source'],
  );

const fasteners: Schema = map(
  about('Fasteners', 'The bolts, studs or nuts of the joint.', { names: ['1L', '1R'], thread: '9/16-12' }),
  {
    names: words(about('Names', 'One for each fastener.', ['1L', '1R', '2L', '2R'])),
    thread: text(about('Thread', 'As the standard writes it.', '9/16-12', 'M12x1.75')),
    grade: word(about('Grade', 'Grade or property class.', 8, 10.9)),
    reuse: flag(about('Reuse', 'false for fasteners that must not be used twice.', true)),
    length: amount(about('Length', 'The length that stretches, for stretch and angle.', '5 in')),
  },
  { required: ['names'] },
);

const order: Schema = {
  ...about(
    "The maker's order, or `centre out`",
    'The order of tightening.',
    ['2L', '2R', '1L', '1R'],
    'centre out',
  ),
  anyOf: [{ type: 'array', minItems: 1, items: WORD_ITEM }, { enum: ['centre out'] }],
  errorMessage: 'write the names in order, such as [3L, 3R, 4R, 4L], or centre out',
};

const place: Schema = {
  anyOf: [{ type: 'string' }, { type: 'number' }, { type: 'null' }, { type: 'array', items: placeItem() }],
  errorMessage: 'write a name, ~ for an empty place, or a row of names',
};

function placeItem(): Schema {
  return {
    anyOf: [{ type: 'string' }, { type: 'number' }, { type: 'null' }],
    errorMessage: 'write a name, or ~ for an empty place',
  };
}

const positions: Schema = {
  ...about(
    'Positions',
    'Where the fasteners sit, seen from above, for a generated order: a row, rows, or a circle.',
    [
      ['1L', '2L'],
      ['1R', '2R'],
    ],
    { circle: [1, 2, 3, 4, 5, 6] },
  ),
  anyOf: [
    { type: 'array', minItems: 1, items: place },
    {
      type: 'object',
      additionalProperties: false,
      required: ['circle'],
      properties: { circle: words(about('Circle', 'The names in turn round the circle.', [1, 2, 3, 4])) },
    },
  ],
  errorMessage: 'write rows of names such as [[1L, 2L], [1R, 2R]], or { circle: [1, 2, 3, 4] }',
};
