/** What must be done or looked at once a part is new, and where that stands written. */
export interface Following {
  readonly text: string;
  readonly source: string;
}

const common = (...texts: readonly string[]): readonly Following[] =>
  texts.map((text) => ({ text, source: 'common practice, no source' }));

const NEW_CAP_BOLTS = common('housings measured again, caps tightened: new bolts reshape them');

/** By the id of the part, a line of the page each. The maker's manual comes first. */
export const AFTER_RENEWING: Readonly<Record<string, readonly Following[]>> = {
  crankshaft: common('every journal measured, and shells chosen by it', 'end play, flywheel runout, balance'),
  main_bolt: NEW_CAP_BOLTS,
  rod_bolt: NEW_CAP_BOLTS,
  rod: common(
    'weigh the rod, match it to the others, and check the balance',
    'housing bore with its cap tightened; length, bend and twist',
    'side clearance on its pin; piston protrusion',
  ),
  small_end_bush: common(
    'finish it to its pin once it is pressed in; rod bend and twist',
    'of a rod without a bush: renew the rod, or have it take one',
  ),
  cylinder: [
    {
      text: 'protrusion of a liner with a flange, and its counterbore',
      source: 'TM 5-6115-593-34: protrusion .004 to .006 in, four depths of the counterbore within .001 in',
    },
    ...common(
      'bore and piston clearance with the liner in place; ring end gaps',
      'pressure test of the water jacket where the liner is wet',
    ),
  ],
  piston: common(
    'ring end gaps in its own bore, side clearance in its grooves',
    'piston clearance, pin fit, piston protrusion, valve to piston',
  ),
  ring: common('ring end gaps, each in its own bore; side clearance in its groove'),
  head: common(
    'head flatness and thickness, valve recession, seat runout',
    'piston to head clearance, and the head gasket by the protrusion',
  ),
  block: common('main bores and their alignment, deck height', 'clearances, end play and protrusion anew'),
  valve: common('seat contact and seat leak test', 'valve recession, installed spring height, valve lash'),
  valve_guide: common(
    'ream or hone it to size, and measure the stem clearance',
    'recut the seat about the new guide, and measure its runout',
    'valve recession and installed spring height after that',
  ),
  valve_seat: common(
    'cut it about its guide; measure its width and runout',
    'seat leak test, valve recession, installed spring height',
  ),
  valve_spring: common('load at its installed height; clearance to coil bind'),
  camshaft: common(
    'new lifters where they slide on it',
    'cam timing, end play, valve lash or lifter preload',
  ),
  lifter: common('no new lifter on a worn lobe; valve lash or lifter preload'),
  cam_bearing: common('measure it once it is pressed in; oil holes in line'),
  gear: common('backlash with each gear that it meets; timing marks'),
  timing_chain: common('cam timing; ignition or injection timing'),
  injection_pump: common('injection timing'),
  distributor: common('ignition timing'),
};
