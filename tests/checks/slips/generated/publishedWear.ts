/** Limits of new parts and wear limits as government manuals print them, in inches: what a clean session's wear is drawn from. */
export interface PublishedWear {
  readonly min: number;
  readonly max: number;
  readonly wear: number;
  readonly source: string;
}

const row = (min: number, max: number, wear: number, source: string): PublishedWear => ({
  min,
  max,
  wear,
  source,
});

const A = 'TM 9-2815-225-34&P, appendix F';
const B = 'TM 9-2815-213-34, p. 94';
const C = 'TM 5-3805-260-24, p. 1-23';

export const JOURNALS: readonly PublishedWear[] = [
  row(4.4985, 4.5, 4.4975, `${A}: main journal`),
  row(3.1235, 3.125, 3.122, `${A}: rod journal`),
  row(3.499, 3.5, 3.4965, `${B}: main journal`),
  row(3.124, 3.1253, 3.1215, `${B}: rod journal`),
  row(2.749, 2.7502, 2.7486, `${C}: rod journal 2.7496 ± .0006`),
  row(3.4989, 3.5001, 3.498, `${C}: main journal 3.4995 ± .0006`),
];

/** A bore with shells in opens by twice what its shells wear. */
export const SHELLS: readonly PublishedWear[] = [
  row(0.1245, 0.125, 0.123, 'TM 5-3895-347-14P, shell thickness, standard'),
  row(0.123, 0.1238, 0.1215, `${A}: main shell`),
  row(0.1245, 0.12525, 0.123, `${B}: main shell`),
];

export const BORES: readonly PublishedWear[] = [
  row(5.4995, 5.501, 5.505, `${A}: liner`),
  row(5.4995, 5.501, 5.505, `${B}: liner`),
];

export const PISTONS: readonly PublishedWear[] = [
  row(5.487, 5.488, 5.483, `${A}: piston skirt`),
  row(5.487, 5.488, 5.483, 'TM 5-6115-593-34, table 1-2: piston skirt'),
];

export const END_PLAYS: readonly PublishedWear[] = [
  row(0.007, 0.017, 0.022, `${A}: crankshaft end clearance`),
  row(0.004, 0.011, 0.018, 'TM 55-1905-221-14-1, table 1-1'),
  row(0.006, 0.013, 0.026, 'TM 5-6115-593-34, table 1-2'),
  row(0.005, 0.015, 0.022, B),
  row(0.003, 0.01, 0.014, C),
  row(0.002, 0.008, 0.015, 'TM 9-2815-256-24, p. 3-185'),
];

export const SIDE_CLEARANCES: readonly PublishedWear[] = [
  row(0.005, 0.012, 0.02, 'TM 10-4320-344-24'),
  row(0.0067, 0.0118, 0.0157, 'TM 10-3930-653-14&P, p. 61: .17 to .30 mm, limit .40 mm'),
];

export const BEARING_CLEARANCES: readonly PublishedWear[] = [
  row(0.0015, 0.005, 0.007, `${A}: main journal clearance`),
  row(0.001, 0.004, 0.006, 'TM 5-3895-347-14P: main bearing clearance'),
  row(0.0016, 0.005, 0.006, 'TM 55-1905-220-14-4: main bearing clearance'),
  row(0.0007, 0.0025, 0.0047, 'TM 9-2815-254-24, p. 3-138'),
];
