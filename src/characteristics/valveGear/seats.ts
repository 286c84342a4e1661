import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { clearance } from '../clearance.ts';
import { read, readSize } from '../readFigure.ts';
import { clearanceOf, diameter } from '../sizes.ts';
import { workedOut } from '../workedOut.ts';

const VALVE = familyOf('valve');

const seatAngle = readSize({
  id: 'valve_seat_angle',
  label: 'valve seat angle',
  of: 'valve_seat',
  description: 'Angle of a valve seat to the plane of the head.',
  quantity: 'angle',
  family: VALVE,
  usual: 'protractor',
  words: { above: 'steep', below: 'flat' },
  source: 'TM 5-4310-276-14, table 1-1: 44.75 to 45.0 degrees',
});

const faceAngle = readSize({
  id: 'valve_face_angle',
  label: 'valve face angle',
  of: 'valve',
  description: 'Angle of the face of a valve to the plane of its head.',
  quantity: 'angle',
  family: VALVE,
  usual: 'protractor',
  words: { above: 'steep', below: 'flat' },
  source: 'TM 5-4310-276-14, table 1-1: 45.75 to 46.0 degrees',
});

/** Seats in the head, and how a valve lies in its own. */
export const valveSeats: readonly Characteristic[] = [
  ...diameter({
    name: 'valve_seat_outside',
    label: 'valve seat outside',
    size: 'diameter',
    of: 'valve_seat',
    description: 'Diameter of a valve seat insert outside.',
    family: VALVE,
    usual: 'micrometer',
    taperBy: 'range',
    dimension: 'size',
    source: 'TM 9-6115-604-34, table 1-4',
  }),
  ...diameter({
    name: 'valve_seat_hole',
    label: 'valve seat hole',
    size: 'bore',
    of: 'valve_seat_hole',
    description: 'Bore in the head that a valve seat insert is pressed into, the seat out.',
    family: VALVE,
    usual: 'bore gauge',
    taperBy: 'range',
    dimension: 'size',
    source: 'TM 9-6115-604-34, table 1-4',
  }),
  clearanceOf(
    {
      id: 'valve_seat_fit',
      mayBePressed: true,
      label: 'valve seat fit',
      of: 'valve_seat',
      dependsOn: ['valve_seat_hole'],
      description: 'Fit of a valve seat insert in the head, before it goes in; a press fit is below zero.',
      note: 'Manuals print a press fit without its sign: .0025 to .0045 of press is written −0.0045 to −0.0025.',
      caution:
        'Seats go in with the head hot or the seat frozen, and come out under strain: hard seats break and fly. Eye protection, gloves against heat and cold.',
      family: VALVE,
      formula: 'valve seat hole − valve seat outside',
      source: 'TM 9-6115-604-34, table 1-4',
    },
    [
      {
        route: 'valve seat hole − valve seat outside',
        inputs: ['valve_seat_hole_bore', 'valve_seat_outside_diameter'],
        compute: ([hole, seat]) => hole && seat && clearance(hole, seat, []),
      },
    ],
    'other',
    [
      {
        unit: 'in',
        given: { valve_seat_hole_bore: '2.378', valve_seat_outside_diameter: '2.3805' },
        least: '-0.0025',
        greatest: '-0.0025',
        source: 'computed from the sizes of TM 9-6115-604-34, table 1-4',
      },
    ],
  ),
  seatAngle,
  faceAngle,
  workedOut({
    id: 'valve_interference_angle',
    label: 'valve interference angle',
    of: 'valve_seat',
    dependsOn: ['valve'],
    description:
      'How much a valve seat is steeper than the face of its valve; below zero the face is the steeper.',
    quantity: 'angle',
    family: VALVE,
    usual: 'protractor',
    words: { above: 'wide', below: 'narrow' },
    onlyWithLimits: true,
    route: 'valve seat angle − valve face angle',
    formula: 'valve_seat_angle - valve_face_angle',
    from: [seatAngle, faceAngle],
    source: 'TM 5-3810-206-35, p. 3-73: seat 30, face 29.25 degrees',
    examples: [
      {
        unit: 'deg',
        given: { valve_seat_angle: '30', valve_face_angle: '29.25' },
        least: '0.75',
        greatest: '0.75',
        source: 'TM 5-3810-206-35, p. 3-73',
      },
    ],
  }),
  readSize({
    id: 'valve_seat_width',
    label: 'valve seat width',
    of: 'valve_seat',
    dependsOn: ['valve'],
    description: 'Width of the ring on which a valve seats, by scale or by the mark in the blue.',
    family: VALVE,
    usual: 'caliper',
    words: { above: 'wide', below: 'narrow' },
    source: 'TM 55-1905-220-14-6, cylinder head',
  }),
  read({
    id: 'valve_seat_runout',
    isNeverBelowZero: true,
    label: 'valve seat runout',
    of: 'valve_seat',
    dependsOn: ['valve_guide'],
    description: 'Full indicator reading on a valve seat, the dial turned on a pilot in the guide.',
    family: VALVE,
    usual: 'dial indicator',
    source: 'TM 9-6115-604-34, table 1-4, and TM 55-1905-220-14-6: .002 in',
  }),
  read({
    id: 'valve_recession',
    label: 'valve recession',
    of: 'valve_seat',
    dependsOn: ['valve', 'head'],
    description: 'How far the head of a closed valve lies below the face of the cylinder head.',
    note: 'A valve that stands proud is below zero here: .006 of protrusion is −0.006. Manuals print either sign.',
    family: VALVE,
    usual: 'depth micrometer',
    words: { above: 'sunk', below: 'proud' },
    source: 'TM 55-1905-220-14-6, cylinder head: from .023 in recessed to .006 in proud',
  }),
];
