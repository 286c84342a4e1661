import type { Kind } from '../../src/documents/schema/kinds.ts';

export interface Refused {
  readonly title: string;
  readonly kind: Kind;
  readonly text: string;
  readonly told: readonly (readonly [at: string, code: string, message: string, help: string])[];
}

/** Unsound documents, and everything that is said of each. */
export const REFUSED: readonly Refused[] = [
  {
    title: 'a misspelt key',
    kind: 'shop',
    text: `kind: shop
decison_rule: simple
`,
    told: [['2:1', 'document/unknown-key', 'unknown key `decison_rule`', 'did you mean decision_rule?']],
  },
  {
    title: 'a version that is not known',
    kind: 'shop',
    text: `kind: shop
version: 2
`,
    told: [['2:10', 'document/value', '`version` is the number 2, not 1', 'write 1']],
  },
  {
    title: 'a formula as plain text, and one in a range, in quotes and in a band',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  a_clearance: { new: { max: "0.001 * crankpin_diameter" } }
  b_gap: { new: { min: "{ formula: 0.004 * bore }", max: n/a } }
  c_clearance: { new: 0.001 * bore, wear: 0.002 to 0.003 * bore }
`,
    told: [
      [
        '4:30',
        'document/value',
        '`max` in limits a_clearance new is the text `0.001 * crankpin_diameter`, a formula without its key',
        'write { formula: "0.001 * crankpin_diameter" }',
      ],
      [
        '5:24',
        'document/value',
        '`min` in limits b_gap new is the text `{ formula: 0.004 * bore }`, a formula without its key',
        'write { formula: "0.004 * bore" }',
      ],
      [
        '5:58',
        'document/type',
        '`max` in limits b_gap new is the text `n/a`, not a number',
        'write a number, a number with its unit such as 0.0635 mm, or { formula: "0.0005 * bore" }',
      ],
      [
        '6:23',
        'document/value',
        '`new` in limits c_clearance is the text `0.001 * bore`, a formula without its key',
        'write { max: { formula: "0.001 * bore" } }, the same with min, or both',
      ],
      [
        '6:43',
        'document/value',
        '`wear` in limits c_clearance is the text `0.002 to 0.003 * bore`, a formula without its key',
        'write { min: 0.002, max: { formula: "0.003 * bore" } }',
      ],
    ],
  },
  {
    title: 'an inch written out as a unit',
    kind: 'shop',
    text: `kind: shop
units: { length: inch }
`,
    told: [
      [
        '2:18',
        'document/value',
        '`length` in units is the text `inch`, which is not known here',
        'write one of in, thou, mm, um',
      ],
    ],
  },
  {
    title: 'one unit in place of units',
    kind: 'shop',
    text: `kind: shop
units: in
`,
    told: [
      [
        '2:8',
        'document/type',
        '`units` is the text `in`, not keys with values',
        'write keys and their values, such as { length: in, torque: lbf ft }',
      ],
    ],
  },
  {
    title: 'units with nothing behind them',
    kind: 'shop',
    text: `kind: shop
units:
`,
    told: [
      [
        '2:1',
        'document/type',
        '`units` is empty',
        'write keys and their values, such as { length: in, torque: lbf ft }',
      ],
    ],
  },
  {
    title: 'a name of digits',
    kind: 'shop',
    text: `kind: shop
name: 12
`,
    told: [['2:7', 'document/type', '`name` is the number 12, not text', 'write it in quotes: "12"']],
  },
  {
    title: 'a grid with a capital letter',
    kind: 'shop',
    text: `kind: shop
grids: { Main: { stations: [a] } }
`,
    told: [
      [
        '2:10',
        'document/unknown-key',
        'unknown key `Main` in grids',
        'write it in small letters, digits and _, beginning with a letter',
      ],
    ],
  },
  {
    title: 'a grid with nothing in it',
    kind: 'shop',
    text: `kind: shop
grids: { cylinder: {} }
`,
    told: [
      ['2:20', 'document/value', '`cylinder` in grids holds nothing', 'put something in it, or leave it out'],
    ],
  },
  {
    title: 'a characteristic without its quantity',
    kind: 'shop',
    text: `kind: shop
characteristics: { gap: { label: gap } }
`,
    told: [
      [
        '2:20',
        'document/missing-key',
        '`quantity` is missing in characteristics gap',
        'add it, for example `quantity: length`',
      ],
    ],
  },
  {
    title: 'a characteristic with no label and a misspelt quantity',
    kind: 'shop',
    text: `kind: shop
characteristics: { gap: { label: "", quantity: lenght } }
`,
    told: [
      [
        '2:27',
        'document/value',
        '`label` in characteristics gap is text with nothing in it',
        'write it as text, in quotes if it is digits',
      ],
      [
        '2:48',
        'document/value',
        '`quantity` in characteristics gap is the text `lenght`, none of length, torque, force, spring rate, pressure, volume, mass, angle, temperature, time, speed, roughness, viscosity, flow, percent, number, count, pass or fail',
        'did you mean length?',
      ],
    ],
  },
  {
    title: 'no cylinders and no name',
    kind: 'engine',
    text: `kind: engine
layout: { cylinders: 0 }
`,
    told: [
      [
        '1:1',
        'document/missing-key',
        '`name` is missing',
        'add it, for example `name: Reservoir pump no. 2`',
      ],
      [
        '2:22',
        'document/value',
        '`cylinders` in layout is the number 0',
        'write how many there are, from 1 to 100, or a list of their names such as [1, 2, 3]',
      ],
    ],
  },
  {
    title: 'counts that are no counts',
    kind: 'engine',
    text: `kind: engine
name: A
layout: { cylinders: four, mains: 5.5, crankpins: { 1: 2 }, vavles: 2 }
`,
    told: [
      [
        '3:22',
        'document/type',
        '`cylinders` in layout is the text `four`, not a whole number',
        'write how many there are, from 1 to 100, or a list of their names such as [1, 2, 3]',
      ],
      [
        '3:35',
        'document/type',
        '`mains` in layout is the number 5.5, not a whole number',
        'write how many there are, from 1 to 100, or a list of their names such as [1, 2, 3]',
      ],
      [
        '3:56',
        'document/type',
        '`1` in layout crankpins is the number 2, not a list',
        'write the cylinders on this crankpin, such as [1, 5]',
      ],
      ['3:61', 'document/unknown-key', 'unknown key `vavles` in layout', 'did you mean valves?'],
    ],
  },
  {
    title: 'a layout that is a number',
    kind: 'engine',
    text: `kind: engine
name: A
layout: 4
`,
    told: [
      [
        '3:9',
        'document/type',
        '`layout` is the number 4, not keys with values',
        'write keys and their values, such as { cylinders: 4, mains: 5, crankpins: 4 }',
      ],
    ],
  },
  {
    title: 'a decimal comma in quotes, and a capital letter',
    kind: 'engine',
    text: `kind: engine
name: A
layout: { mains: 5 }
sizes: { bore: "4,125", stroke: 127mm, Stroke: 4 }
`,
    told: [
      [
        '4:16',
        'document/number-as-text',
        '`bore` in sizes is the text `4,125`',
        'write 4.125 with a decimal point, or 4125 if the comma marks thousands',
      ],
      ['4:40', 'document/unknown-key', 'unknown key `Stroke` in sizes', 'did you mean stroke?'],
    ],
  },
  {
    title: 'a misspelt part and a list of materials',
    kind: 'engine',
    text: `kind: engine
name: A
layout: { mains: 5 }
materials: { crankshft: steel, block: [iron] }
`,
    told: [
      ['4:14', 'document/unknown-key', 'unknown key `crankshft` in materials', 'did you mean crankshaft?'],
      [
        '4:39',
        'document/type',
        '`block` in materials is a list, not text',
        'write it as text, in quotes if it is digits',
      ],
    ],
  },
  {
    title: 'limits without a source',
    kind: 'limits',
    text: `kind: limits
limits: {}
`,
    told: [
      [
        '1:1',
        'document/missing-key',
        '`source` is missing',
        "add it, for example `source: Maker's manual, page 4-12`",
      ],
    ],
  },
  {
    title: 'a number in quotes',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance: { wear: { max: "0.005" } }
`,
    told: [
      [
        '4:42',
        'document/number-as-text',
        '`max` in limits main_bearing_clearance wear is the text `0.005`, in quotes',
        'write 0.005 without the quotes',
      ],
    ],
  },
  {
    title: 'a decimal comma in quotes',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance: { wear: { max: "4,0010" } }
`,
    told: [
      [
        '4:42',
        'document/number-as-text',
        '`max` in limits main_bearing_clearance wear is the text `4,0010`',
        'write 4.0010 with a decimal point',
      ],
    ],
  },
  {
    title: 'a decimal comma',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear:
      max: 4,0010
`,
    told: [
      [
        '6:12',
        'document/number-as-text',
        '`max` in limits main_bearing_clearance wear is the text `4,0010`',
        'write 4.0010 with a decimal point',
      ],
    ],
  },
  {
    title: 'inch as a unit',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear:
      max: 3.2478 inch
`,
    told: [
      [
        '6:12',
        'document/value',
        '`max` in limits main_bearing_clearance wear is the text `3.2478 inch`, and inch is not a unit known here',
        'write 3.2478 in',
      ],
    ],
  },
  {
    title: 'units in words',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear:
      max: 70 foot pound
      min: 2.5 furlongs
`,
    told: [
      [
        '6:12',
        'document/value',
        '`max` in limits main_bearing_clearance wear is the text `70 foot pound`, and foot pound is not a unit known here',
        'write 70 lbf ft',
      ],
      [
        '7:12',
        'document/value',
        '`min` in limits main_bearing_clearance wear is the text `2.5 furlongs`, and furlongs is not a unit known here',
        'known units: in, thou, mm, um, lbf ft, lbf in, ozf in, N m, kgf m, lbf, N, kN, lbf/in, N/mm, psi, kPa, bar, kgf/cm2, inH2O, inHg, cc, ml, L, in3, g, kg, oz, lb, deg, degC, degF, h, rpm, uin, cSt, mm2/s, L/min, gal/min, %',
      ],
    ],
  },
  {
    title: 'fractions',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear:
      max: 5/16
      min: 1 1/2 in
`,
    told: [
      [
        '6:12',
        'document/number-as-text',
        '`max` in limits main_bearing_clearance wear is the text `5/16`, a fraction',
        'write it as a decimal: 0.3125',
      ],
      [
        '7:12',
        'document/number-as-text',
        '`min` in limits main_bearing_clearance wear is the text `1 1/2 in`, a fraction',
        'write it as a decimal: 1.5 in',
      ],
    ],
  },
  {
    title: 'yes for a number',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear:
      max: yes
`,
    told: [
      [
        '6:12',
        'document/type',
        '`max` in limits main_bearing_clearance wear is the word `yes`, not a number',
        'write a number, a number with its unit such as 0.0635 mm, or { formula: "0.0005 * bore" }',
      ],
    ],
  },
  {
    title: 'true for a number',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear:
      max: true
`,
    told: [
      [
        '6:12',
        'document/type',
        '`max` in limits main_bearing_clearance wear is true, not a number',
        'write a number, a number with its unit such as 0.0635 mm, or { formula: "0.0005 * bore" }',
      ],
    ],
  },
  {
    title: 'a list for a number',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear:
      max: [1, 2]
`,
    told: [
      [
        '6:12',
        'document/type',
        '`max` in limits main_bearing_clearance wear is a list, not a number',
        'write a number, a number with its unit such as 0.0635 mm, or { formula: "0.0005 * bore" }',
      ],
    ],
  },
  {
    title: 'words for a number',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear:
      max: about two
`,
    told: [
      [
        '6:12',
        'document/type',
        '`max` in limits main_bearing_clearance wear is the text `about two`, not a number',
        'write a number, a number with its unit such as 0.0635 mm, or { formula: "0.0005 * bore" }',
      ],
    ],
  },
  {
    title: 'nothing for a number',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear:
      max:

`,
    told: [
      [
        '6:7',
        'document/type',
        '`max` in limits main_bearing_clearance wear is empty',
        'write a number, a number with its unit such as 0.0635 mm, or { formula: "0.0005 * bore" }',
      ],
    ],
  },
  {
    title: 'a band with a hyphen',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear: 0.0020-0.0038
`,
    told: [
      [
        '5:11',
        'document/value',
        '`wear` in limits main_bearing_clearance is the text `0.0020-0.0038`',
        'write { min: 0.0020, max: 0.0038 }, one of the two alone, or 0.0020 to 0.0038',
      ],
    ],
  },
  {
    title: 'a band that is one number',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear: 0.005
`,
    told: [
      [
        '5:11',
        'document/type',
        '`wear` in limits main_bearing_clearance is the number 0.005, not text or keys with values',
        'write { min: 0.0020, max: 0.0038 }, one of the two alone, or 0.0020 to 0.0038',
      ],
    ],
  },
  {
    title: 'a band with nothing in it',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear: {}
`,
    told: [
      [
        '5:11',
        'document/value',
        '`wear` in limits main_bearing_clearance holds nothing',
        'give min, max or both',
      ],
    ],
  },
  {
    title: 'a misspelt side of a band',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    wear: { maxx: 0.005 }
`,
    told: [
      [
        '5:13',
        'document/unknown-key',
        'unknown key `maxx` in limits main_bearing_clearance wear',
        'did you mean max?',
      ],
    ],
  },
  {
    title: 'misspelt bands, sizes and ways of taking a taper',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance:
    waer: { max: 0.005 }
    sizes: { 0.010 smaller: { new: 1 to 2 } }
    by: end
`,
    told: [
      [
        '5:5',
        'document/unknown-key',
        'unknown key `waer` in limits main_bearing_clearance',
        'did you mean wear?',
      ],
      [
        '6:14',
        'document/unknown-key',
        'unknown key `0.010 smaller` in limits main_bearing_clearance sizes',
        'write std, or a size with under or over, such as 0.010 under',
      ],
      [
        '7:9',
        'document/value',
        '`by` in limits main_bearing_clearance is the text `end`, none of ends, range',
        'did you mean ends?',
      ],
    ],
  },
  {
    title: 'a characteristic in words',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  Main Bearing: { wear: { max: 0.005 } }
`,
    told: [
      [
        '4:3',
        'document/unknown-key',
        'unknown key `Main Bearing` in limits',
        'write it in small letters, digits and _, beginning with a letter',
      ],
    ],
  },
  {
    title: 'formulas that are none',
    kind: 'limits',
    text: `kind: limits
source: Invented.
limits:
  main_bearing_clearance: { wear: { max: { formula: 3 } }, new: { min: { formla: bore } } }
`,
    told: [
      [
        '4:53',
        'document/type',
        '`formula` in limits main_bearing_clearance wear max is the number 3, not text',
        'write it in quotes: "3"',
      ],
      [
        '4:74',
        'document/unknown-key',
        'unknown key `formla` in limits main_bearing_clearance new min',
        'did you mean formula?',
      ],
    ],
  },
  {
    title: 'an instrument without a type, and one with five slips',
    kind: 'instruments',
    text: `kind: instruments
instruments:
  mic: { resolution: 0.0001 in }
  mac: { type: micrometer, due: 10.1.2027, max_error: 4 percent, marks: [a], range: { from: 3 in } }
`,
    told: [
      [
        '3:3',
        'document/missing-key',
        '`type` is missing in instruments mic',
        'add it, for example `type: micrometer`',
      ],
      [
        '4:33',
        'document/value',
        '`due` in instruments mac is the text `10.1.2027`',
        'write the date as year-month-day, such as 2026-02-03',
      ],
      [
        '4:55',
        'document/value',
        '`max_error` in instruments mac is the text `4 percent`, and percent is not a unit known here',
        'known units: in, thou, mm, um, lbf ft, lbf in, ozf in, N m, kgf m, lbf, N, kN, lbf/in, N/mm, psi, kPa, bar, kgf/cm2, inH2O, inHg, cc, ml, L, in3, g, kg, oz, lb, deg, degC, degF, h, rpm, uin, cSt, mm2/s, L/min, gal/min, %',
      ],
      [
        '4:74',
        'document/type',
        '`marks[1]` in instruments mac is the text `a`, not a number',
        'write a number, or a number with its unit such as 0.0635 mm',
      ],
      [
        '4:78',
        'document/missing-key',
        '`to` is missing in instruments mac range',
        'add it, for example `to: 4 in`',
      ],
    ],
  },
  {
    title: 'instruments as a list',
    kind: 'instruments',
    text: `kind: instruments
instruments: [mic]
`,
    told: [
      [
        '2:14',
        'document/type',
        '`instruments` is a list, not keys with values',
        'write keys and their values, such as { mic-3-4: { type: micrometer, resolution: 0.0001 in } }',
      ],
    ],
  },
  {
    title: 'a session without stage and date',
    kind: 'session',
    text: `kind: session
`,
    told: [
      ['1:1', 'document/missing-key', '`stage` is missing', 'add it, for example `stage: teardown`'],
      ['1:1', 'document/missing-key', '`date` is missing', 'add it, for example `date: 2026-02-03`'],
    ],
  },
  {
    title: 'a stage, a date and hours that are none',
    kind: 'session',
    text: `kind: session
stage: tear-down
date: 3 March
hours: 11,840
`,
    told: [
      [
        '2:8',
        'document/value',
        '`stage` is the text `tear-down`, none of teardown, machined, trial, rebuild, service',
        'did you mean teardown?',
      ],
      [
        '3:7',
        'document/value',
        '`date` is the text `3 March`',
        'write the date as year-month-day, such as 2026-02-03',
      ],
      [
        '4:8',
        'document/number-as-text',
        '`hours` is the text `11,840`',
        'write 11.840 with a decimal point, or 11840 if the comma marks thousands',
      ],
    ],
  },
  {
    title: 'a misspelt value',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
readings:
  - { measure: main_bearing_bore, at: { 1: 3.25 }, vlaue: 3 }
`,
    told: [
      [
        '5:52',
        'document/unknown-key',
        'unknown key `vlaue` in readings[1] main_bearing_bore',
        'did you mean value?',
      ],
    ],
  },
  {
    title: 'slips deep in a grid',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
readings:
  - { measure: cylinder_bore, at: { 1: 4.1 } }
  - { measure: main_bearing_bore, wiht: x, at: { 1: abc, 2: [3.25, [3.25, "3,25"]] } }
`,
    told: [
      [
        '6:35',
        'document/unknown-key',
        'unknown key `wiht` in readings[2] main_bearing_bore',
        'did you mean with?',
      ],
      [
        '6:53',
        'document/type',
        '`at 1` in readings[2] main_bearing_bore is the text `abc`, not a number',
        'write a number, a number with its unit such as 82.495 mm, a range such as 0.003 to 0.004, under 0.004 or over 0.006, or ~; of a test write pass, fail or not done; or a list of them along the stations',
      ],
      [
        '6:75',
        'document/number-as-text',
        '`at 2[2][2]` in readings[2] main_bearing_bore is the text `3,25`',
        'write 3.25 with a decimal point',
      ],
    ],
  },
  {
    title: 'a block without readings',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
readings:
  - { measure: main_bearing_bore, with: bore-2-6 }
`,
    told: [
      [
        '5:7',
        'document/missing-key',
        '`at`, `value` and `after` are all missing in readings[1] main_bearing_bore',
        'add at least one of them',
      ],
    ],
  },
  {
    title: 'a measure in words',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
readings:
  - measure: Main Bore
    at:
      1: 3.25

`,
    told: [
      [
        '5:14',
        'document/value',
        '`measure` in readings[1] Main Bore is the text `Main Bore`',
        "write a characteristic's id in small letters, digits and _, such as main_journal_diameter",
      ],
    ],
  },
  {
    title: 'readings of nothing',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
readings:
  - { at: { 1: 3.25 } }
`,
    told: [
      [
        '5:7',
        'document/missing-key',
        '`measure` is missing in readings[1]',
        'add it, for example `measure: main_journal_diameter`',
      ],
    ],
  },
  {
    title: 'a reading with no block',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
readings:
  - 3.25
`,
    told: [
      [
        '5:5',
        'document/type',
        '`readings[1]` is the number 3.25, not keys with values',
        'write `measure:` and what was read, or `work:` and what was done',
      ],
    ],
  },
  {
    title: 'work that measures',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
readings:
  - { work: honed, measure: cylinder_bore }
`,
    told: [
      [
        '5:7',
        'document/missing-key',
        '`on` is missing in readings[1] cylinder_bore',
        'add it, for example `on: cylinder 3`',
      ],
      [
        '5:20',
        'document/unknown-key',
        'unknown key `measure` in readings[1] cylinder_bore',
        'known keys: work, on, by, date, note, photos',
      ],
    ],
  },
  {
    title: 'points of every wrong kind',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
readings:
  - { measure: cylinder_bore, at: { 1: 1, 2: { go: 0.017 }, 3: {}, 4: [], 5: yes, 6: true } }
`,
    told: [
      [
        '5:43',
        'document/missing-key',
        '`no_go` is missing in readings[1] cylinder_bore at 2, and `go` needs it',
        'add it',
      ],
      [
        '5:64',
        'document/value',
        '`at 3` in readings[1] cylinder_bore holds nothing',
        'give value, repeat, or go and no_go',
      ],
      [
        '5:71',
        'document/value',
        '`at 4` in readings[1] cylinder_bore holds nothing',
        'put something in it, or leave it out',
      ],
      [
        '5:78',
        'document/type',
        '`at 5` in readings[1] cylinder_bore is the word `yes`, not a number',
        'write a number, a number with its unit such as 82.495 mm, a range such as 0.003 to 0.004, under 0.004 or over 0.006, or ~; of a test write pass, fail or not done; or a list of them along the stations',
      ],
      [
        '5:86',
        'document/type',
        '`at 6` in readings[1] cylinder_bore is true, not a number',
        'write a number, a number with its unit such as 82.495 mm, a range such as 0.003 to 0.004, under 0.004 or over 0.006, or ~; of a test write pass, fail or not done; or a list of them along the stations',
      ],
    ],
  },
  {
    title: 'a correction without the value',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
readings:
  - { measure: cylinder_bore, at: { 1: { note: x, was: 3 } } }
`,
    told: [
      [
        '5:37',
        'document/missing-key',
        '`value` is missing in readings[1] cylinder_bore at 1, and `was` needs it',
        'add it',
      ],
    ],
  },
  {
    title: 'stations, directions and shorthand of the wrong kind',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
readings:
  - { measure: cylinder_bore, stations: front, directions: { a: 1 }, in: tenth, at: 3.25 }
`,
    told: [
      [
        '5:41',
        'document/value',
        '`stations` in readings[1] cylinder_bore is the text `front`',
        'write names such as [front, rear], or distances such as { front: 0.25 in, rear: 1.75 in }',
      ],
      [
        '5:60',
        'document/type',
        '`directions` in readings[1] cylinder_bore is keys with values, not a list',
        'write a list of names, such as [throw, square]',
      ],
      [
        '5:74',
        'document/value',
        '`in` in readings[1] cylinder_bore is the text `tenth`, none of tenths, thou, hundredths',
        'did you mean tenths?',
      ],
      [
        '5:85',
        'document/type',
        '`at` in readings[1] cylinder_bore is the number 3.25, not keys with values',
        'write keys and their values, such as { 1: 3.2478, 2: [3.2475, 3.2476] }',
      ],
    ],
  },
  {
    title: 'steps without torque and torque without a step',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
readings:
  - { measure: turning_torque, after: [{ step: crankshaft }, { value: 3 }] }
`,
    told: [
      [
        '5:42',
        'document/missing-key',
        '`value`, `running` and `breakaway` are all missing in readings[1] turning_torque after[1] crankshaft',
        'add at least one of them',
      ],
      [
        '5:64',
        'document/missing-key',
        '`step` is missing in readings[1] turning_torque after[2]',
        'add it, for example `step: piston 1`',
      ],
    ],
  },
  {
    title: 'concessions that accept nothing',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
concessions:
  - { measure: cylinder_taper, reason: agreed }
  - { measure: cylinder_taper, up_to: 3, follow_up: { at: 3 } }
`,
    told: [
      [
        '5:7',
        'document/missing-key',
        '`up_to` and `down_to` are both missing in concessions[1] cylinder_taper',
        'add at least one of them',
      ],
      [
        '6:7',
        'document/missing-key',
        '`reason` is missing in concessions[2] cylinder_taper',
        'add it, for example `reason: Standby engine; owner agreed.`',
      ],
      [
        '6:42',
        'document/missing-key',
        '`measure` is missing in concessions[2] cylinder_taper follow_up',
        'add it, for example `measure: cylinder_taper`',
      ],
    ],
  },
  {
    title: 'words that are not in the lists',
    kind: 'session',
    text: `kind: session
stage: rebuild
date: 2026-03-14
found: [{ on: x, is: y, do: replace }]
fitted: { crankshaft: { main: 0.010 undersize, condition: grnd } }
by: 12
`,
    told: [
      [
        '4:29',
        'document/value',
        '`do` in found[1] x is the text `replace`, which is not known here',
        'write one of reuse, renew, machine, hold',
      ],
      [
        '5:31',
        'document/value',
        '`main` in fitted crankshaft is the text `0.010 undersize`',
        'write std, or a size with under or over, such as 0.010 under',
      ],
      [
        '5:59',
        'document/value',
        '`condition` in fitted crankshaft is the text `grnd`, which is not known here',
        'write one of new, used, reground',
      ],
      ['6:5', 'document/type', '`by` is the number 12, not text', 'write it in quotes: "12"'],
    ],
  },
  {
    title: 'a sequence with slips',
    kind: 'torque',
    text: `kind: torque
joint: caps
fasteners: { names: [1, 2], reuse: yes }
passes: [{ note: first }, { to: 40 Nmm }]
order: center out
source: x
`,
    told: [
      ['3:36', 'document/type', '`reuse` in fasteners is the word `yes`, not true or false', 'write true'],
      [
        '4:12',
        'document/missing-key',
        '`to`, `turn`, `loosen`, `stretch` and `check` are all missing in passes[1]',
        'add at least one of them',
      ],
      [
        '4:33',
        'document/value',
        '`to` in passes[2] is the text `40 Nmm`, and Nmm is not a unit known here',
        'known units: in, thou, mm, um, lbf ft, lbf in, ozf in, N m, kgf m, lbf, N, kN, lbf/in, N/mm, psi, kPa, bar, kgf/cm2, inH2O, inHg, cc, ml, L, in3, g, kg, oz, lb, deg, degC, degF, h, rpm, uin, cSt, mm2/s, L/min, gal/min, %',
      ],
      [
        '5:8',
        'document/value',
        '`order` is the text `center out`',
        'write the names in order, such as [3L, 3R, 4R, 4L], or centre out',
      ],
    ],
  },
  {
    title: 'a sequence that is two numbers',
    kind: 'torque',
    text: `kind: torque
joint: caps
fasteners: { names: 2 }
passes: 40
source: x
`,
    told: [
      [
        '3:21',
        'document/type',
        '`names` in fasteners is the number 2, not a list',
        'write a list of names, such as [1, 2, 3]',
      ],
      [
        '4:9',
        'document/type',
        '`passes` is the number 40, not a list',
        'write a list such as [{ to: 40 }, { to: 80 }]',
      ],
    ],
  },
  {
    title: 'a list for a document',
    kind: 'session',
    text: `- a
`,
    told: [
      ['1:1', 'document/type', 'the document is a list, not keys with values', 'write keys and their values'],
    ],
  },
  {
    title: 'an empty document',
    kind: 'session',
    text: '',
    told: [['1:1', 'document/type', 'the document is empty', 'write keys and their values']],
  },
];
