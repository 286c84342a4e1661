import { FAMILIES, note, QUANTITIES, source } from './document.ts';
import { about, choice, type Schema, text, wordOrWords } from './scalars.ts';
import { keyedByCharacteristic, mapShape } from './shared.ts';

/** Characteristics that a shop adds itself, in a shop or limits document. */
export const ownCharacteristics: Schema = keyedByCharacteristic(
  about("The shop's own characteristics", 'What this shop measures that is not built in, by id.', {
    piston_protrusion: { label: 'piston protrusion', quantity: 'length', positions: 'cylinder' },
  }),
  [],
  mapShape(
    {
      label: text(about('Label', 'What people call it.', 'piston protrusion')),
      quantity: choice(about('Quantity', 'What kind of figure it is.', 'length'), QUANTITIES),
      positions: choice(
        about('Positions', 'What it is measured on; engine is the whole of it.', 'cylinder'),
        [...FAMILIES, 'engine'],
      ),
      part: wordOrWords(
        about('Part', 'The part that it is of, and others that it depends on.', 'piston', ['piston', 'rod']),
      ),
      formula: text(
        about(
          'Formula',
          'How it follows from others at the same position, by + - * / ( ) abs min max sqrt round.',
          'cylinder_bore - piston_diameter',
        ),
      ),
      source,
      note,
    },
    { required: ['label', 'quantity'] },
  ),
);
