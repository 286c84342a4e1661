/** A small engine shop for the tests of the bench. All figures are invented. */
export const SHOP = 'kind: shop\nunits: { length: in, torque: lbf ft, pressure: psi, temperature: degF }\n';

export const ENGINE = `kind: engine
name: Pump
layout: { cylinders: 4, mains: 5, crankpins: 4 }
labels: { main: { 1: front, 5: flywheel end } }
sizes: { bore: 4.1250, main_journal_diameter: 3.2480, crankpin_diameter: 2.8740 }
`;

export const LIMITS = `kind: limits
source: Invented for these tests.
limits:
  crankshaft_end_play: { new: 0.006 to 0.013, wear: { max: 0.018 } }
  turning_torque: { new: { max: 9 } }
  rod_side_clearance: { new: 0.006 to 0.012 }
  main_bearing_clearance: { new: 0.0020 to 0.0038, wear: { max: 0.0050 } }
  main_journal_diameter: { new: 3.2475 to 3.2485 }
  main_journal_out_of_round: { wear: { max: 0.0010 } }
  main_journal_taper: { wear: { max: 0.0010 } }
  crankpin_diameter: { new: 2.8735 to 2.8745 }
  cylinder_taper: { wear: { max: 0.0020 } }
`;

export const INSTRUMENTS = `kind: instruments
instruments:
  mic-2-3: { type: micrometer, range: { from: 2 in, to: 3 in }, resolution: 0.0001 in, max_error: 0.0001 in }
  mic-3-4: { type: micrometer, range: { from: 3 in, to: 4 in }, resolution: 0.0001 in, max_error: 0.0001 in }
  bore-2-6: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: 0.00005 in }
  dial: { type: dial indicator, resolution: 0.001 in, max_error: 0.001 in }
  strip-mid: { type: gauging strip, marks: [0.002 in, 0.003 in, 0.004 in, 0.006 in] }
  beam-60: { type: torque wrench, max_error: 4 % }
`;
