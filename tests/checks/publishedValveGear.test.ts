import { describe, expect, it } from 'vitest';
import { type PublishedRange, rangeOf } from './publishedRange.ts';
import { workedOut } from './workedOut.ts';

type Sizes = readonly [smallest: string, largest: string];

/** A fit as a source prints it: hole, shaft and what they leave. */
const printed = (
  [what, source]: readonly [string, string],
  measure: string,
  unit: 'in' | 'mm',
  [hole, holeSizes]: readonly [string, Sizes],
  [shaft, shaftSizes]: readonly [string, Sizes],
  [least, greatest]: Sizes,
): PublishedRange => ({
  what: `${what}, ${least} to ${greatest} ${unit}`,
  source,
  measure,
  unit,
  tight: { [hole]: holeSizes[0], [shaft]: shaftSizes[1] },
  loose: { [hole]: holeSizes[1], [shaft]: shaftSizes[0] },
  least,
  greatest,
});

/** Of makers' service data in millimetres, of which no government copy prints the like. */
const SERVICE = 'service data of a maker, read in a copy';

type Of = (
  about: readonly [string, string],
  unit: 'in' | 'mm',
  outer: Sizes,
  inner: Sizes,
  range: Sizes,
) => PublishedRange;

const fitOf =
  (measure: string, outerId: string, innerId: string): Of =>
  (about, unit, outer, inner, range) =>
    printed(about, measure, unit, [outerId, outer], [innerId, inner], range);

const stem = fitOf('valve_stem_clearance', 'valve_guide_bore', 'valve_stem_diameter');
const guide = fitOf('valve_guide_fit', 'valve_guide_hole_bore', 'valve_guide_outside_diameter');
const seat = fitOf('valve_seat_fit', 'valve_seat_hole_bore', 'valve_seat_outside_diameter');
const rocker = fitOf('rocker_clearance', 'rocker_bore', 'rocker_shaft_diameter');
const lifter = fitOf('lifter_clearance', 'lifter_bore', 'lifter_diameter');
const cam = fitOf('cam_bearing_clearance', 'cam_bearing_bore', 'cam_journal_diameter');
const camPress = fitOf('cam_bearing_fit', 'cam_housing_bore', 'cam_bearing_outside_diameter');
const gear = fitOf('gear_fit', 'gear_bore', 'gear_shaft_diameter');

