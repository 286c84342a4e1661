/** What must be done or looked at once a part is new, and where that stands written. */
export interface Following {
  readonly text: string;
  readonly source: string;
}

const common = (...texts: readonly string[]): readonly Following[] =>
  texts.map((text) => ({ text, source: 'common practice, no source' }));

const NEW_CAP_BOLTS = common(
  'housing bores measured again, caps tightened with the new bolts: they pull them to another shape',
);

/** By the id of the part. The maker's manual comes first. */
export const AFTER_RENEWING: Readonly<Record<string, readonly Following[]>> = {
  crankshaft: common(
    'every journal measured, and shells chosen by it',
    'end play; flywheel runout; balance with what is bolted to it',
  ),
  thrust_washer: common('crankshaft end play'),
  main_bolt: NEW_CAP_BOLTS,
  rod_bolt: NEW_CAP_BOLTS,
  main_shell: common('oil clearance at each renewed pair, caps tightened as in the engine'),
  rod_shell: common('oil clearance at each renewed pair, caps tightened as in the engine'),
  rod: common(
    'weigh the rod and match its weight to the others; balance anew where the set differs from the old one',
    'housing bore and roundness, cap tightened as in the engine; length, bend and twist',
    'side clearance on its pin; piston protrusion',
  ),
  small_end_bush: common(
    'bush finished to its pin once it is pressed in, oil holes in line',
    'rod length, bend and twist',
  ),
  cylinder: [
    {
      text: 'protrusion of each new liner that has a flange, clamped, beside its neighbours; its counterbore',
      source: 'TM 5-6115-593-34: protrusion .004 to .006 in, four depths of the counterbore within .001 in',
    },
    ...common(
      'bore size, roundness and piston clearance with the liner in place',
      'ring end gaps in the new bore',
      'pressure test of the water jacket where the liner is wet',
    ),
  ],
  piston: common(
    'ring end gaps in its own bore, ring side clearance in its grooves',
    'piston clearance in its own bore; pin fit',
    'weigh it and match its weight to the others; balance anew where the set differs from the old one',
    'piston protrusion; valve to piston',
  ),
  piston_pin: common('fit in the piston and in the small end; weight'),
  ring: common('ring end gaps, each in its own bore', 'side clearance, each in its own groove'),
  head: common(
    'head flatness and thickness; valve recession and seat runout of the head that goes on',
    'combustion chamber volume or piston to head clearance; head gasket by the protrusion',
  ),
  block: common(
    'main bores, their alignment, and deck height',
    'every bearing clearance, end play and piston protrusion anew',
  ),
  valve: common(
    'seat contact with marking blue; seat leak test',
    'valve recession, installed spring height, valve lash',
  ),
  valve_guide: common(
    'ream or hone it to size, and measure the stem clearance',
    'recut the seat about the new guide, and measure its runout',
    'valve recession and installed spring height once the seat is cut',
  ),
  valve_seat: common(
    'cut the new seat about its guide; measure its width and runout',
    'seat leak test; valve recession and installed spring height',
  ),
  valve_spring: common('load at its installed height, and clearance to coil bind at full lift'),
  camshaft: common(
    'new lifters on a new camshaft where they slide',
    'cam timing, end play and valve lash or lifter preload',
  ),
  lifter: common('its lobe looked at: no new lifter on a worn lobe', 'valve lash or lifter preload'),
  cam_bearing: common('bore measured once it is pressed in, oil holes in line; the camshaft turns by hand'),
  pushrod: common('valve lash or lifter preload'),
  rocker: common('contact on the valve tip; valve lash'),
  gear: common('backlash with each gear that it meets; timing marks'),
  timing_chain: common('cam timing; ignition or injection timing'),
  oil_pump: common('pump primed before the engine is turned; oil pressure at the first start'),
  injection_pump: common('injection timing'),
  distributor: common('ignition timing'),
  head_gasket: common('its thickness by the piston protrusion, where the maker sells several'),
  damper: common('runout; timing mark against top dead centre'),
  flywheel: common('runout of its face; balance with the crankshaft'),
};
