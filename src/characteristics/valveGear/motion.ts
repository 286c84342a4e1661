import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { read } from '../readFigure.ts';
import { workedOut } from '../workedOut.ts';

const VALVE = familyOf('valve');
const TRAIN = ['valve', 'rocker', 'pushrod', 'lifter', 'camshaft'];

const TURNED =
  'The crankshaft is turned for it: ignition and fuel off, turn by hand, fingers clear of cams, rockers and belts.';
const HOT =
  'The engine is hot, and with some makers running: gloves, sleeves and hair away from belts, fan and rockers, and guards as the manual has them.';

const lash = (how: 'cold' | 'hot', caution: string): Characteristic =>
  read({
    id: `valve_lash_${how}`,
    isNeverBelowZero: true,
    label: `valve lash, ${how}`,
    of: 'rocker',
    // A valve sinks into a seat that is cut, and a new guide has its seat cut again.
    dependsOn: [...TRAIN.filter((part) => part !== 'rocker'), 'valve_seat', 'valve_guide'],
    isAssemblyFigure: true,
    description: `Play between a valve and what opens it, the cam on its base circle, the engine ${how}.`,
    note: 'Cold and hot lash have limits of their own: the manual says which is meant.',
    caution,
    family: VALVE,
    usual: 'feeler gauge',
    words: { above: 'loose', below: 'tight' },
    source: 'TM 5-3820-233-12/1, p. 4-5: .011 and .013 in cold, .008 and .010 in hot',
  });

const LIFT_WORDS = { above: 'high', below: 'low' };

export const valveLift = read({
  id: 'valve_lift',
  isNeverBelowZero: true,
  label: 'valve lift',
  of: 'rocker',
  dependsOn: TRAIN.filter((part) => part !== 'rocker'),
  isAssemblyFigure: true,
  description: 'How far a valve opens, by a dial on its retainer, the lash taken up.',
  note: 'With the lash left in, the valve opens by so much less.',
  caution: TURNED,
  family: VALVE,
  usual: 'dial indicator',
  words: LIFT_WORDS,
  source: 'TM 9-2815-256-24: lift at the valve at zero lash',
});

const lifterLift = read({
  id: 'lifter_lift',
  isNeverBelowZero: true,
  label: 'lifter lift',
  of: 'lifter',
  dependsOn: ['camshaft'],
  isAssemblyFigure: true,
  description: 'How far the lifter or pushrod of a valve rises on its lobe, by a dial.',
  caution: TURNED,
  family: VALVE,
  usual: 'dial indicator',
  words: LIFT_WORDS,
  source: 'TM 5-6115-400-35, table 1: cam lift .360 in',
});

/** How far the valves move, and what play they leave: of the valve gear assembled. */
export const valveMotion: readonly Characteristic[] = [
  lifterLift,
  valveLift,
  workedOut({
    id: 'rocker_ratio',
    label: 'rocker ratio',
    of: 'rocker',
    dependsOn: TRAIN.filter((part) => part !== 'rocker'),
    description: 'How much farther a valve moves than its lifter.',
    quantity: 'number',
    family: VALVE,
    usual: 'dial indicator',
    words: LIFT_WORDS,
    onlyWithLimits: true,
    route: 'valve lift / lifter lift',
    formula: 'valve_lift / lifter_lift',
    from: [valveLift, lifterLift],
    source: 'TM 5-6115-400-35, table 1',
    examples: [
      {
        unit: 'in',
        resultUnit: '',
        given: { valve_lift: '0.5436', lifter_lift: '0.360' },
        least: '1.51',
        greatest: '1.51',
        source: 'computed from TM 5-6115-400-35, table 1: lift .5236 with .020 of lash, cam lift .360',
      },
    ],
  }),
  lash('cold', TURNED),
  lash('hot', HOT),
  read({
    id: 'valve_to_piston_clearance',
    isNeverBelowZero: true,
    label: 'valve to piston clearance',
    of: 'valve',
    dependsOn: ['piston', 'rod', 'crankshaft', 'block', 'head', 'camshaft', 'rocker'],
    isAssemblyFigure: true,
    description:
      'Least gap between a valve and its piston about top dead centre on the overlap, with a light spring and a dial, or by the thickness of clay.',
    note: 'Valve and piston are nearest beside top dead centre and not at full lift.',
    caution: TURNED,
    family: VALVE,
    usual: 'dial indicator',
    words: { above: 'wide', below: 'close' },
    source: 'common practice, no source: .080 in intake, .100 in exhaust, more with aluminium rods',
  }),
];
