/** A figure that may be left open on one side, as printed. */
type Range = readonly [least: string | undefined, greatest: string | undefined];

/** What one row of a table limits, at one place of the engine. */
export interface PlacedRow {
  readonly measure: string;
  /** Where it is judged: a position as a session writes it; none of what is measured once an engine. */
  readonly where?: string;
  /** The positions that it holds for, where not all. */
  readonly at?: string;
  /** Of a row for a service size: how it is stated, and what is fitted then. */
  readonly size?: string;
  readonly fitted?: string;
  /** What else the limit says, such as the length that a bend is meant for. */
  readonly more?: string;
  readonly new?: Range;
  readonly wear?: Range;
}

export interface PublishedTable {
  readonly source: string;
  readonly unit: 'in' | 'mm';
  readonly layout: string;
  /** Characteristics of its own, for a row that the program knows no figure for. */
  readonly own?: string;
  /** How many rows the table prints. */
  readonly count: number;
  /** What is printed at the head of a row, and what it limits: one row may hold for several figures. */
  readonly rows: readonly (readonly [printed: string, ...places: readonly PlacedRow[]])[];
}

type Bands = Pick<PlacedRow, 'new' | 'wear'>;

const range = (text: string): Range => {
  const [least, greatest] = text.split(' to ');
  return [least, greatest];
};
const of = (newParts: string, more: Omit<PlacedRow, 'measure'> = {}): Omit<PlacedRow, 'measure'> => ({
  new: range(newParts),
  ...more,
});
const least = (figure: string): Range => [figure, undefined];
const most = (figure: string): Range => [undefined, figure];

const each = (measure: string, about: Omit<PlacedRow, 'measure'>, where = '1'): PlacedRow => ({
  measure,
  where,
  ...about,
});
const engine = (measure: string, about: Omit<PlacedRow, 'measure'>): PlacedRow => ({ measure, ...about });
const ring = (measure: string, name: string, about: Bands): PlacedRow => ({
  measure,
  at: name,
  where: `1 ${name}`,
  ...about,
});

/** Main journals and crankpins alike, as a table says that prints one row for both. */
const bothJournals = (figure: string, about: Bands): readonly PlacedRow[] => [
  each(`main_journal_${figure}`, about),
  each(`crankpin_${figure}`, about),
];

const shell = (size: string, newParts: string, worn: string): PlacedRow =>
  each('main_shell_thickness', {
    ...of(newParts),
    wear: least(worn),
    size,
    fitted: `main_shells: { size: ${size} }`,
  });

const oversize = (size: string, newParts: string): PlacedRow =>
  each('piston_diameter', { ...of(newParts), size, fitted: `pistons: { size: ${size} }` });

const SIX_IN_LINE = 'cylinders: 6, mains: 7, crankpins: 6';
const FOUR_IN_LINE = 'cylinders: 4, mains: 5, crankpins: 4';

