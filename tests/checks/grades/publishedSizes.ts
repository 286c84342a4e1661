/** One row of a maker's table of service sizes, as printed. */
export interface PrintedRow {
  /** As it is stated: `0.010 under`. */
  readonly size: string;
  readonly min?: string;
  readonly max?: string;
  /** The figure that is printed beside the new sizes: the last that may be used again. */
  readonly wear?: string;
  /** A cell that is printed wrongly, as its neighbours show: here stands what is meant, and in `printed` what is printed. */
  readonly misprint?: { readonly cell: 'min' | 'max'; readonly printed: string };
}

export interface PrintedTable {
  readonly what: string;
  readonly source: string;
  readonly measure: string;
  readonly unit: 'in' | 'mm';
  /** How the size is stated in `fitted:`, with `SIZE` in its place. */
  readonly fitted: string;
  readonly standard: Omit<PrintedRow, 'size'>;
  readonly rows: readonly PrintedRow[];
}

const MAIN = 'crankshaft: { main: SIZE }';
const PIN = 'crankshaft: { crankpin: SIZE }';
const MAIN_SHELLS = 'main_shells: { size: SIZE }';

const row = (size: string, min: string, max?: string, wear?: string): PrintedRow => ({
  size,
  min,
  ...(max === undefined ? {} : { max }),
  ...(wear === undefined ? {} : { wear }),
});

const shells = (
  source: string,
  standard: readonly [string, string, string],
  rows: readonly (readonly [string, string, string, string])[],
): PrintedTable => ({
  what: 'shell thickness, new and worn',
  source,
  measure: 'main_shell_thickness',
  unit: 'in',
  fitted: MAIN_SHELLS,
  standard: row('std', ...standard),
  rows: rows.map((each) => row(...each)),
});

const journals = (
  what: string,
  source: string,
  unit: 'in' | 'mm',
  standard: readonly [string, string?, string?],
  rows: readonly PrintedRow[],
): PrintedTable => ({
  what,
  source,
  measure: what === 'crankpin' ? 'crankpin_diameter' : 'main_journal_diameter',
  unit,
  fitted: what === 'crankpin' ? PIN : MAIN,
  standard: row('std', ...standard),
  rows,
});

