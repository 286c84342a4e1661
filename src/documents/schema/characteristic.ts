import { MEASURED_WITH } from '../../measurement/instrument.ts';
import { CYCLES } from '../../quantity/turn.ts';
import { QUANTITIES } from '../../quantity/units.ts';
import { FAMILIES, note, source } from './document.ts';
import { about, choice, type Schema, text, wordOrWords } from './scalars.ts';
import { keyedByCharacteristic, mapShape } from './shared.ts';

const FORMULA =
  'How it follows from others, by + - * / ( ) abs max mean min round spread sqrt sum. A name means its value at the same position or the one that belongs to it; name[*] all of them, name[3] one, name[next], name[previous] and name[neighbours] those beside it.';

/** Characteristics that a shop adds itself, in a shop or limits document. */
export const ownCharacteristics: Schema = keyedByCharacteristic(
  about("The shop's own characteristics", 'What this shop measures that is not built in, by id.', {
    piston_protrusion: { label: 'piston protrusion', quantity: 'length', positions: 'cylinder' },
  }),
  [],
  mapShape(
    {
      label: text(about('Label', 'What people call it.', 'piston protrusion')),
      quantity: choice(about('Quantity', 'What kind of figure it is, or a test.', 'length'), QUANTITIES),
      positions: choice(
        about('Positions', 'What it is measured on; engine is the whole of it.', 'cylinder'),
        [...FAMILIES, 'engine'],
      ),
      part: wordOrWords(
        about('Part', 'The part that it is of, and others that it depends on.', 'piston', ['piston', 'rod']),
      ),
      formula: text(about('Formula', FORMULA, 'cylinder_bore - piston_diameter')),
      instrument: choice(
        about('Instrument', 'What it is usually measured with, or by eye.', 'depth micrometer'),
        MEASURED_WITH,
      ),
      too_great: text(about('Too great', 'What to call a value above its limits.', 'proud')),
      too_small: text(about('Too small', 'What to call a value below its limits.', 'sunk')),
      cycle: choice(
        about('Cycle', 'Of a crank angle: after how many degrees it comes round again.', 720),
        CYCLES,
      ),
      pass: text(about('Pass', 'Of a test: what a part is that passes.', 'sound')),
      fail: text(about('Fail', 'Of a test: what a part is that fails.', 'cracked')),
      after: text(about('After', 'What is measured just before it.', 'cylinder_bore')),
      source,
      note,
    },
    { required: ['label', 'quantity'] },
  ),
);
