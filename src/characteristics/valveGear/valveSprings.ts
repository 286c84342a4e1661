import { ENGINE, familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { read, readSize } from '../readFigure.ts';
import { workedOut } from '../workedOut.ts';
import { valveLift } from './motion.ts';
import { springSizes } from './springs.ts';

const VALVE = familyOf('valve');

const UNDER_LOAD =
  'A spring under load flies when it slips: eye protection, a compressor or tester that holds it square, and nobody in line with it.';
const FALLS =
  'With the springs off and the head on, a valve falls into its cylinder: bring the piston to top dead centre, or hold the valve with air, and then keep clear of the crankshaft, which the air turns.';

const installedHeight = read({
  id: 'valve_spring_installed_height',
  label: 'valve spring installed height',
  of: 'valve_spring',
  dependsOn: ['valve', 'valve_seat'],
  description: 'Length of a valve spring when its valve is shut: from its seat in the head to its retainer.',
  note: 'Grinding valve and seat makes it longer and the spring weaker; shims bring it back.',
  caution: FALLS,
  family: VALVE,
  usual: 'caliper',
  words: { above: 'long', below: 'short' },
  source: 'common practice, no source',
});

const solidLength = readSize({
  id: 'valve_spring_solid_length',
  label: 'valve spring solid length',
  of: 'valve_spring',
  description: 'Length of a valve spring that is pressed until its coils touch.',
  caution: UNDER_LOAD,
  family: VALVE,
  usual: 'caliper',
  words: { above: 'long', below: 'short' },
  source: 'common practice, no source',
});

const load = (at: 'closed' | 'open', more: Partial<Characteristic>): Characteristic =>
  readSize({
    id: `valve_spring_load_${at}`,
    label: `valve spring load, valve ${at}`,
    of: 'valve_spring',
    description: `Load of a valve spring at the length that the manual gives for a valve that is ${at}.`,
    note: `Without its length a load says nothing: write it as valve_spring_length_${at}.`,
    caution: UNDER_LOAD,
    quantity: 'force',
    family: VALVE,
    usual: 'spring scale',
    words: { above: 'strong', below: 'weak' },
    source: 'TM 10-4320-344-24, p. 4-5, and TM 9-6115-464-34, p. 1-15',
    ...more,
  });

const testLength = (at: 'closed' | 'open'): Characteristic =>
  readSize({
    id: `valve_spring_length_${at}`,
    label: `valve spring test length, valve ${at}`,
    of: 'valve_spring',
    description: `Length at which the load of the valve springs was read for a valve that is ${at}: one for all.`,
    family: ENGINE,
    usual: 'caliper',
    words: { above: 'long', below: 'short' },
    source: 'TM 10-4320-344-24, p. 4-5, and TM 9-6115-464-34, p. 1-15',
  });

const [closed, open] = [load('closed', {}), load('open', {})];
const [closedAt, openAt] = [testLength('closed'), testLength('open')];

export const valveSprings: readonly Characteristic[] = [
  ...springSizes({ name: 'valve_spring', label: 'valve spring', family: VALVE }),
  ...springSizes({ name: 'inner_valve_spring', label: 'inner valve spring', family: VALVE }),
  closedAt,
  openAt,
  closed,
  open,
  workedOut({
    id: 'valve_spring_rate',
    label: 'valve spring rate',
    of: 'valve_spring',
    description: 'How much the load of a valve spring grows with each unit that it is pressed.',
    quantity: 'spring rate',
    family: VALVE,
    usual: 'spring scale',
    words: { above: 'stiff', below: 'soft' },
    onlyWithLimits: true,
    route: '(load open − load closed) / (test length closed − test length open)',
    formula:
      '(valve_spring_load_open - valve_spring_load_closed) / (valve_spring_length_closed - valve_spring_length_open)',
    from: [open, closed, closedAt, openAt],
    source: 'textbook definition of a spring rate: change of load over change of length',
    examples: [
      {
        unit: 'lbf',
        resultUnit: 'lbf/in',
        given: {
          valve_spring_load_open: '137',
          valve_spring_load_closed: '48',
          valve_spring_length_closed: '1.492 in',
          valve_spring_length_open: '1.082 in',
        },
        least: '217.1',
        greatest: '217.1',
        source: 'computed from the middle loads of TM 10-4320-344-24, p. 4-5',
      },
    ],
  }),
  solidLength,
  installedHeight,
  workedOut({
    id: 'coil_bind_margin',
    label: 'coil bind margin',
    of: 'valve_spring',
    dependsOn: ['valve', 'valve_seat', 'rocker', 'camshaft'],
    description: 'What is left between the coils of a valve spring when its valve is wide open.',
    family: VALVE,
    usual: 'feeler gauge',
    words: { above: 'wide', below: 'close' },
    onlyWithLimits: true,
    route: 'installed height − valve lift − solid length',
    formula: 'valve_spring_installed_height - valve_lift - valve_spring_solid_length',
    from: [installedHeight, valveLift, solidLength],
    source: 'common practice, no source: .050 in',
    examples: [
      {
        unit: 'in',
        given: {
          valve_spring_installed_height: '1.700',
          valve_lift: '0.500',
          valve_spring_solid_length: '1.120',
        },
        least: '0.080',
        greatest: '0.080',
        source: 'worked by hand, invented sizes',
      },
    ],
  }),
  read({
    id: 'retainer_to_seal_clearance',
    isNeverBelowZero: true,
    label: 'retainer to seal clearance',
    of: 'valve_spring',
    dependsOn: ['valve', 'valve_guide', 'rocker', 'camshaft'],
    description:
      'What is left between the retainer of a spring and the seal on the guide, the valve wide open.',
    family: VALVE,
    usual: 'caliper',
    words: { above: 'wide', below: 'close' },
    source: 'common practice, no source: .050 in',
  }),
];