export const PRINTED: readonly PrintedTable[] = [
  shells(
    'TM 5-3895-347-14P and 348-14P-2; TM 5-4320-300-14, p. 6-83',
    ['0.1245', '0.1250', '0.1230'],
    [
      ['0.002 under', '0.1255', '0.1260', '0.1240'],
      ['0.010 under', '0.1295', '0.1300', '0.1280'],
      ['0.020 under', '0.1345', '0.1350', '0.1330'],
      ['0.030 under', '0.1395', '0.1400', '0.1380'],
    ],
  ),
  shells(
    'TM 9-2815-205-34, table 3-7, p. 3-203',
    ['0.1247', '0.1252', '0.1230'],
    [
      ['0.002 under', '0.1257', '0.1262', '0.1240'],
      ['0.010 under', '0.1297', '0.1302', '0.1280'],
      ['0.020 under', '0.1347', '0.1352', '0.1330'],
      ['0.030 under', '0.1397', '0.1402', '0.1380'],
    ],
  ),
  {
    what: 'main bearing bore with shells; the third figure is smaller than the new range, and moves with it',
    source: 'TM 9-2815-220-24, WP 0138-8',
    measure: 'main_bearing_bore',
    unit: 'in',
    fitted: MAIN_SHELLS,
    standard: row('std', '4.2539', '4.2549', '4.2520'),
    rows: [
      row('0.003 under', '4.2509', '4.2519', '4.2490'),
      row('0.010 under', '4.2439', '4.2449', '4.2420'),
    ],
  },
  {
    what: 'bore of the crankshaft supports with their bearings',
    source: 'TM 5-4320-302-14, p. 6-181',
    measure: 'main_bearing_bore',
    unit: 'mm',
    fitted: MAIN_SHELLS,
    standard: row('std', '60.040', '60.083'),
    rows: [
      row('0.5 under', '59.540', '59.583'),
      row('1.0 under', '59.040', '59.083'),
      row('1.5 under', '58.540', '58.583'),
    ],
  },
  {
    what: 'wall of the support bearings',
    source: 'TM 5-4320-302-14, p. 6-181',
    measure: 'main_shell_thickness',
    unit: 'mm',
    fitted: MAIN_SHELLS,
    standard: row('std', '2.973', '2.985'),
    rows: [
      row('0.5 under', '3.223', '3.235'),
      row('1.0 under', '3.473', '3.485'),
      row('1.5 under', '3.723', '3.735'),
    ],
  },
  journals(
    'crankpin',
    'TM 5-2420-230-24-2, p. 1-49 (least sizes)',
    'mm',
    ['68.987'],
    [
      row('0.25 under', '68.737'),
      row('0.50 under', '68.487'),
      row('0.75 under', '68.237'),
      row('1.00 under', '67.987'),
    ],
  ),
  journals(
    'main journal',
    'TM 5-2420-230-24-2, p. 1-49 (least sizes)',
    'mm',
    ['82.987'],
    [row('0.25 under', '82.737'), row('0.50 under', '82.487')],
  ),
  journals(
    'crankpin',
    'TM 5-3805-260-24, p. 1-23 (sizes without their tolerance, and worn)',
    'in',
    ['2.7496', '2.7496', '2.7486'],
    [
      row('0.010 under', '2.7396', '2.7396', '2.7386'),
      row('0.020 under', '2.7296', '2.7296', '2.7286'),
      row('0.050 under', '2.6996', '2.6996', '2.6986'),
    ],
  ),
  journals(
    'main journal',
    'TM 5-3805-260-24, p. 1-23 (sizes without their tolerance, and worn)',
    'in',
    ['3.4995', '3.4995', '3.4980'],
    [row('0.010 under', '3.4895', '3.4895', '3.4880'), row('0.020 under', '3.4795', '3.4795', '3.4780')],
  ),
  journals(
    'crankpin',
    'TM 10-3930-641-34-1, p. 2-92 (sizes without their tolerance)',
    'in',
    ['3.8200', '3.8200'],
    [row('0.025 under', '3.7950', '3.7950'), row('0.050 under', '3.7700', '3.7700')],
  ),
  journals(
    'main journal',
    'TM 10-3930-641-34-1, p. 2-92 (sizes without their tolerance)',
    'in',
    ['4.7500', '4.7500'],
    [row('0.025 under', '4.7250', '4.7250'), row('0.050 under', '4.7000', '4.7000')],
  ),
  journals(
    'main journal',
    'TM 5-3805-262-34, p. 4-23 and 4-24',
    'in',
    ['2.998', '2.999'],
    [
      row('0.010 under', '2.988', '2.989'),
      row('0.020 under', '2.978', '2.979'),
      row('0.030 under', '2.968', '2.969'),
    ],
  ),
  journals(
    'crankpin',
    'TM 5-3805-262-34, p. 4-23 and 4-24',
    'in',
    ['2.748', '2.749'],
    [
      row('0.010 under', '2.738', '2.739'),
      row('0.020 under', '2.728', '2.729'),
      row('0.030 under', '2.718', '2.719'),
    ],
  ),
  journals(
    'crankpin',
    'TM 5-3805-262-34, p. 3-485 (compressor)',
    'in',
    ['1.1230', '1.1235'],
    [
      row('0.010 under', '1.1130', '1.1135'),
      row('0.020 under', '1.1030', '1.1035'),
      row('0.030 under', '1.0930', '1.0935'),
    ],
  ),
  journals(
    'crankpin',
    'TM 5-4320-300-14, p. 6-103',
    'in',
    ['2.499', '2.500'],
    [
      row('0.002 under', '2.497', '2.498'),
      row('0.010 under', '2.489', '2.490'),
      row('0.020 under', '2.479', '2.480'),
      row('0.030 under', '2.469', '2.470'),
    ],
  ),
  journals(
    'main journal',
    'TM 5-4320-300-14, p. 6-103',
    'in',
    ['2.999', '3.000'],
    [
      {
        ...row('0.002 under', '2.997', '2.998'),
        misprint: { cell: 'min', printed: '2.996' },
      },
      row('0.010 under', '2.989', '2.990'),
      row('0.020 under', '2.979', '2.980'),
      row('0.030 under', '2.969', '2.970'),
    ],
  ),
  journals(
    'main journal',
    'TM 5-4310-354-14, table 5-2 (of the .010 row the greatest size was read)',
    'in',
    ['2.8734', '2.8744'],
    [
      {
        size: '0.010 under',
        max: '2.8644',
        misprint: { cell: 'max', printed: '2.8444' },
      },
    ],
  ),
  journals(
    'main journal',
    'TM 10-3930-653-14&P, p. 60 (of the .50 row the least size was read)',
    'mm',
    ['62.942', '62.955'],
    [
      {
        size: '0.50 under',
        min: '62.442',
        misprint: { cell: 'min', printed: '62.422' },
      },
      row('1.00 under', '61.942', '61.955'),
    ],
  ),
  {
    what: 'piston; its row of 0.50 over is printed with another tolerance, and so is no row of one table',
    source: 'TM 10-3930-653-14&P, p. 60',
    measure: 'piston_diameter',
    unit: 'mm',
    fitted: 'pistons: { size: SIZE }',
    standard: row('std', '87.165', '87.215'),
    rows: [row('1.0 over', '88.165', '88.215')],
  },
  {
    what: 'piston of a bore that is made over (W12); its standard row is computed from the first',
    source: 'service data nsxb07012a and nsxb07013b',
    measure: 'piston_diameter',
    unit: 'mm',
    fitted: 'pistons: { size: SIZE }',
    standard: row('std', '89.976', '89.994'),
    rows: [row('0.25 over', '90.226', '90.244'), row('0.50 over', '90.476', '90.494')],
  },
  {
    what: 'piston; the three grades of its standard size together, as the oversizes are printed',
    source: 'service data of a 1.8 litre car engine of 2000',
    measure: 'piston_diameter',
    unit: 'mm',
    fitted: 'pistons: { size: SIZE }',
    standard: row('std', '79.965', '79.995'),
    rows: [row('0.25 over', '80.215', '80.245'), row('0.5 over', '80.465', '80.495')],
  },
  {
    what: 'bore; its standard row is computed from the first (W12)',
    source: 'service data nsxb07012a and nsxb07013b',
    measure: 'cylinder_bore',
    unit: 'mm',
    fitted: 'cylinders: { size: SIZE }',
    standard: row('std', '90.00', '90.01'),
    rows: [row('0.25 over', '90.25', '90.26'), row('0.50 over', '90.50', '90.51')],
  },
  {
    what: 'shell thickness of undersizes of which its manual prints the sizes alone; computed',
    source: 'TM 9-2815-225-34&P, app. F and p. 183',
    measure: 'main_shell_thickness',
    unit: 'in',
    fitted: MAIN_SHELLS,
    standard: row('std', '0.1230', '0.1238', '0.1215'),
    rows: [
      row('0.010 under', '0.1280', '0.1288', '0.1265'),
      row('0.020 under', '0.1330', '0.1338', '0.1315'),
      row('0.030 under', '0.1380', '0.1388', '0.1365'),
    ],
  },
];