const RANGES: readonly PublishedRange[] = [
  stem(
    ['an intake stem', 'TM 9-6115-464-34, p. 1-15'],
    'in',
    ['0.3740', '0.3750'],
    ['0.3725', '0.3735'],
    ['0.0005', '0.0025'],
  ),
  stem(
    ['a stem in a guide of .373', 'TM 5-6115-400-35, table 1'],
    'in',
    ['0.373', '0.373'],
    ['0.3715', '0.3720'],
    ['0.0010', '0.0015'],
  ),
  stem(
    ['a stem in a guide of .374', 'TM 5-6115-400-35, table 1'],
    'in',
    ['0.374', '0.374'],
    ['0.3715', '0.3720'],
    ['0.0020', '0.0025'],
  ),
  stem(['an intake stem', SERVICE], 'mm', ['7.017', '7.042'], ['6.971', '6.991'], ['0.026', '0.071']),
  stem(
    ['an exhaust stem in the same guide', SERVICE],
    'mm',
    ['7.017', '7.042'],
    ['6.959', '6.979'],
    ['0.038', '0.083'],
  ),
  stem(['an intake stem of 6 mm', SERVICE], 'mm', ['6.000', '6.012'], ['5.965', '5.980'], ['0.020', '0.047']),
  stem(
    ['an exhaust stem of 6 mm', SERVICE],
    'mm',
    ['6.000', '6.012'],
    ['5.940', '5.955'],
    ['0.045', '0.072'],
  ),
  guide(
    ['a guide in its hole', SERVICE],
    'mm',
    ['10.975', '10.996'],
    ['11.023', '11.034'],
    ['-0.059', '-0.027'],
  ),
  guide(
    ['an oversize guide', SERVICE],
    'mm',
    ['11.175', '11.196'],
    ['11.223', '11.234'],
    ['-0.059', '-0.027'],
  ),
  guide(
    ['an oversize guide of another engine', SERVICE],
    'mm',
    ['9.685', '9.696'],
    ['9.723', '9.734'],
    ['-0.049', '-0.027'],
  ),
  seat(
    ['a seat in its hole, computed', 'sizes of TM 9-6115-604-34, table 1-4'],
    'in',
    ['2.377', '2.378'],
    ['2.3805', '2.3815'],
    ['-0.0045', '-0.0025'],
  ),
  rocker(
    ['a rocker on its shaft', 'TM 55-1905-220-14-6'],
    'in',
    ['0.8750', '0.8760'],
    ['0.8735', '0.8740'],
    ['0.0010', '0.0025'],
  ),
  rocker(
    ['a rocker on its shaft', SERVICE],
    'mm',
    ['16.000', '16.018'],
    ['15.973', '15.988'],
    ['0.012', '0.045'],
  ),
  rocker(['another rocker', SERVICE], 'mm', ['18.007', '18.028'], ['17.979', '18.000'], ['0.007', '0.049']),
  rocker(['a third rocker', SERVICE], 'mm', ['11.000', '11.018'], ['10.973', '10.984'], ['0.016', '0.045']),
  lifter(
    ['a lifter, computed', 'sizes of TM 5-3810-206-35, p. 3-73'],
    'in',
    ['1.3125', '1.3135'],
    ['1.3100', '1.3110'],
    ['0.0015', '0.0035'],
  ),
  lifter(['a lifter', SERVICE], 'mm', ['16.000', '16.013'], ['15.947', '15.957'], ['0.043', '0.066']),
  lifter(['another lifter', SERVICE], 'mm', ['20.000', '20.021'], ['19.959', '19.980'], ['0.020', '0.062']),
  cam(
    ['a cam journal', 'TM 5-3820-233-35/2, table 1'],
    'in',
    ['1.5000', '1.5010'],
    ['1.4970', '1.4975'],
    ['0.0025', '0.0040'],
  ),
  cam(
    ['another cam journal', 'TM 5-3820-233-35/2, table 1'],
    'in',
    ['1.5010', '1.5030'],
    ['1.4980', '1.4985'],
    ['0.0025', '0.0050'],
  ),
  cam(
    ['journal 1', 'TM 5-3825-225-14&P, paras. 1-24 to 1-60'],
    'in',
    ['1.794', '1.7955'],
    ['1.791', '1.792'],
    ['0.0020', '0.0045'],
  ),
  cam(
    ['journal 2', 'TM 5-3825-225-14&P, paras. 1-24 to 1-60'],
    'in',
    ['1.784', '1.787'],
    ['1.781', '1.782'],
    ['0.0020', '0.0060'],
  ),
  cam(
    ['a cam bearing of the same block', 'TM 5-3820-233-35/2, table 1'],
    'in',
    ['2.1875', '2.1885'],
    ['2.1840', '2.1860'],
    ['0.0015', '0.0045'],
  ),
  cam(['a cam journal', SERVICE], 'mm', ['24.012', '24.025'], ['23.959', '23.980'], ['0.032', '0.066']),
  cam(['another cam journal', SERVICE], 'mm', ['55.063', '55.088'], ['54.99', '55.04'], ['0.023', '0.098']),
  cam(['a third cam journal', SERVICE], 'mm', ['38.005', '38.025'], ['37.935', '37.950'], ['0.055', '0.090']),
  camPress(
    ['a bearing from .0010 press to .0005 loose', 'TM 5-3820-233-35/2, table 1'],
    'in',
    ['2.1875', '2.1885'],
    ['2.1880', '2.1885'],
    ['-0.0010', '0.0005'],
  ),
  gear(
    ['a gear from .0015 press to none', 'TM 5-3820-233-35/2, table 1'],
    'in',
    ['1.1865', '1.1875'],
    ['1.1875', '1.1880'],
    ['-0.0015', '0.0000'],
  ),
  printed(
    ['end play of a camshaft', 'TM 5-3805-260-24: groove .360 ± .002, pin .353 ± .001, play .007 ± .003'],
    'camshaft_end_play',
    'in',
    ['cam_thrust_groove_width', ['0.358', '0.362']],
    ['cam_thrust_plate_thickness', ['0.352', '0.354']],
    ['0.004', '0.010'],
  ),
];

describe('a fit of the valve gear that a source prints', () => {
  it.each(RANGES)('is what its parts leave: $what ($source)', (published) => {
    expect(rangeOf(published)).toEqual([published.least, published.greatest]);
  });
});

interface Figure {
  readonly what: string;
  readonly source: string;
  readonly measure: string;
  readonly unit: string;
  readonly given: Readonly<Record<string, string>>;
  readonly gives: string;
}

const rate = (what: string, source: string, [closed, open]: Sizes, gives: string): Figure => ({
  what,
  source,
  measure: 'valve_spring_rate',
  unit: 'lbf/in',
  given: {
    valve_spring_load_closed: `${closed} lbf`,
    valve_spring_load_open: `${open} lbf`,
    valve_spring_length_closed: '1.492 in',
    valve_spring_length_open: '1.082 in',
  },
  gives,
});

const CARS_V8 = { intake_opening: '9', intake_closing: '55', exhaust_opening: '51', exhaust_closing: '13' };
const TRACTOR = { intake_opening: '3', intake_closing: '23', exhaust_opening: '48.5', exhaust_closing: '6' };
const ARTICLE = { intake_opening: '6', intake_closing: '42', exhaust_opening: '54', exhaust_closing: '12' };

