import { monotoneCurve, type Point } from './monotoneCurve.ts';
import { type ChartRow, HALF, INFINITE, ONE, QUARTER } from './raimondiBoyd.ts';

/** The shortest bearing that is tabled; a shorter one is not looked at. */
export const SHORTEST = 0.25;

/** What the charts say of a bearing of a certain length, at any Sommerfeld number. */
export interface Chart {
  readonly at: (sommerfeld: number) => ChartRow;
  /** The thinnest and the thickest film that is tabled for it, over the radial clearance. */
  readonly thinnest: number;
  readonly thickest: number;
}

/** One film asks for the chart of its bearing some forty times, and the bearings of an engine are of few lengths. */
const drawn = new Map<number, Chart>();
const DRAWN_AT_MOST = 100;

/** Undefined for a bearing shorter than a quarter of its diameter. */
export function chartFor(lengthToDiameter: number): Chart | undefined {
  if (lengthToDiameter < SHORTEST) return undefined;
  const known = drawn.get(lengthToDiameter);
  if (known !== undefined) return known;
  if (drawn.size >= DRAWN_AT_MOST) drawn.clear();
  const chart = draw(lengthToDiameter);
  drawn.set(lengthToDiameter, chart);
  return chart;
}

function draw(lengthToDiameter: number): Chart {
  const rows = rowsFor(lengthToDiameter);
  return {
    at: readingOf(rows),
    thinnest: Math.min(...rows.map(({ thickness }) => thickness)),
    thickest: Math.max(...rows.map(({ thickness }) => thickness)),
  };
}

/** Every film that is tabled for all lengths, and the thinnest where three suffice. */
function rowsFor(length: number): readonly ChartRow[] {
  return ONE.flatMap((one, index) => {
    const [infinite, half, quarter] = [INFINITE[index], HALF[index], QUARTER[index]];
    if (half === undefined || quarter === undefined) return [];
    if (infinite !== undefined) return [blend(length, [infinite, one, half, quarter])];
    return length <= 1 ? [blendOfThree(length, [one, half, quarter])] : [];
  });
}

/** Raimondi and Boyd's own rule for lengths between those of the table (Shigley, equation 12-16). */
function blend(length: number, of: readonly [ChartRow, ChartRow, ChartRow, ChartRow]): ChartRow {
  const [to1, to2, to4] = [1 - length, 1 - 2 * length, 1 - 4 * length];
  const weights = [(-to1 * to2 * to4) / 8, (to2 * to4) / 3, (-to1 * to4) / 4, (to1 * to2) / 24];
  return rowFrom((figure) =>
    of.reduce((sum, row, index) => sum + ((weights[index] ?? 0) * row[figure]) / length ** 3, 0),
  );
}

/** The thinnest film has no row for a bearing without end: a parabola through the other three, in logarithms; ours. */
function blendOfThree(length: number, of: readonly [ChartRow, ChartRow, ChartRow]): ChartRow {
  const octaves = Math.log2(length);
  const weights = [
    ((octaves + 1) * (octaves + 2)) / 2,
    -octaves * (octaves + 2),
    (octaves * (octaves + 1)) / 2,
  ];
  return rowFrom((figure) =>
    Math.exp(of.reduce((sum, row, index) => sum + (weights[index] ?? 0) * Math.log(row[figure]), 0)),
  );
}

const rowFrom = (value: (figure: keyof ChartRow) => number): ChartRow => ({
  thickness: value('thickness'),
  sommerfeld: value('sommerfeld'),
  attitude: value('attitude'),
  friction: value('friction'),
  inflow: value('inflow'),
  sideShare: value('sideShare'),
  pressureShare: value('pressureShare'),
});

/**
 * Between the rows along the logarithm of the Sommerfeld number, on which the charts are drawn. Beyond them thickness and
 * friction go on as they end, towards 0 and 1, and as Petroff has it; the others stay as they are at the end.
 */
function readingOf(rows: readonly ChartRow[]): (sommerfeld: number) => ChartRow {
  const byLoad = rows.toSorted((a, b) => a.sommerfeld - b.sommerfeld);
  const along = (figure: (row: ChartRow) => number): ((x: number) => number) =>
    monotoneCurve(byLoad.map((row): Point => [Math.log(row.sommerfeld), figure(row)]));
  const [first = 0, last = 0] = [byLoad[0], byLoad.at(-1)].map((row) => Math.log(row?.sommerfeld ?? 1));
  const within = (x: number): number => Math.min(last, Math.max(first, x));
  const thickness = along((row) => Math.log(row.thickness / (1 - row.thickness)));
  const friction = along((row) => Math.log(row.friction));
  const [attitude, inflow, sideShare, pressureShare] = [
    along((row) => row.attitude),
    along((row) => row.inflow),
    along((row) => row.sideShare),
    along((row) => row.pressureShare),
  ] as const;
  return (sommerfeld) => {
    const x = Math.log(sommerfeld);
    return {
      thickness: 1 / (1 + Math.exp(-thickness(x))),
      sommerfeld,
      attitude: attitude(within(x)),
      friction: Math.exp(friction(x)),
      inflow: inflow(within(x)),
      sideShare: sideShare(within(x)),
      pressureShare: pressureShare(within(x)),
    };
  };
}
