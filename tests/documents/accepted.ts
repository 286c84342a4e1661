import type { Kind } from '../../src/documents/schema/kinds.ts';

/** Sound documents, by what they show. Everything in them is invented. */
export const ACCEPTED: readonly (readonly [title: string, kind: Kind, text: string])[] = [
  ['a shop that says nothing but what it is', 'shop', 'kind: shop\n'],
  [
    'a shop with its units, rule, grids and a characteristic of its own',
    'shop',
    `kind: shop
version: 1
name: Lower Mill engine shop
units: { length: in, torque: ft-lb, pressure: psi, temperature: degF }
decision_rule: guarded
grids:
  main_journal: { stations: { front: 0.25, rear: 1.50 }, directions: [throw, square] }
  main_housing: { stations: [front, rear], directions: [square, +45, -45] }
  cylinder: { stations: { top: 0.50, middle: 2.50 in, bottom: 5.50 }, directions: [thrust, axial] }
characteristics:
  piston_protrusion:
    label: piston protrusion
    quantity: length
    positions: cylinder
  liner_pinch: { label: liner pinch, quantity: length, formula: liner_height - counterbore_depth, note: cold }
note: Figures are invented.
`,
  ],
  [
    'an engine in line',
    'engine',
    `kind: engine
name: Reservoir pump no. 2
units: { length: in, torque: lbf ft }
layout: { cylinders: 4, mains: 5, crankpins: 4 }
labels: { main: { 1: front, 3: centre, 5: flywheel end } }
sizes: { bore: 4.1250, stroke: 5.0000, main_journal_diameter: 3.2480, crankpin_diameter: 2.8740 }
materials: { block: cast iron, crankshaft: steel, pistons: aluminium }
`,
  ],
  [
    'a vee engine with named positions, a thrust main, a job and what is in it',
    'engine',
    `kind: engine
name: Harbour lighting set
decision_rule: simple
layout:
  number_from: free end
  cylinders: [1L, 1R, 2L, 2R]
  mains: [1, 2, 3]
  crankpins: { 1: [1L, 1R], 2: [2L, 2R] }
  cam_bearings: 3
  valves: [1LI, 1LE, 1RI, 1RE]
  thrust_main: 3
  firing_order: [1L, 1R, 2R, 2L]
job:
  number: 2417
  customer: Harbour board
  engine_serial: "00417"
  received: 2026-01-28 on a pallet
  caps: stamped 1-5, arrows to free end
fitted:
  pistons: { size: 0.020 over, condition: new }
`,
  ],
  [
    'a vee engine whose pins list their cylinders beside a count',
    'engine',
    `kind: engine
name: Eight in a vee
layout: { cylinders: 8, mains: 5, crankpins: 4, pins: { 1: [1, 5], 2: [2, 6], 3: [3, 7], 4: [4, 8] } }
sizes: { bore: 104.775 mm, stroke: 127 mm }
running: { temperature: 90 degC, pistons: 180 degC }
`,
  ],
  [
    'limits by bands, positions, other units and a formula',
    'limits',
    `kind: limits
source: Invented for this example. Use the engine maker's manual.
limits:
  main_bearing_clearance:
    target: { min: 0.0026, max: 0.0032 }
    new:    { min: 0.0020, max: 0.0038 }
    wear:   { max: 0.0050 }
    at: { 5: { target: { min: 0.0028, max: 0.0036 } } }
  main_journal_out_of_round: { wear: { max: 0.0010 } }
  crankshaft_end_play: { new: { min: 0.006, max: 0.013 }, wear: { max: 0.018 } }
  turning_torque: { new: { max: 9 lbf ft }, at: { crankshaft: { new: { max: 3 lbf ft } } } }
  cylinder_taper: { wear: { max: { formula: "0.0005 * bore" } } }
`,
  ],
  [
    'limits as a manual prints them, with size grades, per inch and by ends',
    'limits',
    `kind: limits
source: Invented.
temperature: 70 degF
extends: ../../limits/family.yaml
units: { length: mm }
characteristics:
  ring_gap_ratio: { label: ring gap ratio, quantity: length, positions: ring, formula: ring_end_gap / bore }
limits:
  main_bearing_clearance:
    new: 0.0020 to 0.0038
    target: 0.065 mm to 0.080 mm
    source: Another page of the same manual.
    note: Diametral.
    at: { 3: { new: 0.0022 to 0.0040, source: Service letter., temperature: 20 degC } }
  main_journal_diameter:
    new: 3.2475 to 3.2485
    sizes: { 0.010 under: { new: 3.2375 to 3.2385 }, 0.25 mm under: { new: { min: 82.22 mm } }, std: { wear: { min: 3.2465 } } }
  main_journal_taper: { wear: { max: 0.0003 }, per: 1 in, by: ends }
  cylinder_taper: { wear: { max: 0.0080 }, by: range }
`,
  ],
  ['limits that only extend others', 'limits', 'kind: limits\nsource: As below.\nextends: ../family.yaml\n'],
  ['a register that has just been begun', 'instruments', 'kind: instruments\ninstruments: {}\n'],
  [
    'a register of instruments',
    'instruments',
    `kind: instruments
instruments:
  mic-3-4:   { type: micrometer, range: { from: 3 in, to: 4 in }, resolution: 0.0001 in, max_error: 0.0001 in, calibrated: 2026-01-10, due: 2027-01-10 }
  bore-2-6:  { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: 0.00005 in }
  strip-mid: { type: gauging strip, marks: [0.002 in, 0.003 in, 0.004 in, 0.006 in] }
  beam-60:   { type: torque wrench, max_error: 4 % }
  ring-325:  { type: setting ring, calibration: { uncertainty: 0.00002 in, k: 2, certificate: C-118 }, material: steel, serial: "0042" }
`,
  ],
  [
    'a teardown with a grid, a bore gauge, a strip, turning torque, a log and a concession',
    'session',
    `kind: session
stage: teardown
date: 2026-02-03
by: RK
hours: 11840
temperature: 64 degF
readings:
  - measure: main_journal_diameter
    with: mic-3-4
    stations: [front, rear]
    directions: [vertical, horizontal]
    at:
      1: [[3.2478, 3.2477], [3.2477, 3.2477]]
      2: 3.2475
  - measure: main_bearing_bore
    with: bore-2-6
    set_with: mic-3-4
    at: { 1: [3.2507, 3.2511], 2: 3.2509 }
  - measure: main_bearing_clearance
    with: strip-mid
    conditions: { bearings: dry, threads: oiled, oil_pump: off }
    at: { 5: { value: 0.0045, note: read at the wide end } }
  - measure: turning_torque
    with: beam-60
    after:
      - { step: crankshaft, value: 2.1 }
      - { step: piston 1, value: 2.9 }
tightened:
  - { sequence: main-caps, with: beam-60, passes: [{ to: 40 }, { to: 80 }, { to: 110 }] }
concessions:
  - measure: cylinder_taper
    at: 3
    up_to: 0.0030
    reason: Standby engine; owner agreed to run it until the spring overhaul.
    by: RK
    follow_up: { measure: compression_pressure, at: 3, min: 300 psi }
`,
  ],
  [
    'a tightening sequence',
    'torque',
    `kind: torque
joint: main caps
fasteners: { names: [1L, 1R, 2L, 2R, 3L, 3R, 4L, 4R, 5L, 5R], thread: 9/16-12, grade: 8, reuse: true }
order: [3L, 3R, 4R, 4L, 2L, 2R, 5R, 5L, 1L, 1R]
lubricant: engine oil on threads and under heads
passes: [{ to: 40 }, { to: 80 }, { to: 110 }]
before: [threads clean, caps in their places and facing forward, shells seated]
source: Invented for this example.
`,
  ],
  [
    'a sequence by turn, by loosening, by stretch, for some fasteners, in a generated order',
    'torque',
    `kind: torque
joint: cylinder head
fasteners: { names: [1, 2, 3, 4, 5, 6], thread: M12x1.75, grade: 10.9, reuse: false, length: 120 mm }
order: centre out
positions: [[1, 3, 5], [2, 4, ~, 6]]
passes:
  - { to: 70 % }
  - { loosen: 360 deg }
  - { to: 58 to 69, stretch: { min: 0.019, max: 0.024 } }
  - { turn: 90 deg, fasteners: [1, 2] }
  - { turn: 90 to 94 deg, stretch: 0.0135 in to 0.0185 in, note: replace a stud outside the window }
before: [threads clean]
after: [crankshaft turns freely]
source: Invented.
`,
  ],
  [
    'a sequence round a circle',
    'torque',
    `kind: torque
joint: flywheel
fasteners: { names: [1, 2, 3, 4, 5, 6] }
positions: { circle: [1, 2, 3, 4, 5, 6] }
order: centre out
passes: [{ to: 95 N m }]
source: Invented.
`,
  ],
  session(
    'directions by their own words, and points that were not taken',
    `
  - measure: main_housing_bore
    directions: [square, +45, -45]
    at: { 1: [3.4375, 3.4376, ~], 2: ~ }`,
  ),
  session(
    'stations with their distances',
    `
  - measure: main_journal_diameter
    stations: { front: 0.25 in, rear: 1.75 in }
    at: { 1: [3.2478, 3.2477] }`,
  ),
  session(
    'repeats of one point, alone and in a grid',
    `
  - measure: main_journal_diameter
    stations: [front, rear]
    at: { 1: { repeat: [3.2478, 3.2477, 3.2478], note: warm hands }, 2: [{ repeat: [3.2478, 3.2477] }, 3.2478] }`,
  ),
  session(
    'the whole engine, with a value and with repeats',
    `
  - { measure: crankshaft_end_play, with: dial, value: 0.009 }
  - { measure: crankshaft_end_play, value: { repeat: [0.009, 0.0095] } }`,
  ),
  session(
    'bench shorthand in tenths, upon a base',
    `
  - { measure: main_journal_diameter, in: tenths, base: 3.24, at: { 1: [78, +77], 2: -5 } }`,
  ),
  session(
    'deviations from a master',
    `
  - { measure: main_bearing_bore, in: thou, set_to: 3.2500, at: { 1: +0.7, 2: .5 } }
  - { measure: main_bearing_bore, set_to: 82.55 mm, at: { 1: -0.02 mm } }`,
  ),
  session(
    'clearances read on a gauge zeroed at each journal',
    `
  - { measure: main_bearing_clearance, in: hundredths, set_to: journal, set_with: mic-3-4, at: { 1: +7 } }`,
  ),
  session(
    'ranges of strips and feelers',
    `
  - { measure: main_bearing_clearance, at: { 1: under 0.004, 2: 0.003 to 0.004, 3: { front: 0.003, rear: 0.003 to 0.004 } } }
  - { measure: ring_end_gap, at: { 1: { top: { go: 0.017, no_go: 0.018 }, second: under 0.1 mm }, 3 top: 0.4 mm to 0.5 mm } }
  - { measure: rod_side_clearance, at: { 1: [under 0.004, { go: 0.010, no_go: 0.011 }] } }`,
  ),
  session(
    'the halves of a pair of shells',
    `
  - { measure: main_shell_thickness, at: { 3: { upper: 0.1247, lower: 0.1252 }, 4: { upper: [0.1247, 0.1248], lower: 0.1250 } } }`.replace(
      '[0.1247, 0.1248]',
      '{ repeat: [0.1247, 0.1248] }',
    ),
  ),
  session(
    'turning torque with what starts it and what keeps it turning',
    `
  - measure: turning_torque
    after:
      - { step: cap 1, breakaway: 1.4, running: 1.1 }
      - { step: piston 1, running: 2.9 lbf ft, note: rings oiled }
      - { step: piston 2, value: ~ }`,
  ),
  session(
    'runout, and where the shaft rested',
    `
  - { measure: crankshaft_runout, supported_on: [1, 5], at: { 3: 0.0015 } }`,
  ),
  session(
    'work between readings, and a slip put right',
    `
  - { measure: cylinder_bore, at: { 3: 4.1262 } }
  - { work: honed, on: cylinder 3, by: RK, date: 2026-02-04, note: two strokes, photos: [photos/c3.jpg] }
  - { work: polished, on: [main 1, main 2] }
  - { measure: crankpin_diameter, at: { 4: { value: 2.8734, was: 2.8374, why: misread } } }`,
  ),
  session(
    'a block by another hand, another day, warmer',
    `
  - { measure: cylinder_bore, by: JM, date: 2026-02-04, temperature: 18.5 degC, conditions: { caps: 2 }, note: again, at: { 1: 4.1261 } }`,
  ),
  [
    'a session that uses another, checks its micrometer, and says what was found, fitted, replaced and machined',
    'session',
    `kind: session
stage: machined
date: 2026-03-14
conditions: { bearings: oiled }
uses: [2026-02-03-teardown]
checked: [{ instrument: mic-3-4, standard: 3.0000, read: 3.0001, by: RK }]
found:
  - { on: main 3 shell lower, is: wiped to copper, do: renew, photos: [photos/main-3.jpg] }
  - { on: [cap 1, cap 2], is: fretted }
fitted:
  crankshaft: { mark: K4471, condition: reground, main: 0.010 under, crankpin: std }
  main_shells: { code: A12-10, condition: new, size: 0.010 under, at: { 3: { lower: 0.011 under }, 4: 0.25 mm under } }
replaced: [{ part: main shells, at: [1, 2] }, { part: oil pump }]
machined: [{ part: cylinder, at: 3, note: rebored }]
photos: [photos/all.jpg]
note: Cold morning.
`,
  ],
  [
    'a study of an instrument',
    'session',
    `kind: session
stage: service
date: 2026-03-15
study:
  measure: main_journal_diameter
  with: mic-3-4
  parts: { P1: { RK: [3.2478, 3.2477, ~], JM: [3.2478 in, 3.2478] }, P2: { RK: [3.2475], JM: [3.2476] } }
`,
  ],
  [
    'a full log of tightening, and a concession with an end',
    'session',
    `kind: session
stage: rebuild
date: 2026-03-16
tightened:
  - sequence: main-caps
    with: beam-60
    lubricant: engine oil
    fasteners: reused
    confirmed: [threads clean, shells seated]
    order: [1L, 1R]
    passes:
      - { to: 40, values: { 1L: 40, 1R: 54 N m }, left_out: [5L] }
      - { turn: 90 deg }
      - { stretch: 0.0135 to 0.0185, values: { 1L: 0.0150, 1R: ~ } }
concessions:
  - { measure: rod_side_clearance, at: [1, 2], down_to: 0.004, up_to: 0.016 in, reason: agreed, until: 2026-12-31 }
`,
  ],
];

function session(title: string, readings: string): readonly [string, Kind, string] {
  return [title, 'session', `kind: session\nstage: rebuild\ndate: 2026-03-14\nreadings:${readings}\n`];
}
