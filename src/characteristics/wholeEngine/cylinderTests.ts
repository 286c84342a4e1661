import { ENGINE, familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { read } from '../readFigure.ts';
import { compressionPressure } from '../running.ts';
import { workedOut } from '../workedOut.ts';

const CYLINDER = familyOf('cylinder');

const KICKED =
  'Ignition and fuel off. Air in a cylinder kicks the crankshaft round with force: bring the piston to top dead centre, hold the flywheel, never leave a bar on the crankshaft, open the air slowly and stand clear.';

const gauge = (which: 'supply' | 'held', description: string): Characteristic =>
  read({
    id: `leak_down_${which}`,
    isNeverBelowZero: true,
    label: `leak-down pressure, ${which}`,
    of: 'cylinder',
    dependsOn: ['piston', 'ring', 'valve', 'valve_seat', 'head'],
    isAssemblyFigure: true,
    isSymptom: true,
    description,
    caution: KICKED,
    quantity: 'pressure',
    family: CYLINDER,
    usual: 'pressure gauge',
    words: { above: 'high', below: 'low' },
    source: 'FAA AC 43.13-1B, 8-14',
  });

const supply = gauge('supply', 'Pressure of the air before the orifice of a leak-down tester.');
const held = gauge('held', 'Pressure that a cylinder holds behind the orifice of a leak-down tester.');

/** How well the cylinders of an assembled engine hold. */
export const cylinderTests: readonly Characteristic[] = [
  workedOut({
    id: 'compression_share',
    label: 'lowest compression',
    of: 'cylinder',
    dependsOn: ['piston', 'ring', 'valve', 'head'],
    isAssemblyFigure: true,
    isSymptom: true,
    description: 'Compression of the lowest cylinder as a share of the highest.',
    note: 'Compression falls with the height above the sea and in a cold engine, the share does not: where pressures are judged, write altitude and temperature under conditions.',
    quantity: 'percent',
    family: ENGINE,
    usual: 'pressure gauge',
    words: { above: 'high', below: 'low' },
    onlyWithLimits: true,
    route: 'lowest compression pressure / highest × 100',
    formula: 'min(compression_pressure[*]) / max(compression_pressure[*]) * 100',
    from: [compressionPressure],
    source: 'service data of car engines: at least 75 %, or 70 %',
    examples: [
      {
        unit: 'psi',
        resultUnit: '%',
        given: { compression_pressure: ['160', '152', '120', '156'] },
        least: '75',
        greatest: '75',
        source: 'worked by hand, invented readings',
      },
    ],
  }),
  supply,
  held,
  workedOut({
    id: 'leak_down',
    isNeverBelowZero: true,
    under: ['orifice'],
    label: 'leak-down',
    of: 'cylinder',
    dependsOn: ['piston', 'ring', 'valve', 'valve_seat', 'head'],
    isAssemblyFigure: true,
    isSymptom: true,
    description:
      'Share of the air that a cylinder at top dead centre loses, by the pressures before and behind an orifice.',
    note: 'It depends on the orifice and the pressure: write both under conditions, such as `orifice: 0.040 in`. Percentages of two orifices cannot be compared. Where the air comes out says more: exhaust, intake, crankcase or coolant.',
    caution: KICKED,
    quantity: 'percent',
    family: CYLINDER,
    usual: 'pressure gauge',
    words: { above: 'leaky', below: 'tight' },
    route: '(supply − held) / supply × 100',
    formula: '(leak_down_supply - leak_down_held) / leak_down_supply * 100',
    from: [supply, held],
    source: 'FAA AC 43.13-1B, 8-14: orifice .040 in below 5.00 in of bore, .060 in from there on',
    examples: [
      {
        unit: 'psi',
        resultUnit: '%',
        given: { leak_down_supply: '80', leak_down_held: '60' },
        least: '25',
        greatest: '25',
        source: 'FAA AC 43.13-1B, 8-14: 60 of 80 psi; service data of a car engine: 25 % at most',
      },
    ],
  }),
];
