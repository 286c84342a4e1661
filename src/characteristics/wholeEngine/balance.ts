import { ENGINE, familyOf } from '../../layout/family.ts';
import { BY_EYE } from '../../measurement/instrument.ts';
import type { Characteristic } from '../characteristic.ts';
import { read } from '../readFigure.ts';
import { spreadOf, workedOut } from '../workedOut.ts';

const CYLINDER = familyOf('cylinder');
const CRANKPIN = familyOf('crankpin');
const HEAVY = { above: 'heavy', below: 'light' };
const SOURCE = 'common practice, no source';

const weight = (id: string, label: string, of: string, description: string): Characteristic =>
  read({
    id,
    label,
    of,
    description,
    quantity: 'mass',
    figure: 'size',
    family: CYLINDER,
    usual: 'balance',
    formula: 'as read',
    words: HEAVY,
    source: SOURCE,
  });

const piston = weight('piston_weight', 'piston weight', 'piston', 'A piston alone, clean and dry.');
const pin = weight(
  'piston_pin_weight',
  'piston pin weight',
  'piston_pin',
  'A pin with its locks, where it has any.',
);
const rings = weight('ring_set_weight', 'ring set weight', 'ring', 'All rings of a piston together.');
const rod = weight('rod_weight', 'rod weight', 'rod', 'A rod with cap, bolts and nuts, without shells.');
const smallEnd = weight(
  'rod_small_end_weight',
  'rod small end weight',
  'rod',
  'What the small end of a rod weighs, the rod level and its big end on a pivot.',
);
const bigEnd = weight(
  'rod_big_end_weight',
  'rod big end weight',
  'rod',
  'What the big end of a rod weighs, the rod level and its small end on a pivot.',
);
const shells = weight('rod_shell_weight', 'rod shell weight', 'rod_shell', 'Both shells of a rod together.');

const PARTS = ['piston_pin', 'ring', 'rod', 'rod_shell'];

const reciprocating = workedOut({
  ...weight(
    'reciprocating_weight',
    'reciprocating weight',
    'piston',
    'What goes up and down at a cylinder: piston, pin, rings and the small end of the rod.',
  ),
  figure: 'other',
  dependsOn: ['piston_pin', 'ring', 'rod'],
  onlyWithLimits: true,
  route: 'piston + pin + rings + small end',
  formula: 'piston_weight + piston_pin_weight + ring_set_weight + rod_small_end_weight',
  from: [piston, pin, rings, smallEnd],
  examples: [
    {
      unit: 'g',
      given: {
        piston_weight: '583.9',
        piston_pin_weight: '178.4',
        ring_set_weight: '69.5',
        rod_small_end_weight: '162.4',
      },
      least: '994.2',
      greatest: '994.2',
      source: 'weights of a magazine’s V8 engine (0906chp), pin 173.6 with locks 4.8; the sum is computed',
    },
  ],
});

const rotating = workedOut({
  ...weight(
    'rotating_weight',
    'rotating weight',
    'rod',
    'What goes round with the crankpin for one rod: its big end and its shells.',
  ),
  figure: 'other',
  dependsOn: ['rod_shell'],
  onlyWithLimits: true,
  route: 'big end + shells',
  formula: 'rod_big_end_weight + rod_shell_weight',
  from: [bigEnd, shells],
  examples: [
    {
      unit: 'g',
      given: { rod_big_end_weight: '621.5', rod_shell_weight: '45' },
      least: '666.5',
      greatest: '666.5',
      source: 'magazine article on a 400 in3 engine: (621.5 + 45) × 2 = 1333 g for the two rods of a pin',
    },
  ],
});

const oil = read({
  id: 'oil_allowance',
  label: 'oil allowance',
  of: 'crankpin',
  description:
    'Weight of oil that is counted with each crankpin for the bobweight: a figure of the shop, 0 where it counts none.',
  quantity: 'mass',
  family: ENGINE,
  usual: BY_EYE,
  formula: 'stated',
  words: HEAVY,
  source: SOURCE,
});

const factor = read({
  id: 'balance_factor',
  label: 'balance factor',
  of: 'crankshaft',
  description:
    'Share of the reciprocating weight that the crankshaft is balanced for: a figure of the maker or the shop.',
  quantity: 'percent',
  family: ENGINE,
  usual: BY_EYE,
  formula: 'stated',
  words: { above: 'high', below: 'low' },
  source: 'common practice, no source: 50 % for a V8 of 90 degrees',
});

/** What the parts that move weigh, and what a crankshaft is balanced with. */
export const balance: readonly Characteristic[] = [
  piston,
  pin,
  rings,
  rod,
  smallEnd,
  bigEnd,
  shells,
  reciprocating,
  rotating,
  oil,
  factor,
  workedOut({
    id: 'bobweight',
    label: 'bobweight',
    of: 'crankshaft',
    dependsOn: ['crankpin', 'piston', ...PARTS],
    description: 'Weight that is clamped to a crankpin while the crankshaft is balanced, for all rods on it.',
    caution:
      'A crankshaft that spins with bobweights throws what is loose: guard shut, bolts tight, and the maker of the machine comes first.',
    quantity: 'mass',
    family: CRANKPIN,
    usual: 'balance',
    words: HEAVY,
    onlyWithLimits: true,
    route: 'rotating weights + factor × reciprocating weights + oil',
    formula: 'sum(rotating_weight[*]) + balance_factor / 100 * sum(reciprocating_weight[*]) + oil_allowance',
    from: [rotating, factor, reciprocating, oil],
    source: 'magazine article (0906chp) on a V8 engine of 90 degrees',
    examples: [
      {
        unit: 'g',
        given: {
          rotating_weight: ['253.5', '253.5'],
          balance_factor: '50 %',
          reciprocating_weight: ['994.2', '994.2'],
          oil_allowance: '4',
        },
        least: '1505.2',
        greatest: '1505.2',
        source: 'weights of a magazine’s V8 engine (0906chp); the sum is computed, since it prints none',
      },
    ],
  }),
  ...[piston, pin, rod, smallEnd, bigEnd].map((each) =>
    spreadOf(each, {
      family: ENGINE,
      source: SOURCE,
      examples: [
        {
          unit: 'g',
          given: { [each.id]: ['583.9', '584.4', '583.2', '584.0'] },
          least: '1.2',
          greatest: '1.2',
          source: 'worked by hand, invented readings',
        },
      ],
    }),
  ),
];
