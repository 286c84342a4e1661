import { note, source } from '../document.ts';
import { about, amount, choice, RANGE_TEXT, type Schema, word, wordOr } from '../scalars.ts';
import { list, mapShape, named, type Properties } from '../shared.ts';

const fits = word(about('Fits', 'Which shells are chosen.', 'main shells'));

const range = (title: string, description: string, example: string): Schema => ({
  ...about(title, description, example),
  ...RANGE_TEXT,
  errorMessage: `write a range, such as ${example}`,
});

const stampSizes = (title: string, description: string): Schema =>
  named(about(title, description, { A: '41.984 to 41.990 mm' }), {
    ...range('Class', 'The sizes that this stamp means.', '41.984 to 41.990 mm'),
  });

const classes = wordOr(
  about('Classes', 'The class of both shells, or of the one above and the one below.', 'E', {
    upper: 'Blue',
    lower: 'Green',
  }),
  'write a class such as E, or { upper: Blue, lower: Green } where the two shells differ',
  mapShape(
    {
      upper: word(about('Upper', 'The class of the shell above.', 'Blue')),
      lower: word(about('Lower', 'The class of the shell below.', 'Green')),
    },
    { required: ['upper', 'lower'] },
  ),
);

const selectFit: Schema = list(
  about(
    'Select fit',
    "The maker's table: stamp of a housing, stamp of its journal, classes of the shells between them.",
    [{ fits: 'rod shells', table: { 1: { A: 'E', B: 'D', C: 'C' } } }],
  ),
  mapShape(
    {
      fits,
      table: named(
        about('Table', 'By the stamp of the housing: by the stamp of the journal the class of shell.', {
          1: { A: 'E', B: 'D' },
        }),
        named(about('Row', 'By the stamp of the journal the class of shell.', { A: 'E', B: 'D' }), classes),
      ),
      housings: stampSizes('Housings', 'The sizes that stamps of housings stand for.'),
      journals: stampSizes('Journals', 'The sizes that stamps of journals stand for.'),
      source,
      note,
    },
    { required: ['fits', 'table'] },
  ),
);

const mixing: Schema = list(
  about('Mixing', 'Where halves of two thicknesses may run together; else both are alike.', [
    { fits: 'main shells', differ_by: 0.0005, thicker: 'lower' },
  ]),
  mapShape(
    {
      fits,
      differ_by: amount(
        about('Differ by', 'How much thicker one half may be; never more than 0.0005 in is used.', 0.0005),
      ),
      thicker: choice(about('Thicker', 'Where the thicker half goes.', 'lower'), ['upper', 'lower']),
      source,
      note,
    },
    { required: ['fits', 'differ_by', 'thicker'] },
  ),
);

const gasketChoice: Schema = list(
  about('Gasket choice', 'Head gaskets by the largest mean protrusion of a cylinder.', [
    { code: 'A', protrusion: '0.705 to 0.755 mm', thickness: '1.45 mm' },
  ]),
  mapShape(
    {
      code: word(about('Code', 'Its grade, notches or letter.', 'A')),
      protrusion: range('Protrusion', 'The largest mean of a cylinder.', '0.705 to 0.755 mm'),
      thickness: amount(about('Thickness', 'When tightened.', '1.45 mm')),
      note,
    },
    { required: ['code', 'protrusion'] },
  ),
);

/** How a maker has parts chosen. */
export const choices: Properties = {
  select_fit: selectFit,
  mixing,
  gasket_choice: gasketChoice,
};
