/** One row of the charts: a film of a certain thickness, by the numbers that have no unit. */
export interface ChartRow {
  /** Least film thickness over radial clearance. */
  readonly thickness: number;
  readonly sommerfeld: number;
  /** Degrees. */
  readonly attitude: number;
  /** (r/c) f, coefficient of friction over relative clearance. */
  readonly friction: number;
  /** Q / (r c N l), what is drawn in. */
  readonly inflow: number;
  /** Of that the share that leaves at the sides. */
  readonly sideShare: number;
  /** Mean pressure on the projected area over the greatest pressure in the film. */
  readonly pressureShare: number;
}

type Figures = readonly [
  thickness: number,
  sommerfeld: number,
  attitude: number,
  friction: number,
  inflow: number,
  sideShare: number,
  pressureShare: number,
];

const row = ([
  thickness,
  sommerfeld,
  attitude,
  friction,
  inflow,
  sideShare,
  pressureShare,
]: Figures): ChartRow => ({
  thickness,
  sommerfeld,
  attitude,
  friction,
  inflow,
  sideShare,
  pressureShare,
});

/*
 * Raimondi and Boyd, A solution for the finite journal bearing and its application to analysis and design, 1958: full
 * bearings of which no film is under tension, as an open-source bearing library tables it (tests/data/raimondi-boyd.csv).
 */

/** A bearing without end. */
export const INFINITE: readonly ChartRow[] = (
  [
    [0.9, 0.24, 69.1, 4.8, 3.03, 0, 0.826],
    [0.8, 0.123, 67.26, 2.57, 2.83, 0, 0.814],
    [0.6, 0.0626, 61.94, 1.52, 2.26, 0, 0.764],
    [0.4, 0.0389, 54.31, 1.2, 1.56, 0, 0.667],
    [0.2, 0.021, 42.22, 0.961, 0.76, 0, 0.495],
    [0.1, 0.0115, 31.62, 0.756, 0.411, 0, 0.358],
  ] as const
).map(row);

/** A bearing as long as its diameter. */
export const ONE: readonly ChartRow[] = (
  [
    [0.9, 1.33, 79.5, 26.4, 3.37, 0.15, 0.54],
    [0.8, 0.631, 74.02, 12.8, 3.59, 0.28, 0.529],
    [0.6, 0.264, 63.1, 5.79, 3.99, 0.497, 0.484],
    [0.4, 0.121, 50.58, 3.22, 4.33, 0.68, 0.415],
    [0.2, 0.0446, 36.24, 1.7, 4.62, 0.842, 0.313],
    [0.1, 0.0188, 26.45, 1.05, 4.74, 0.919, 0.247],
    [0.03, 0.00474, 15.47, 0.514, 4.82, 0.973, 0.152],
  ] as const
).map(row);

/** A bearing half as long. */
export const HALF: readonly ChartRow[] = (
  [
    [0.9, 4.31, 81.62, 85.6, 3.43, 0.173, 0.523],
    [0.8, 2.03, 74.94, 40.9, 3.72, 0.318, 0.506],
    [0.6, 0.779, 61.45, 17.0, 4.29, 0.552, 0.441],
    [0.4, 0.319, 48.14, 8.1, 4.85, 0.73, 0.365],
    [0.2, 0.0923, 33.31, 3.26, 5.41, 0.874, 0.267],
    [0.1, 0.0313, 23.66, 1.6, 5.69, 0.939, 0.206],
    [0.03, 0.00609, 13.75, 0.61, 5.88, 0.98, 0.126],
  ] as const
).map(row);

/** A bearing a quarter as long. */
export const QUARTER: readonly ChartRow[] = (
  [
    [0.9, 16.2, 82.31, 322, 3.45, 0.18, 0.515],
    [0.8, 7.57, 75.18, 153, 3.76, 0.33, 0.489],
    [0.6, 2.83, 60.86, 61.1, 4.37, 0.567, 0.415],
    [0.4, 1.07, 46.72, 26.7, 4.99, 0.746, 0.334],
    [0.2, 0.261, 31.04, 8.8, 5.6, 0.884, 0.24],
    [0.1, 0.0736, 21.85, 3.5, 5.91, 0.945, 0.18],
    [0.03, 0.0101, 12.22, 0.922, 6.12, 0.984, 0.108],
  ] as const
).map(row);
