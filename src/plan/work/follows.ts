import type { Operation } from './operation.ts';

/** What must be done or looked at because of a job. Common practice, no source, unless the maker's manual says otherwise. */
export const FOLLOWS: Readonly<Partial<Record<Operation, readonly string[]>>> = {
  straighten: ['crack test again after straightening', 'read the runout again at every main'],
  'line bore': [
    'crank axis against the deck: it may have risen, and with it the pistons',
    'timing gears: backlash, where the axis moved',
    'every housing measured again, its cap tightened as in the engine',
  ],
  surface: [
    'banks equal and parallel to the crank; block height, head thickness and both together against their limits',
    'piston protrusion, and the head gasket by it; liner counterbores',
    'valve to piston, cam timing, pushrods or lifter preload, injector projection',
    'bolts that may bottom; front cover; of a vee engine the intake faces and their ports',
  ],
  bore: [
    'torque plate on and main caps tight while it is bored and honed',
    'each bore finished to its own measured piston, and marked with it',
    'ring end gaps in the finished bores; chamfer at the top; crosshatch as the ring maker asks',
  ],
  resize: [
    'housing bore and roundness measured, cap tightened as in the engine',
    'rod length, bend and twist',
  ],
  grind: [
    'crack test again after grinding',
    'fillet radii, thrust width and depth of the hard case against the manual',
    'oil holes chamfered, journals polished, galleries brushed and plugged anew',
    'undersize stamped on the crankshaft; bearings of that undersize',
    'every journal measured here, washed and at room temperature',
  ],
};
