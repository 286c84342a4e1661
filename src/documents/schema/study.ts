import { note } from './document.ts';
import { AMOUNT_OR_NOTHING, about, type Schema, word } from './scalars.ts';
import { map, named, reference } from './shared.ts';

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
