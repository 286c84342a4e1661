/** Seven engines that are measured by chance: what was done to them and when is told here, what was read is not. */
export interface Life {
  readonly folder: string;
  readonly name: string;
  readonly about: string;
  readonly unit: 'in' | 'mm';
  readonly layout: string;
  readonly counts: { readonly cylinders: number; readonly mains: number; readonly pins: number };
  /** As small as a new part may be. */
  readonly sizes: { readonly bore: number; readonly main: number; readonly pin: number };
  /** How fast the upper end of a cylinder wears, in micrometres in 1000 hours. */
  readonly wear: number;
  readonly job: string;
  readonly steps: readonly Step[];
}

export interface Step {
  readonly stage: 'rebuild' | 'teardown' | 'machined' | 'service';
  readonly date: string;
  readonly by: string;
  readonly hours?: number;
  /** Sizes that were made, as the document writes them: `cylinders: 0.020 over`. */
  readonly made?: Readonly<Partial<Record<'cylinders' | 'main journals' | 'crankpins', string>>>;
  /** Whose work it is where it is not the shop's own, and how many times as well it holds size. */
  readonly from?: string;
  readonly scatter?: number;
  /** Lines of the document beside its readings. */
  readonly before?: readonly string[];
  readonly after?: readonly string[];
  /** One cylinder that wore more than its like, in the engine's unit. */
  readonly hurt?: { readonly cylinder: number; readonly by: number };
  /** What is measured, where it is not all of it. */
  readonly measures?: readonly ('bores' | 'journals' | 'end play')[];
}

const NORTH = 'North grinding (invented)';
const HILL = 'Hill boring (invented)';

