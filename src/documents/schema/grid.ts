import { about, amountOrNothing, type Schema, WORD_ITEM } from './scalars.ts';

export const stations: Schema = {
  ...about('Stations', 'Where along the part, as names or with the distance of each from one end.', [
    'front',
    'rear',
  ]),
  anyOf: [
    { type: 'array', minItems: 1, items: WORD_ITEM },
    {
      type: 'object',
      minProperties: 1,
      additionalProperties: amountOrNothing(
        about('Distance', 'How far from the end this station is; `~` until that is measured.', '0.25 in'),
      ),
    },
  ],
  errorMessage: 'write names such as [front, rear], or distances such as { front: 0.25 in, rear: 1.75 in }',
};

export const directions: Schema = {
  ...about(
    'Directions',
    'Where round the part: square, +45, -45 in a bore; throw, square on a pin; thrust, axial in a cylinder.',
    ['throw', 'square'],
  ),
  type: 'array',
  minItems: 1,
  items: WORD_ITEM,
  errorMessage: 'write a list of names, such as [throw, square]',
};
