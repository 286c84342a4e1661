import { type Block, blockText, type EngineSheet, inTurn, type Session } from './documents.ts';

/**
 * Three engines of one make, told reading by reading: crankshaft K4471 goes through all of them, and a micrometer that was
 * dropped has read two. The pages on parts and on instruments walk through them.
 */
export interface Told {
  readonly folder: string;
  readonly sheet: EngineSheet;
  readonly sessions: readonly Session[];
}

type Typed = readonly (string | readonly string[])[];
const pins = (...typed: Typed): Block => ({
  measure: 'crankpin_diameter',
  with: 'mic-2-3',
  at: inTurn(typed),
});
const mains = (...typed: Typed): Block => ({
  measure: 'main_journal_diameter',
  with: 'mic-2-3',
  at: inTurn(typed),
});
const rods = (...typed: Typed): Block => ({
  measure: 'rod_bearing_bore',
  with: 'bore-2-6',
  setWith: 'mic-2-3',
  at: inTurn(typed),
});

const sheet = (name: string, job: string): EngineSheet => ({
  about: 'three in line',
  name,
  layout: 'cylinders: 3, mains: 4, crankpins: 3',
  sizes: 'crankpin_diameter: 2.4851, main_journal_diameter: 2.9865',
  job,
});
const fitted = (crankshaft: string): readonly string[] => [`fitted: { crankshaft: { ${crankshaft} } }`];

export const STORY: readonly Told[] = [
  {
    folder: 'quay-crane',
    sheet: sheet('Quay crane', 'customer: an invented harbour, delivered: 2026-02-24'),
    sessions: [
      {
        stage: 'rebuild',
        date: '2015-03-10',
        by: 'RK',
        hours: 4200,
        before: fitted('mark: K4471, condition: new'),
        readings: [pins('2.4854', '2.4853', '2.4854'), mains('2.9868', '2.9867', '2.9867', '2.9868')],
      },
      {
        stage: 'teardown',
        date: '2017-06-20',
        by: 'RK',
        hours: 6900,
        readings: [pins('2.4851', '2.4849', '2.4851')],
      },
      {
        stage: 'teardown',
        date: '2019-05-14',
        by: 'RK',
        hours: 9150,
        readings: [
          { ...pins('2.4848', ['2.4844', '2.4835'], '2.4848'), along: 'directions: [throw, square]' },
          mains('2.9865', '2.9863', '2.9863', '2.9865'),
        ],
        after: ['found:', '  - { on: crankpin 2, is: scored and out of round, do: machine }'],
      },
      {
        stage: 'rebuild',
        date: '2019-05-20',
        by: 'RK',
        hours: 9150,
        before: fitted('mark: K5120, condition: new'),
        readings: [pins('2.4855', '2.4854', '2.4854')],
      },
      {
        stage: 'rebuild',
        date: '2026-02-20',
        by: 'RK',
        hours: 15300,
        readings: [pins('2.4850', '2.4847', '2.4849'), rods('2.4871', '2.4871', '2.4870')],
      },
    ],
  },
  {
    folder: 'ferry-generator',
    sheet: sheet('Ferry generator', 'customer: an invented ferry line'),
    sessions: [
      {
        stage: 'rebuild',
        date: '2020-02-11',
        by: 'RK',
        hours: 22150,
        before: fitted('mark: K4471, condition: reground, crankpin: 0.010 under'),
        readings: [pins('2.4753', '2.4752', '2.4753')],
      },
      {
        stage: 'teardown',
        date: '2021-11-02',
        by: 'RK',
        hours: 310,
        before: ['hours_from: 24380'],
        readings: [pins('2.4751', '2.4749', '2.4750')],
      },
      {
        stage: 'teardown',
        date: '2023-09-05',
        by: 'RK',
        hours: 2900,
        readings: [pins('2.4748', '2.4746', '2.4748')],
      },
      {
        stage: 'rebuild',
        date: '2023-09-12',
        by: 'RK',
        hours: 2900,
        before: fitted('mark: K6003, condition: new'),
        readings: [pins('2.4854', '2.4854', '2.4853')],
      },
    ],
  },
  {
    folder: 'drain-pump',
    sheet: sheet('Drain pump', 'customer: an invented polder board'),
    sessions: [
      {
        stage: 'rebuild',
        date: '2023-10-02',
        by: 'RK',
        hours: 12040,
        before: fitted('mark: K4471, condition: used, crankpin: 0.010 under'),
        readings: [pins('2.4748', '2.4746', '2.4748')],
      },
      {
        stage: 'teardown',
        date: '2026-03-03',
        by: 'RK',
        hours: 16360,
        readings: [pins('2.4742', '2.4729', '2.4743'), rods('2.4777', '2.4768', '2.4776')],
      },
      {
        stage: 'trial',
        date: '2026-03-16',
        by: 'RK',
        before: [
          'checked:',
          '  - { instrument: mic-2-3, standard: 2.5000, read: 2.5000, date: 2026-02-02 }',
          '  - { instrument: mic-2-3, standard: 2.5000, read: 2.5004, note: "dropped, and nobody knows when" }',
        ],
        readings: [],
      },
    ],
  },
];

/** The crankshaft on the shelf. */
export const K4471 = `# An invented crankshaft: what was read and done while it was in no engine.
kind: part
part: crankshaft
mark: K4471
fits: [Quay crane, Ferry generator, Drain pump]
bought: an invented dealer, 2014
from:
  - { engine: Quay crane, date: 2019-05-20 }
  - { engine: Ferry generator, date: 2023-09-12 }
inspections:
  - date: 2014-11-03
    by: RK
    note: incoming inspection
    readings:
      - ${blockText(pins('2.4854', '2.4854', '2.4854'))}
  - date: 2019-06-04
    by: RK
    stage: machined
    machined: [{ part: crankpins, size: 0.010 under }]
    readings:
      - ${blockText(pins('2.4753', '2.4753', '2.4753'))}
    found:
      - { on: crankpins, is: no cracks by magnetic particles, do: reuse }
`;

export const STORY_LIMITS = [
  'crankpin_diameter: { new: 2.4846 to 2.4856, wear: { min: 2.4826 } }',
  'main_journal_diameter: { new: 2.9860 to 2.9870, wear: { min: 2.9840 } }',
  'rod_bearing_clearance: { new: 0.0012 to 0.0029, wear: { max: 0.0043 } }',
];
