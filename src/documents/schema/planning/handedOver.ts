import { by, note } from '../document.ts';
import { about, date, type Schema, text, texts, word, wordOrWords } from '../scalars.ts';
import { mapShape, type Properties } from '../shared.ts';

/** One of it as it stands, or a list of several. */
const oneOrMore = (title: string, description: string, example: object, item: Schema): Schema => ({
  ...about(title, description, example),
  anyOf: [item, { type: 'array', minItems: 1, items: item }],
  errorMessage: `write its keys, or a list of such maps, as ${title.toLowerCase()} is described`,
});

const party = text(
  about('By', 'Who agreed: the customer, or who spoke for them.', 'Reservoir water company'),
);

const agreed = oneOrMore(
  'Agreed',
  'What the customer agreed to, as `tenths plan --for customer` prints it.',
  { by: 'Reservoir water company', date: '2026-04-10', items: ['grind main journals'] },
  mapShape(
    {
      by: party,
      date: date(about('Date', 'The day of it.', '2026-04-10')),
      items: wordOrWords(
        about(
          'Items',
          'The lines of the page, one or a list, or what is done to which parts: `grind mains`. A size may stand behind it: then the yes is to that size alone. A line with a comma stands in quotes.',
          ['grind main journals 1 to 3', 'bore cylinders to 0.020 over'],
        ),
      ),
      note,
    },
    { required: ['by', 'items'] },
  ),
);

const sent = oneOrMore(
  'Sent',
  'A part that was given to a machine shop, with the work that was ordered.',
  { part: 'crankshaft', mark: 'K4471', to: 'North grinding', work: ['grind main journals'] },
  mapShape(
    {
      part: word(about('Part', 'Which part.', 'crankshaft')),
      mark: word(about('Mark', 'The mark stamped on it.', 'K4471')),
      to: text(about('To', 'Who has it.', 'North grinding')),
      date: date(about('Date', 'The day on which it went.', '2026-04-13')),
      due: date(about('Due', 'The day on which it is to be back.', '2026-04-22')),
      returned: date(about('Returned', 'The day on which it came back.', '2026-04-23')),
      work: texts(about('Work', 'The jobs that were ordered, by name.', ['grind main journals'])),
      note,
    },
    { required: ['part', 'to', 'work'] },
  ),
);

const confirmed = oneOrMore(
  'Confirmed',
  'Boxes of the page before closing up that somebody ticked.',
  { what: 'second initials', by: 'RK' },
  mapShape(
    {
      what: text(about('What', 'The box, in its words or as shop.yaml requires it.', 'second initials')),
      by,
      date: date(about('Date', 'The day of it.', '2026-05-13')),
      note,
    },
    { required: ['what', 'by'] },
  ),
);

export const handedOver: Properties = { agreed, sent };
export const handedOverAndConfirmed: Properties = { ...handedOver, confirmed };
