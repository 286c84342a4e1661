import { about, coefficient, type Schema, text } from '../scalars.ts';
import { map } from '../shared.ts';

export const MATERIAL_OF = {
  block: 'cast iron',
  caps: 'cast iron',
  liners: 'cast iron',
  crankshaft: 'steel',
  camshaft: 'steel',
  rods: 'steel',
  pistons: 'aluminium',
  pins: 'steel',
  rings: 'cast iron',
  shells: 'steel',
  head: 'cast iron',
  valves: 'steel',
  guides: 'bronze',
} as const;

export const materials: Schema = map(
  about('Materials', 'What the parts are made of, for expansion with temperature.', { block: 'cast iron' }),
  Object.fromEntries(
    Object.entries(MATERIAL_OF).map(([part, material]) => [
      part,
      text(about(`Material: ${part}`, `The material of the ${part}.`, material)),
    ]),
  ),
);

export const expansion: Schema = map(
  about(
    'Expansion',
    'By what share of its length a part grows for one degree, where that is known better than by its material.',
    {
      pistons: '19.4e-6 per degC',
    },
  ),
  Object.fromEntries(
    Object.keys(MATERIAL_OF).map((part) => [
      part,
      coefficient(
        about(`Expansion: ${part}`, `The expansion of the ${part}.`, '19.4e-6 per degC', '10.8e-6 per degF'),
      ),
    ]),
  ),
);
