import { ENGINE, familyOf } from '../../layout/family.ts';
import { fraction } from '../../quantity/fraction.ts';
import type { Characteristic } from '../characteristic.ts';
import { clearance } from '../clearance.ts';
import { read, readSize } from '../readFigure.ts';
import { clearanceOf, diameter } from '../sizes.ts';

const GEAR = familyOf('gear');
const FINGERS = 'Gears and chains take fingers in: turn by hand only, ignition and fuel off.';
const RUNNING =
  'The engine runs for it: hands, hair and leads clear of belts, fan and hot parts, wheels chocked, and exhaust led outside.';
const DEGREES = {
  quantity: 'angle',
  cycle: fraction(720),
  family: ENGINE,
  isAssemblyFigure: true,
  words: { above: 'early', below: 'late' },
  usual: 'protractor',
} as const;

/** What drives the camshaft, and what is timed by it. */
export const timingDrive: readonly Characteristic[] = [
  ...diameter({
    name: 'gear',
    label: 'gear',
    size: 'bore',
    of: 'gear',
    description: 'Bore of a gear of the timing drive, with its bush where it has one.',
    family: GEAR,
    usual: 'bore gauge',
    taperBy: 'ends',
    source: 'TM 5-3820-233-35/2, table 1',
  }),
  ...diameter({
    name: 'gear_shaft',
    label: 'gear shaft',
    size: 'diameter',
    of: 'gear_shaft',
    description: 'Diameter of the shaft or hub that a gear of the timing drive sits or runs on.',
    family: GEAR,
    usual: 'micrometer',
    taperBy: 'ends',
    source: 'TM 5-3820-233-35/2, table 1',
  }),
  clearanceOf(
    {
      id: 'gear_fit',
      mayBePressed: true,
      label: 'gear fit',
      of: 'gear',
      dependsOn: ['gear_shaft'],
      description:
        'Diametral fit of a gear on its shaft: the play of an idler, or a press, which is below zero.',
      family: GEAR,
      formula: 'gear bore − gear shaft, or read directly',
      source: 'TM 5-3820-233-35/2, table 1',
    },
    [
      {
        route: 'gear bore − gear shaft',
        inputs: ['gear_bore', 'gear_shaft_diameter'],
        compute: ([bore, shaft]) => bore && shaft && clearance(bore, shaft, []),
      },
    ],
    'other',
    [
      {
        unit: 'in',
        given: { gear_bore: '1.1865', gear_shaft_diameter: '1.1880' },
        least: '-0.0015',
        greatest: '-0.0015',
        source: 'TM 5-3820-233-35/2, table 1: .0015 of press at most',
      },
    ],
  ),
  read({
    id: 'gear_backlash',
    isNeverBelowZero: true,
    label: 'gear backlash',
    of: 'gear',
    dependsOn: ['gear_shaft'],
    isAssemblyFigure: true,
    description: 'Play between the teeth of a gear and those of the gear before it, by a dial on a tooth.',
    note: 'The least of several places round the gear counts as well as the greatest.',
    caution: FINGERS,
    family: GEAR,
    usual: 'dial indicator',
    words: { above: 'loose', below: 'tight' },
    source: 'TM 9-2815-226-34-2 and TM 9-6115-604-34, table 1-4',
  }),
  read({
    id: 'gear_end_play',
    isNeverBelowZero: true,
    label: 'gear end play',
    of: 'gear',
    dependsOn: ['gear_shaft'],
    isAssemblyFigure: true,
    description: 'How far an idler gear moves along its shaft.',
    caution: FINGERS,
    family: GEAR,
    usual: 'feeler gauge',
    words: { above: 'loose', below: 'tight' },
    source: 'TM 5-3825-225-14&P, gear train',
  }),
  readSize({
    id: 'timing_chain_length',
    under: ['links'],
    label: 'timing chain length',
    of: 'timing_chain',
    description: 'Length of the stated number of links of the timing chain, pulled straight.',
    note: 'Without the number of links and the pull a length says nothing: write both under conditions.',
    family: ENGINE,
    usual: 'caliper',
    words: { above: 'stretched', below: 'short' },
    source: 'common practice, no source',
  }),
  read({
    id: 'timing_chain_slack',
    isNeverBelowZero: true,
    label: 'timing chain slack',
    of: 'timing_chain',
    dependsOn: ['camshaft', 'crankshaft'],
    isAssemblyFigure: true,
    description:
      'Play of the timing chain at its slack run, or how far a sprocket turns as the pull is reversed.',
    caution: FINGERS,
    family: ENGINE,
    usual: 'caliper',
    words: { above: 'slack', below: 'taut' },
    source: 'common practice, no source',
  }),
  read({
    ...DEGREES,
    id: 'ignition_timing',
    label: 'ignition timing',
    of: 'distributor',
    dependsOn: ['gear', 'timing_chain', 'camshaft', 'crankshaft'],
    description:
      'Degrees before top dead centre at which the spark comes, at a stated speed; below zero after it.',
    note: 'Write the speed under conditions, and whether the advance was connected.',
    caution: `${RUNNING} Ignition leads carry enough to hurt.`,
    source: 'common practice, no source',
  }),
  read({
    ...DEGREES,
    id: 'injection_timing',
    label: 'injection timing',
    of: 'injection_pump',
    dependsOn: ['gear', 'camshaft', 'crankshaft'],
    description:
      'Degrees before top dead centre at which injection begins in the first cylinder; below zero after it.',
    caution:
      'Fuel from an injector goes through the skin: never hold a hand before a nozzle or a leaking line. If it went in, see a doctor at once.',
    source: 'common practice, no source',
  }),
];
