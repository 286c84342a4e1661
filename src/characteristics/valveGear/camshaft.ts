import { ENGINE, familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { clearance } from '../clearance.ts';
import { read, readSize } from '../readFigure.ts';
import { clearanceOf, diameter } from '../sizes.ts';

const CAM_BEARING = familyOf('cam bearing');
const ALONG = { stations: ['front', 'rear'], directions: ['a', 'b'] };
const GRIPPED =
  'Lobes and gears have sharp edges, and belts and chains take fingers in: gloves off near what turns, and turn the engine by hand.';

/** The camshaft in its bearings. */
export const camshaft: readonly Characteristic[] = [
  ...diameter({
    name: 'cam_journal',
    label: 'cam journal',
    size: 'diameter',
    of: 'cam_journal',
    usualGrid: ALONG,
    description: 'Diameter of a bearing journal of the camshaft.',
    family: CAM_BEARING,
    usual: 'micrometer',
    taperBy: 'ends',
    dimension: 'size',
    source: 'TM 5-3820-233-35/2, table 1',
  }),
  ...diameter({
    name: 'cam_housing',
    label: 'cam housing',
    size: 'bore',
    of: 'cam_housing',
    description: 'Bore in the block or the head that a cam bearing is pressed into, the bearing out.',
    family: CAM_BEARING,
    usual: 'bore gauge',
    taperBy: 'ends',
    source: 'TM 5-3820-233-35/2, table 1',
  }),
  ...diameter({
    name: 'cam_bearing_outside',
    label: 'cam bearing outside',
    size: 'diameter',
    of: 'cam_bearing',
    description: 'Diameter of a cam bearing outside, before it is pressed in.',
    family: CAM_BEARING,
    usual: 'micrometer',
    taperBy: 'ends',
    source: 'TM 5-3820-233-35/2, table 1',
  }),
  clearanceOf(
    {
      id: 'cam_bearing_fit',
      mayBePressed: true,
      label: 'cam bearing fit',
      of: 'cam_bearing',
      dependsOn: ['cam_housing'],
      description: 'Fit of a cam bearing in its housing, before it is pressed in; a press fit is below zero.',
      note: 'Manuals print a press fit without its sign.',
      family: CAM_BEARING,
      formula: 'cam housing bore − cam bearing outside',
      source: 'TM 5-3820-233-35/2, table 1',
    },
    [
      {
        route: 'cam housing bore − cam bearing outside',
        inputs: ['cam_housing_bore', 'cam_bearing_outside_diameter'],
        compute: ([housing, bearing]) => housing && bearing && clearance(housing, bearing, []),
      },
    ],
    'other',
    [
      {
        unit: 'in',
        given: { cam_housing_bore: '2.1875', cam_bearing_outside_diameter: '2.1885' },
        least: '-0.0010',
        greatest: '-0.0010',
        source: 'TM 5-3820-233-35/2, table 1: .0010 of press at most',
      },
    ],
  ),
  ...diameter({
    name: 'cam_bearing',
    label: 'cam bearing',
    size: 'bore',
    of: 'cam_bearing',
    dependsOn: ['cam_housing'],
    usualGrid: ALONG,
    description: 'Bore of a cam bearing, pressed in and finished, or of its housing where it has none.',
    family: CAM_BEARING,
    usual: 'bore gauge',
    taperBy: 'ends',
    dimension: 'bore with shells',
    source: 'TM 5-3820-233-35/2, table 1',
  }),
  clearanceOf(
    {
      id: 'cam_bearing_clearance',
      label: 'cam bearing clearance',
      of: 'cam_bearing',
      dependsOn: ['cam_journal', 'cam_housing'],
      description: 'Diametral oil clearance of a camshaft bearing.',
      family: CAM_BEARING,
      formula: 'cam bearing bore − cam journal, or read directly',
      source: 'TM 5-3820-233-35/2, table 1',
    },
    [
      {
        route: 'cam bearing bore − cam journal',
        inputs: ['cam_bearing_bore', 'cam_journal_diameter'],
        compute: ([bore, journal]) => bore && journal && clearance(bore, journal, []),
      },
    ],
    'gauging strip',
    [
      {
        unit: 'in',
        given: { cam_bearing_bore: '1.5000', cam_journal_diameter: '1.4975' },
        least: '0.0025',
        greatest: '0.0025',
        source: 'TM 5-3820-233-35/2, table 1: least clearance .0025',
      },
    ],
  ),
  readSize({
    id: 'cam_thrust_groove_width',
    label: 'cam thrust groove width',
    of: 'camshaft',
    description: 'Width of the groove of the camshaft that its thrust plate or pin holds.',
    family: ENGINE,
    usual: 'inside micrometer',
    words: { above: 'wide', below: 'narrow' },
    source: 'TM 5-3805-260-24: .360 ± .002 in',
  }),
  readSize({
    id: 'cam_thrust_plate_thickness',
    label: 'cam thrust plate thickness',
    of: 'cam_thrust_plate',
    description: 'Thickness of the plate, or diameter of the pin, that holds the camshaft along its axis.',
    family: ENGINE,
    usual: 'micrometer',
    words: { above: 'thick', below: 'thin' },
    source: 'TM 5-3805-260-24: .353 ± .001 in',
  }),
  clearanceOf(
    {
      id: 'camshaft_end_play',
      isNeverBelowZero: true,
      label: 'camshaft end play',
      of: 'cam_thrust_plate',
      dependsOn: ['camshaft'],
      figure: 'other',
      isAssemblyFigure: true,
      description: 'How far the camshaft moves along its axis.',
      caution: GRIPPED,
      family: ENGINE,
      formula: 'read directly with a dial, or thrust groove width − thrust plate thickness',
      source: 'TM 5-3805-260-24: .007 ± .003 in',
    },
    [
      {
        route: 'thrust groove width − thrust plate thickness',
        inputs: ['cam_thrust_groove_width', 'cam_thrust_plate_thickness'],
        compute: ([groove, plate]) => groove && plate && clearance(groove, plate, []),
      },
    ],
    'dial indicator',
    [
      {
        unit: 'in',
        given: { cam_thrust_groove_width: '0.360', cam_thrust_plate_thickness: '0.353' },
        least: '0.007',
        greatest: '0.007',
        source: 'TM 5-3805-260-24: groove, thrust pin and end play',
      },
    ],
  ),
  read({
    id: 'camshaft_runout',
    isNeverBelowZero: true,
    label: 'camshaft runout',
    of: 'camshaft',
    dependsOn: ['cam_journal'],
    description: 'Full indicator reading at a cam journal, the camshaft turned in its supports.',
    note: 'Some manuals give the bend, which is half of it.',
    family: CAM_BEARING,
    usual: 'dial indicator',
    source: 'TM 10-3930-653-14&P, valve gear (a bend is half the reading)',
  }),
];
