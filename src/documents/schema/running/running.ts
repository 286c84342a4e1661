import { about, amount, type Schema, text } from '../scalars.ts';
import { map, named } from '../shared.ts';
import { MATERIAL_OF } from './materials.ts';

const load = (key: string, whose: string): Schema =>
  amount(about(`Load: ${key}`, `The steady load on ${whose}.`, '9 kN'));

/** What of `running:` a film depends on. */
const duty: Readonly<Record<string, Schema>> = {
  speed: amount(about('Speed', 'Of the crankshaft.', '1500 rpm')),
  oil_pressure: amount(about('Oil pressure', 'In the gallery at that speed.', '45 psi')),
  oil_temperature: amount(about('Oil temperature', 'Of the oil that comes to the bearings.', '85 degC')),
  cylinder_pressure: amount(about('Cylinder pressure', 'The greatest of combustion.', '60 bar')),
  reciprocating_mass: amount(
    about(
      'Reciprocating mass',
      'Of one cylinder: piston, pin, rings and the small end of the rod.',
      '1.9 kg',
    ),
  ),
  pump_delivery: amount(about('Pump delivery', 'What the oil pump delivers at that speed.', '40 L/min')),
  load: map(
    about('Load', 'The load on one bearing, where it is known better than from pressure and mass.', {
      mains: '9 kN',
    }),
    {
      mains: load('mains', 'a main bearing'),
      rods: load('rods', 'a rod bearing'),
      camshaft: load('camshaft', 'a cam bearing'),
    },
  ),
};

export const oil: Schema = map(
  about('Oil', 'What the engine runs on, for an estimate of its oil films.', {
    name: 'SAE 40',
    viscosity: { '40 degC': '150 cSt', '100 degC': '14.5 cSt' },
  }),
  {
    name: text(about('Name', 'As the can says it.', 'SAE 40, mineral')),
    viscosity: named(
      about('Viscosity', 'Kinematic, at two temperatures, by the data sheet; ASTM D341 gives all others.', {
        '40 degC': '150 cSt',
        '100 degC': '14.5 cSt',
      }),
      amount(about('Viscosity at this temperature', 'Kinematic.', '14.5 cSt')),
    ),
  },
  { required: ['viscosity'] },
);

export const running: Schema = map(
  about(
    'Running',
    'How warm the parts are in the running engine, for an estimate of hot clearances; and its speed, loads and oil supply, for an estimate of the oil films.',
    {
      temperature: '90 degC',
      pistons: '180 degC',
    },
  ),
  {
    ...duty,
    temperature: amount(about('Running temperature', 'Of all parts that are not named.', '90 degC')),
    ...Object.fromEntries(
      Object.keys(MATERIAL_OF).map((part) => [
        part,
        amount(about(`Running temperature: ${part}`, `Of the ${part}.`, '180 degC')),
      ]),
    ),
  },
);