export const TABLES: readonly PublishedTable[] = [
  {
    source: 'TM 55-1905-219-14-4',
    unit: 'in',
    layout: `${SIX_IN_LINE}, rings: [fire, second, third, fourth, oil]`,
    count: 17,
    rows: [
      ['piston skirt', each('piston_diameter', of('4.2428 to 4.2450'))],
      ['skirt to liner', each('piston_clearance', { ...of('0.0045 to 0.0083'), wear: most('0.0120') })],
      ['piston out of round', each('piston_out_of_round', { new: most('0.0005') })],
      ['piston taper', each('piston_taper', { new: most('0.0005') })],
      ['fire ring gap', ring('ring_end_gap', 'fire', { ...of('0.0230 to 0.0380'), wear: most('0.0600') })],
      [
        'rings 2 to 4 gap',
        ...['second', 'third', 'fourth'].map((name) =>
          ring('ring_end_gap', name, { ...of('0.0180 to 0.0430'), wear: most('0.0600') }),
        ),
      ],
      ['oil ring gap', ring('ring_end_gap', 'oil', { ...of('0.0080 to 0.0230'), wear: most('0.0430') })],
      [
        'ring to groove, no. 1',
        ring('ring_side_clearance', 'fire', { ...of('0.0040 to 0.0070'), wear: most('0.0180') }),
      ],
      [
        'ring to groove, no. 2',
        ring('ring_side_clearance', 'second', { ...of('0.0100 to 0.0130'), wear: most('0.0220') }),
      ],
      [
        'ring to groove, no. 3 and 4',
        ...['third', 'fourth'].map((name) =>
          ring('ring_side_clearance', name, { ...of('0.0040 to 0.0070'), wear: most('0.0130') }),
        ),
      ],
      [
        'oil ring to groove',
        ring('ring_side_clearance', 'oil', { ...of('0.0015 to 0.0055'), wear: most('0.0080') }),
      ],
      ['main journal', each('main_journal_diameter', of('4.4990 to 4.5000'))],
      ['rod journal', each('crankpin_diameter', of('2.9990 to 3.0000'))],
      [
        'journal out of round',
        ...bothJournals('out_of_round', { new: most('0.00025'), wear: most('0.0010') }),
      ],
      ['journal taper', ...bothJournals('taper', { new: most('0.0005'), wear: most('0.0015') })],
      [
        'runout on no. 1 and 7, of no. 2 and 6',
        ...['2', '6'].map((main) => each('crankshaft_runout', { new: most('0.0020'), at: main }, main)),
      ],
      [
        'runout on no. 1 and 7, of no. 3 and 5',
        ...['3', '5'].map((main) => each('crankshaft_runout', { new: most('0.0040'), at: main }, main)),
      ],
    ],
  },
  {
    source: 'TM 5-3895-347-14P and 348-14P-2, eight sheets',
    unit: 'in',
    layout: `${FOUR_IN_LINE}, rings: [first, second, third, fourth, oil]`,
    count: 24,
    rows: [
      ['main bore', each('main_housing_bore', of('3.251 to 3.252'))],
      ['main clearance', each('main_bearing_clearance', { ...of('0.0010 to 0.0040'), wear: most('0.0060') })],
      ['shell', each('main_shell_thickness', { ...of('0.1245 to 0.1250'), wear: least('0.1230') })],
      ['shell .002', shell('0.002 under', '0.1255 to 0.1260', '0.1240')],
      ['shell .010', shell('0.010 under', '0.1295 to 0.1300', '0.1280')],
      ['shell .020', shell('0.020 under', '0.1345 to 0.1350', '0.1330')],
      ['shell .030', shell('0.030 under', '0.1395 to 0.1400', '0.1380')],
      ['piston skirt at 70 F', each('piston_diameter', of('3.8699 to 3.8721'))],
      ['skirt out of round', each('piston_out_of_round', { new: most('0.0005') })],
      ['skirt taper', each('piston_taper', { new: most('0.0005') })],
      ['skirt clearance', each('piston_clearance', { ...of('0.0031 to 0.0068'), wear: most('0.0100') })],
      ['new liner', each('cylinder_bore', of('3.8752 to 3.8767'))],
      ['liner taper, used again', each('cylinder_taper', { wear: most('0.002') })],
      ['liner out of round, used again', each('cylinder_out_of_round', { wear: most('0.003') })],
      ['gap, chrome ring', ring('ring_end_gap', 'first', { ...of('0.020 to 0.046'), wear: most('0.060') })],
      [
        'gap, cast rings',
        ...['second', 'third', 'fourth'].map((name) =>
          ring('ring_end_gap', name, { ...of('0.020 to 0.036'), wear: most('0.060') }),
        ),
      ],
      ['gap, oil ring', ring('ring_end_gap', 'oil', { ...of('0.010 to 0.025'), wear: most('0.044') })],
      [
        'groove, first',
        ring('ring_side_clearance', 'first', { ...of('0.003 to 0.006'), wear: most('0.012') }),
      ],
      [
        'groove, second',
        ring('ring_side_clearance', 'second', { ...of('0.007 to 0.010'), wear: most('0.014') }),
      ],
      [
        'groove, third and fourth',
        ...['third', 'fourth'].map((name) =>
          ring('ring_side_clearance', name, { ...of('0.005 to 0.008'), wear: most('0.013') }),
        ),
      ],
      ['pin', each('piston_pin_diameter', of('1.3746 to 1.3750'))],
      ['rod length', each('rod_centre_distance', of('8.7990 to 8.8010'))],
      ['end play', engine('crankshaft_end_play', { ...of('0.004 to 0.011'), wear: most('0.018') })],
      ['thrust washer', engine('thrust_washer_thickness', of('0.1190 to 0.1220'))],
    ],
  },
  {
    source: 'TM 9-2815-213-34, p. 94',
    unit: 'in',
    layout: `${SIX_IN_LINE}, cam_bearings: 4, valves: [I, E]`,
    own: 'packing_area_out_of_round: { label: liner out of round at the packing, quantity: length, positions: cylinder, instrument: bore gauge }',
    count: 20,
    rows: [
      ['main journal', each('main_journal_diameter', { ...of('3.4990 to 3.5000'), wear: least('3.4965') })],
      ['rod journal', each('crankpin_diameter', { ...of('3.1240 to 3.1253'), wear: least('3.1215') })],
      [
        'rear main thrust width',
        engine('thrust_journal_width', { ...of('1.9400 to 1.9420'), wear: most('1.9440') }),
      ],
      [
        'crankshaft end clearance',
        engine('crankshaft_end_play', { ...of('0.005 to 0.015'), wear: most('0.0220') }),
      ],
      ['main shell', each('main_shell_thickness', { ...of('0.1245 to 0.12525'), wear: least('0.1230') })],
      [
        'thrust bearing',
        engine('thrust_washer_thickness', { ...of('0.1510 to 0.1530'), wear: least('0.1490') }),
      ],
      ['rod bore', each('rod_housing_bore', of('3.3160 to 3.3165'))],
      ['rod centre to centre', each('rod_centre_distance', of('8.1920 to 8.1940'))],
      ['rod shell', each('rod_shell_thickness', { ...of('0.0942 to 0.0947'), wear: least('0.0929') })],
      ['tappet bore', each('lifter_bore', { ...of('1.1000 to 1.1010'), wear: most('1.1025') }, '1 I')],
      ['tappet bore out of round', each('lifter_bore_out_of_round', { wear: most('0.0015') }, '1 I')],
      ['gap in a new liner, top ring', ring('ring_end_gap', 'top', of('0.017 to 0.027'))],
      ['gap in a new liner, second ring', ring('ring_end_gap', 'second', of('0.013 to 0.023'))],
      ['gap in a new liner, oil ring', ring('ring_end_gap', 'oil', of('0.015 to 0.027'))],
      ['ring to groove', each('ring_side_clearance', { new: least('0.002'), wear: most('0.006') }, '1 top')],
      ['liner', each('cylinder_bore', { ...of('5.4995 to 5.5010'), wear: most('5.5050') })],
      ['liner out of round at the packing', each('packing_area_out_of_round', { wear: most('0.0015') })],
      ['liner out of round above the pin', each('cylinder_out_of_round', { wear: most('0.003') })],
      ['liner protrusion', each('liner_protrusion', of('0.004 to 0.006'))],
      ['cam journal', each('cam_journal_diameter', { ...of('2.4960 to 2.4970'), wear: least('2.4940') })],
    ],
  },
  {
    source: 'TM 10-3930-653-14&P, p. 60 and 61',
    unit: 'mm',
    layout: `${FOUR_IN_LINE}, cam_bearings: 3, valves: [I, E]`,
    count: 24,
    rows: [
      ['journal', each('main_journal_diameter', of('62.942 to 62.955'))],
      ['journal taper', each('main_journal_taper', { new: most('0.01'), wear: most('0.03') })],
      ['journal out of round', each('main_journal_out_of_round', { new: most('0.01'), wear: most('0.03') })],
      ['oil clearance', each('main_bearing_clearance', of('0.020 to 0.062'))],
      ['end play', engine('crankshaft_end_play', { ...of('0.05 to 0.18'), wear: most('0.2') })],
      // Its wear limit of .03 is a misprint: a new one may have .066.
      ['rod clearance', each('rod_bearing_clearance', of('0.010 to 0.066'))],
      ['rod bend, in 100 mm', each('rod_bend', { new: most('0.025'), more: 'per: 100' })],
      ['rod centre to centre', each('rod_centre_distance', of('143.97 to 144.03'))],
      ['big end side clearance', each('rod_side_clearance', { ...of('0.17 to 0.30'), wear: most('0.4') })],
      ['piston', each('piston_diameter', of('87.165 to 87.215'))],
      ['piston +0.50', oversize('0.50 over', '87.655 to 87.715')],
      ['piston +1.0', oversize('1.0 over', '88.165 to 88.215')],
      // It may wear by .2, from the greatest of a new one.
      ['bore', each('cylinder_bore', { ...of('87.20 to 87.25'), wear: most('87.45') })],
      ['piston to bore', each('piston_clearance', of('0.025 to 0.045'))],
      ['gap, top ring', ring('ring_end_gap', 'top', { ...of('0.25 to 0.40'), wear: most('1.0') })],
      [
        'gap, second and oil ring',
        ...['second', 'oil'].map((name) =>
          ring('ring_end_gap', name, { ...of('0.15 to 0.30'), wear: most('1.0') }),
        ),
      ],
      ['groove, top', ring('ring_side_clearance', 'top', of('0.040 to 0.073'))],
      ['groove, second', ring('ring_side_clearance', 'second', of('0.030 to 0.063'))],
      ['groove, oil', ring('ring_side_clearance', 'oil', of('0.030 to 0.080'))],
      ['guide clearance, intake', each('valve_stem_clearance', { ...of('0.028 to 0.030'), at: 'I' }, '1 I')],
      ['guide clearance, exhaust', each('valve_stem_clearance', { ...of('0.058 to 0.060'), at: 'E' }, '1 E')],
      ['cam journal to bearing', each('cam_bearing_clearance', of('0.025 to 0.051'))],
      [
        'cam journal to bearing, no. 2',
        each('cam_bearing_clearance', { ...of('0.038 to 0.062'), at: '2' }, '2'),
      ],
      // Another line of the page prints .005 for .05.
      ['camshaft end play', engine('camshaft_end_play', of('0.05 to 0.28'))],
    ],
  },
  {
    source: 'TM 9-2815-225-34&P, app. F, p. F-1 and F-2',
    unit: 'in',
    layout: `${SIX_IN_LINE}, rings: [first, second]`,
    count: 16,
    rows: [
      ['main bearing bore', each('main_housing_bore', { ...of('4.7485 to 4.750'), wear: most('4.7505') })],
      ['liner inside diameter', each('cylinder_bore', { ...of('5.4995 to 5.501'), wear: most('5.505') })],
      ['rod journal', each('crankpin_diameter', { ...of('3.1235 to 3.125'), wear: least('3.122') })],
      ['main journal', each('main_journal_diameter', { ...of('4.4985 to 4.500'), wear: least('4.4975') })],
      ['journal out of round', ...bothJournals('out_of_round', { wear: most('0.002') })],
      ['journal taper over its length', ...bothJournals('taper', { wear: most('0.005') })],
      ['main shell', each('main_shell_thickness', { ...of('0.123 to 0.1238'), wear: least('0.1215') })],
      ['main clearance', each('main_bearing_clearance', { ...of('0.0015 to 0.005'), wear: most('0.007') })],
      // The copy prints .00942 for the least.
      ['rod shell', each('rod_shell_thickness', { ...of('0.0942 to 0.0947'), wear: least('0.093') })],
      ['thrust ring', engine('thrust_washer_thickness', of('0.245 to 0.247'))],
      ['end clearance', engine('crankshaft_end_play', { ...of('0.007 to 0.017'), wear: most('0.022') })],
      ['rod bore', each('rod_housing_bore', of('3.3157 to 3.3167'))],
      ['rod centre to centre', each('rod_centre_distance', of('11.998 to 12.000'))],
      ['piston skirt at 70 F', each('piston_diameter', { ...of('5.487 to 5.488'), wear: least('5.483') })],
      ['piston pin bore', each('piston_pin_bore', { ...of('1.9985 to 1.9990'), wear: most('2.0000') })],
      [
        'ring gaps',
        ring('ring_end_gap', 'first', of('0.023 to 0.033')),
        ring('ring_end_gap', 'second', of('0.019 to 0.029')),
      ],
    ],
  },
  {
    source: 'TM 55-1905-220-14-6, valve gear',
    unit: 'in',
    layout: `${SIX_IN_LINE}, valves: [I, E]`,
    count: 11,
    rows: [
      ['stem', each('valve_stem_diameter', of('0.3100 to 0.3105'), '1 I')],
      ['guide', each('valve_guide_bore', of('0.3125 to 0.3135'), '1 I')],
      // As printed: its own sizes leave .0035 at most.
      ['stem clearance', each('valve_stem_clearance', of('0.0020 to 0.0036'), '1 I')],
      ['seat width', each('valve_seat_width', of('0.0468 to 0.0937'), '1 I')],
      ['seat runout', each('valve_seat_runout', { new: most('0.002') }, '1 I')],
      ['.023 recess to .006 proud', each('valve_recession', of('-0.006 to 0.023'), '1 I')],
      ['rocker bore', each('rocker_bore', of('0.8750 to 0.8760'), '1 I')],
      ['rocker shaft', each('rocker_shaft_diameter', of('0.8735 to 0.8740'), '1 I')],
      [
        'rocker clearance',
        each('rocker_clearance', { ...of('0.0010 to 0.0025'), wear: most('0.0040') }, '1 I'),
      ],
      ['follower', each('lifter_diameter', of('1.0600 to 1.0610'), '1 I')],
      [
        'follower clearance',
        each('lifter_clearance', { ...of('0.0010 to 0.0030'), wear: most('0.0060') }, '1 I'),
      ],
    ],
  },
];
