import { PLAIN_SIZES } from '../engine/plainSizes.ts';
import { decisionRule, document, FAMILIES, source } from './document.ts';
import { fitted } from './fitted.ts';
import { handedOverAndConfirmed } from './planning/handedOver.ts';
import { job } from './planning/job.ts';
import { expansion, materials } from './running/materials.ts';
import { oil, running } from './running/running.ts';
import { about, amount, type Schema, text, WORD_ITEM, word, words } from './scalars.ts';
import { keyedByCharacteristic, map, named, type Offered } from './shared.ts';

export const engineSchema = (offered: readonly Offered[]): Schema =>
  document(
    'engine',
    { title: 'Engine', description: 'What one engine is: layout, labels, nominal sizes, materials.' },
    {
      name: text(about('Name', 'What the engine is called.', 'Reservoir pump no. 2')),
      layout,
      labels,
      sizes: sizes(offered),
      materials,
      expansion,
      running,
      oil,
      decision_rule: decisionRule,
      fitted,
      job,
      stamps,
      ...handedOverAndConfirmed,
      source,
    },
    ['name', 'layout'],
  );

const whole: Schema = { type: 'integer', minimum: 1, maximum: 100 };
const names: Schema = { type: 'array', minItems: 1, items: WORD_ITEM };

const positions = (title: string, description: string, example: unknown): Schema => ({
  ...about(title, `${description} A count stands for 1, 2, 3 … or give their names.`, example),
  anyOf: [whole, names],
  errorMessage: 'write how many there are, from 1 to 100, or a list of their names such as [1, 2, 3]',
});

const onEachPin: Schema = { ...names, errorMessage: 'write the cylinders on this crankpin, such as [1, 5]' };

const layout: Schema = map(
  about('Layout', 'How many there are of each thing, or what each is called.', {
    cylinders: 4,
    mains: 5,
    crankpins: 4,
  }),
  {
    cylinders: positions('Cylinders', 'The cylinders.', 4),
    mains: positions('Main bearings', 'The main journals and bearings.', 5),
    crankpins: {
      ...about('Crankpins', 'A count, names, or each pin with the rods on it.', 4, { 1: ['1L', '1R'] }),
      anyOf: [whole, names, { type: 'object', minProperties: 1, additionalProperties: onEachPin }],
      errorMessage: 'write how many there are, their names, or the rods on each such as { 1: [1L, 1R] }',
    },
    cam_bearings: positions('Cam bearings', 'The camshaft journals and bearings.', 3),
    rings: {
      ...about(
        'Rings',
        'The rings of every piston from its crown down, where they are not top, second and oil.',
        ['top', 'second', 'oil'],
      ),
      ...names,
      errorMessage: 'write a list of names from the crown down, such as [top, second, oil]',
    },
    valves: {
      ...about(
        'Valves',
        'The valves of each cylinder, or of every cylinder where all have the same.',
        { 1: ['I', 'E'], 2: ['I', 'E'] },
        ['I', 'E'],
      ),
      anyOf: [
        names,
        {
          type: 'object',
          minProperties: 1,
          additionalProperties: {
            ...names,
            errorMessage: 'write the valves of this cylinder, such as [I, E]',
          },
        },
      ],
      errorMessage:
        'write the valves of each cylinder, such as { 1: [I, E], 2: [I, E] }, or [I, E] where all have the same',
    },
    banks: named(
      about('Banks', 'The cylinders of each bank; never worked out.', { L: ['1L', '2L'], R: ['1R', '2R'] }),
      { ...names, errorMessage: 'write the cylinders of this bank, such as [1L, 2L]' },
    ),
    lobes: positions('Lobes', 'The lobes of the camshaft.', 8),
    gears: {
      ...about('Gears', 'The gears of the timing train.', ['crank', 'idler', 'cam']),
      ...names,
      errorMessage: 'write a list of names, such as [crank, idler, cam]',
    },
    pins: named(
      about('Cylinders on each crankpin', 'For vee engines, where two rods share a pin.', { 1: [1, 5] }),
      onEachPin,
    ),
    number_from: text(about('Numbered from', 'The end that number 1 is at.', 'free end')),
    thrust_main: word(about('Thrust main', 'The main bearing that takes the thrust.', 3)),
    firing_order: words(about('Firing order', 'As the maker states it; never worked out.', [1, 3, 4, 2])),
  },
);

const stamps: Schema = named(
  about('Stamps', 'What the maker stamped on parts, by part and position, for select-fit tables.', {
    main_journals: { 1: 'A', 2: 'B' },
  }),
  named(about('Stamps of a part', 'The stamp at each position.', { 1: 'A', 2: 'B' }), {
    ...word(about('Stamp', 'The letter or number.', 'A')),
  }),
);

const label = text(about('Label', 'What people call this position.', 'flywheel end'));

const labels: Schema = map(
  about('Labels', 'Names shown beside the numbers of positions.', { main: { 1: 'front', 3: 'centre' } }),
  Object.fromEntries(
    FAMILIES.map((family) => [
      family,
      named(
        about(`Labels of each ${family.replaceAll('_', ' ')}`, 'Position and its label.', { 1: 'front' }),
        {
          ...label,
        },
      ),
    ]),
  ),
);

const sizes = (offered: readonly Offered[]): Schema =>
  keyedByCharacteristic(
    about('Nominal sizes', 'The sizes of new parts, as drawn; formulas may use them.', { bore: 4.125 }),
    offered.filter(({ quantity }) => quantity === 'length'),
    amount(about('Size', 'The nominal size.', 4.125)),
    PLAIN_SIZES,
  );
