import { document, source } from './document.ts';
import { PATTERNS } from './patterns.ts';
import { positions } from './positions.ts';
import {
  about,
  amount,
  amountOrRange,
  count,
  flag,
  positiveNumber,
  type Schema,
  text,
  texts,
  WORD_ITEM,
  word,
  words,
} from './scalars.ts';
import { list, map, mapShape, named } from './shared.ts';
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
      nut_factor: positiveNumber(
        about('Nut factor', 'K of T = K d F, where it is known better than from the lubricant.', 0.18),
      ),
      scatter,
      friction,
      final: amountOrRange(about('Final torque', 'What percentages of the passes refer to.', 110)),
      passes,
      wrench,
      adapter,
      run_on: amount(
        about(
          'Run-on torque',
          'What turns the nut freely, as a locknut does; it is added to every torque on the card.',
          '8.9 lbf in',
        ),
      ),
      before: texts(about('Before', 'What must be confirmed first.', ['threads clean', 'shells seated'])),
      after: texts(about('After', 'What must be confirmed at the end.', ['crankshaft turns freely'])),
      source,
    },
    ['joint', 'fasteners', 'passes', 'source'],
  );

const sections: Schema = list(
  about('Sections', 'The lengths that stretch one after the other, in place of length.', [
    { length: '3.5 in', diameter: '0.4375 in' },
    { length: '1.5 in' },
  ]),
  mapShape(
    {
      length: amount(about('Length', 'How long this section is.', '3.5 in')),
      diameter: amount(
        about('Diameter', 'Of the shank; without it the stress area of the thread counts.', '0.4375 in'),
      ),
    },
    { required: ['length'] },
  ),
);

const fasteners: Schema = map(
  about('Fasteners', 'The bolts, studs or nuts of the joint.', { names: ['1L', '1R'], thread: '9/16-12' }),
  {
    names: words(about('Names', 'One for each fastener.', ['1L', '1R', '2L', '2R'])),
    count: count(about('Count', 'How many there are, named 1, 2, 3 and so on.', 10)),
    groups: named(
      about('Groups', 'Names for some of them, where passes differ.', { inner: [1, 2, 3, 4] }),
      words(about('Group', 'The names of the fasteners in it.', [1, 2, 3, 4])),
    ),
    thread: text(about('Thread', 'As the standard writes it.', '9/16-12', 'M12x1.75')),
    grade: word(about('Grade', 'Grade or property class.', 8, 10.9)),
    proof: amount(
      about('Proof strength', "The fastener maker's own, for a grade no standard knows.", '120000 psi'),
    ),
    yield: amount(about('Yield strength', "The fastener maker's own.", '130000 psi')),
    reuse: flag(about('Reuse', 'false for fasteners that must not be used twice.', true)),
    length: amount(
      about(
        'Length',
        'The length that stretches, at the stress area of the thread, for stretch and angle.',
        '5 in',
      ),
    ),
    sections,
  },
);

const scatter: Schema = {
  ...about('Scatter', 'How far one bolt may lie off the estimated clamp load, either way.', '25 %'),
  type: 'string',
  pattern: PATTERNS.percent,
  errorMessage: 'write a percentage such as 25 %',
};

const friction: Schema = map(
  about('Friction', 'Coefficients of friction, for an estimate by the friction formula.', {
    thread: 0.14,
    head: 0.14,
    head_diameter: '22 mm',
  }),
  {
    thread: positiveNumber(about('In the thread', 'Coefficient of friction.', 0.14)),
    head: positiveNumber(about('Under the head', 'Coefficient of friction.', 0.14)),
    head_diameter: amount(
      about('Head diameter', 'The mean of the face and the hole under it, where it rubs.', '22 mm'),
    ),
  },
  { required: ['thread', 'head', 'head_diameter'] },
);

const wrench: Schema = map(
  about('Wrench', 'The wrench of this job, for a setting with an adapter.', { length: '18 in' }),
  { length: amount(about('Length', 'From the middle of the grip to the drive.', '18 in')) },
  { required: ['length'] },
);

const adapter: Schema = map(
  about('Adapter', 'An adapter between the drive and the fastener.', { length: '6 in', angle: '0 deg' }),
  {
    length: amount(about('Length', 'From the drive to the fastener.', '6 in')),
    angle: amount(about('Angle', '0 in line with the wrench, 90 square to it, 180 back along it.', '90 deg')),
  },
  { required: ['length'] },
);

const order: Schema = {
  ...about(
    "The maker's order, or `centre out`",
    'The order of tightening: names in turn, or each name with its number as the manual draws them.',
    ['2L', '2R', '1L', '1R'],
    'centre out',
  ),
  anyOf: [
    { type: 'array', minItems: 1, items: WORD_ITEM },
    { enum: ['centre out'] },
    { type: 'object', minProperties: 1, additionalProperties: { type: 'integer', minimum: 1 } },
  ],
  errorMessage: 'write the names in order, such as [3L, 3R, 4R, 4L], or centre out',
};