const events = (
  of: string,
  given: typeof CARS_V8,
  gives: Readonly<Record<string, string>>,
): readonly Figure[] =>
  Object.entries(gives).map(([measure, each]) => ({
    what: measure.replaceAll('_', ' '),
    source: of,
    measure,
    unit: 'deg',
    given,
    gives: each,
  }));

const FIGURES: readonly Figure[] = [
  rate(
    'a spring by its middle loads, computed',
    'TM 10-4320-344-24, p. 4-5: 45 to 51 and 130 to 144 lb',
    ['48', '137'],
    '217.1',
  ),
  rate(
    'another spring by its middle loads, computed',
    'TM 9-6115-464-34, p. 1-15: 72 to 82 and 163 to 180 lb',
    ['77', '171.5'],
    '230.5',
  ),
  {
    what: 'a spring in newtons, computed',
    source: `${SERVICE}: 285 to 323 N at 40.52, 857 to 967 N at 29.74 mm`,
    measure: 'valve_spring_rate',
    unit: 'N/mm',
    given: {
      valve_spring_load_closed: '304 N',
      valve_spring_load_open: '912 N',
      valve_spring_length_closed: '40.52 mm',
      valve_spring_length_open: '29.74 mm',
    },
    gives: '56.4',
  },
  {
    what: 'a rocker, computed from its lift with .020 of lash',
    source: 'TM 5-6115-400-35, table 1: lift .5236, cam lift .360',
    measure: 'rocker_ratio',
    unit: '',
    given: { valve_lift: '0.5436 in', lifter_lift: '0.360 in' },
    gives: '1.51',
  },
  {
    what: 'a lobe',
    source: 'TM 5-3805-260-24, p. 1-11: lift .3300, over an invented base circle',
    measure: 'lobe_lift',
    unit: 'in',
    given: { lobe_height: '1.6300', lobe_base_circle: '1.3000' },
    gives: '0.3300',
  },
  {
    what: 'a face flatter than its seat',
    source: 'TM 5-3810-206-35, p. 3-73: 30 and 29.25 degrees',
    measure: 'valve_interference_angle',
    unit: 'deg',
    given: { valve_seat_angle: '30', valve_face_angle: '29.25' },
    gives: '0.75',
  },
  {
    what: 'a face steeper than its seat, computed',
    source: 'TM 10-3930-653-14&P: 45 and 45.5 degrees',
    measure: 'valve_interference_angle',
    unit: 'deg',
    given: { valve_seat_angle: '45', valve_face_angle: '45.5' },
    gives: '-0.5',
  },
  ...events('service data of a V8 engine prints 244, 244 and 22', CARS_V8, {
    intake_duration: '244',
    exhaust_duration: '244',
    valve_overlap: '22',
    intake_centreline: '113',
    exhaust_centreline: '109',
    lobe_separation: '111',
  }),
  ...events('events of a tractor’s manual, p. 19; the rest is computed', TRACTOR, {
    intake_duration: '206',
    exhaust_duration: '234.5',
    valve_overlap: '9',
    intake_centreline: '100',
    exhaust_centreline: '111.25',
    lobe_separation: '105.625',
  }),
  ...events('a camshaft article prints 228, 108 after top dead centre and 6 + 12 = 18', ARTICLE, {
    intake_duration: '228',
    intake_centreline: '108',
    valve_overlap: '18',
  }),
];

describe('a figure of the valve gear that a source prints', () => {
  it.each(FIGURES)('is worked out: $what, $gives $unit ($source)', ({ given, gives, ...wanted }) => {
    expect(workedOut(wanted, given, gives)).toBe(gives);
  });

  it('an advanced camshaft moves its lobe centres and not its separation (a camshaft article: 20/60, 60/20)', () => {
    const straight = {
      intake_opening: '20',
      intake_closing: '60',
      exhaust_opening: '60',
      exhaust_closing: '20',
    };
    const advanced = {
      intake_opening: '25',
      intake_closing: '55',
      exhaust_opening: '65',
      exhaust_closing: '15',
    };
    const of = (measure: string, given: typeof straight) => workedOut({ measure, unit: 'deg' }, given, '0');
    expect(of('intake_duration', straight)).toBe('260');
    expect(of('intake_duration', advanced)).toBe('260');
    expect([of('intake_centreline', straight), of('exhaust_centreline', straight)]).toEqual(['110', '110']);
    expect([of('intake_centreline', advanced), of('exhaust_centreline', advanced)]).toEqual(['105', '115']);
    expect([of('lobe_separation', straight), of('lobe_separation', advanced)]).toEqual(['110', '110']);
  });
});