export const FLEET: readonly Life[] = [
  {
    folder: 'ice-plant',
    name: 'Ice plant',
    about: 'four in line, with a cylinder that was conceded for a season',
    unit: 'in',
    layout: 'cylinders: 4, mains: 5, crankpins: 4',
    counts: { cylinders: 4, mains: 5, pins: 4 },
    sizes: { bore: 3.6266, main: 2.3652, pin: 2.1164 },
    wear: 9,
    job: 'customer: an invented ice works, delivered: 2023-05-04',
    steps: [
      { stage: 'rebuild', date: '2016-04-12', by: 'RK', hours: 0 },
      {
        stage: 'teardown',
        date: '2023-04-18',
        by: 'JM',
        hours: 9640,
        hurt: { cylinder: 3, by: 0.0034 },
        after: [
          'found:',
          '  - { on: cylinder 3, is: worn beyond its limit and free of scores, do: reuse, by: RK }',
          'concessions:',
          '  - { measure: cylinder_bore, at: 3, up_to: 3.6345, reason: The plant has to freeze until the season ends., by: RK, agreed: the owner, until: 2023-10-31 }',
        ],
      },
      { stage: 'rebuild', date: '2023-05-02', by: 'JM', hours: 9640, measures: ['end play'] },
      {
        stage: 'service',
        date: '2025-05-20',
        by: 'JM',
        hours: 12010,
        before: ['note: The head is off for a gasket.'],
        measures: ['bores'],
      },
    ],
  },
  {
    folder: 'saw-bench',
    name: 'Saw bench',
    about: 'four in line',
    unit: 'in',
    layout: 'cylinders: 4, mains: 3, crankpins: 4',
    counts: { cylinders: 4, mains: 3, pins: 4 },
    sizes: { bore: 3.3133, main: 2.2464, pin: 2.0218 },
    wear: 14,
    job: 'customer: an invented joinery, delivered: 2024-11-08',
    steps: [
      { stage: 'rebuild', date: '2017-02-21', by: 'RK', hours: 0 },
      { stage: 'teardown', date: '2020-09-15', by: 'RK', hours: 6120 },
      {
        stage: 'machined',
        date: '2020-10-06',
        by: 'RK',
        from: NORTH,
        scatter: 1,
        made: { 'main journals': '0.010 under', crankpins: '0.010 under', cylinders: '0.020 over' },
      },
      { stage: 'rebuild', date: '2020-10-19', by: 'RK', hours: 6120, measures: ['end play'] },
      { stage: 'teardown', date: '2024-09-24', by: 'JM', hours: 12980 },
      {
        stage: 'machined',
        date: '2024-10-22',
        by: 'JM',
        from: HILL,
        scatter: 2.2,
        made: { cylinders: '0.040 over', crankpins: '0.020 under', 'main journals': '0.020 under' },
      },
      { stage: 'rebuild', date: '2024-11-05', by: 'JM', hours: 12980, measures: ['end play'] },
    ],
  },
  {
    folder: 'slip-winch',
    name: 'Slip winch',
    about: 'a vee of eight, two rods on each crankpin',
    unit: 'in',
    layout:
      'cylinders: 8, mains: 5, crankpins: { 1: [1, 5], 2: [2, 6], 3: [3, 7], 4: [4, 8] }, banks: { L: [1, 2, 3, 4], R: [5, 6, 7, 8] }',
    counts: { cylinders: 8, mains: 5, pins: 4 },
    sizes: { bore: 4.0526, main: 2.6843, pin: 2.3127 },
    wear: 7,
    job: 'customer: an invented boatyard, delivered: 2022-06-30',
    steps: [
      { stage: 'rebuild', date: '2017-08-01', by: 'RK', hours: 0 },
      { stage: 'teardown', date: '2022-05-11', by: 'JM', hours: 8830 },
      {
        stage: 'machined',
        date: '2022-06-08',
        by: 'JM',
        from: HILL,
        scatter: 2.2,
        made: { cylinders: '0.030 over', 'main journals': '0.010 under', crankpins: '0.010 under' },
      },
      { stage: 'rebuild', date: '2022-06-24', by: 'JM', hours: 8830, measures: ['end play'] },
    ],
  },
  {
    folder: 'lock-gate-pump',
    name: 'Lock gate pump',
    about: 'a vee of six, two rods on each crankpin',
    unit: 'mm',
    layout:
      'cylinders: 6, mains: 4, crankpins: { 1: [1, 4], 2: [2, 5], 3: [3, 6] }, banks: { L: [1, 2, 3], R: [4, 5, 6] }',
    counts: { cylinders: 6, mains: 4, pins: 3 },
    sizes: { bore: 94.14, main: 66.37, pin: 57.42 },
    wear: 11,
    job: 'customer: an invented canal board, delivered: 2025-08-29',
    steps: [
      { stage: 'rebuild', date: '2018-03-06', by: 'JM', hours: 0 },
      { stage: 'teardown', date: '2025-07-08', by: 'JM', hours: 10470 },
      {
        stage: 'machined',
        date: '2025-08-05',
        by: 'JM',
        from: NORTH,
        scatter: 1,
        made: { cylinders: '0.50 mm over', 'main journals': '0.25 mm under', crankpins: '0.25 mm under' },
      },
      { stage: 'rebuild', date: '2025-08-20', by: 'JM', hours: 10470, measures: ['end play'] },
    ],
  },
  {
    folder: 'fog-signal',
    name: 'Fog signal',
    about: 'an opposed four, a crankpin for each rod',
    unit: 'mm',
    layout: 'cylinders: 4, mains: 3, crankpins: 4, banks: { L: [1, 3], R: [2, 4] }',
    counts: { cylinders: 4, mains: 3, pins: 4 },
    sizes: { bore: 87.12, main: 56.33, pin: 50.41 },
    wear: 12,
    job: 'customer: an invented lighthouse',
    steps: [
      { stage: 'rebuild', date: '2018-10-16', by: 'JM', hours: 0 },
      { stage: 'teardown', date: '2021-05-04', by: 'JM', hours: 3210 },
      {
        stage: 'machined',
        date: '2021-06-01',
        by: 'RK',
        made: { cylinders: '0.25 mm over', 'main journals': '0.25 mm under', crankpins: '0.25 mm under' },
        scatter: 0.8,
      },
      { stage: 'rebuild', date: '2021-06-15', by: 'RK', hours: 3210, measures: ['end play'] },
      { stage: 'teardown', date: '2026-02-10', by: 'JM', hours: 10350 },
    ],
  },
  {
    folder: 'dredger-pump',
    name: 'Dredger pump',
    about: 'an opposed pair',
    unit: 'in',
    layout: 'cylinders: 2, mains: 2, crankpins: 2, banks: { L: [1], R: [2] }',
    counts: { cylinders: 2, mains: 2, pins: 2 },
    sizes: { bore: 3.8771, main: 2.1228, pin: 2.0632 },
    wear: 21,
    job: 'customer: an invented gravel works, delivered: 2021-04-23',
    steps: [
      { stage: 'rebuild', date: '2016-11-08', by: 'RK', hours: 0 },
      { stage: 'teardown', date: '2021-03-16', by: 'RK', hours: 4460 },
      {
        stage: 'machined',
        date: '2021-04-06',
        by: 'RK',
        made: { cylinders: '0.030 over', 'main journals': '0.010 under', crankpins: '0.010 under' },
        scatter: 0.8,
      },
      { stage: 'rebuild', date: '2021-04-20', by: 'RK', hours: 4460, measures: ['end play'] },
    ],
  },
  {
    folder: 'tide-gate-generator',
    name: 'Tide gate generator',
    about: 'six in line, opened in March and waiting for a yes',
    unit: 'mm',
    layout: 'cylinders: 6, mains: 7, crankpins: 6',
    counts: { cylinders: 6, mains: 7, pins: 6 },
    sizes: { bore: 98.13, main: 71.36, pin: 61.44 },
    wear: 10.4,
    job: 'customer: an invented tide gate',
    steps: [
      { stage: 'rebuild', date: '2019-01-22', by: 'RK', hours: 0 },
      { stage: 'teardown', date: '2026-03-10', by: 'JM', hours: 11890 },
    ],
  },
];
