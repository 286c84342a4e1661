import type { ChartGlyphs } from '../trend/trendChart.ts';

/** A figure over clearances, in one unit a direction. */
export interface CurveChart {
  readonly curve: readonly { readonly x: number; readonly y: number }[];
  /** Measured ones, on the curve, each with how far along it they may lie. */
  readonly marks: readonly {
    readonly x: number;
    readonly y: number;
    readonly from: number;
    readonly to: number;
  }[];
  /** Limits of what runs from left to right. */
  readonly limits: readonly number[];
  readonly formatX: (x: number) => string;
  readonly formatY: (y: number) => string;
}

const HEIGHT = 9;
const WIDEST = 64;
const NARROWEST = 20;

/** A small chart at most `width` columns wide; limits stand upright in it. */
export function drawCurve(chart: CurveChart, width: number, glyphs: ChartGlyphs): readonly string[] {
  const { curve, marks, limits, formatX, formatY } = chart;
  const heights = curve.map(({ y }) => y);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const [from = 0, to = 0] = [curve[0]?.x, curve.at(-1)?.x];
  const labels = [formatY(high), ...Array<string>(HEIGHT - 2).fill(''), formatY(low)];
  const margin = Math.max(...labels.map((label) => label.length));
  const columns = Math.min(WIDEST, Math.max(NARROWEST, width - margin - 4));
  const grid = labels.map(() => Array<string>(columns).fill(' '));
  const column = (x: number): number => Math.round(((x - from) / (to - from)) * (columns - 1));
  const row = (y: number): number =>
    high === low ? HEIGHT >> 1 : Math.round(((high - y) / (high - low)) * (HEIGHT - 1));
  const put = (x: number, y: number, glyph: string): void => {
    const cells = grid[y];
    if (cells !== undefined && x >= 0 && x < columns) cells[x] = glyph;
  };
  for (const x of limits) for (let y = 0; y < HEIGHT; y += 1) put(column(x), y, glyphs.axis);
  const isKnownTo = (x: number): boolean => marks.some((mark) => x >= mark.from && x <= mark.to);
  for (const { x, y } of curve) put(column(x), row(y), isKnownTo(x) ? glyphs.limit : glyphs.line);
  for (const { x, y } of marks) put(column(x), row(y), glyphs.reading);
  const gap = Math.max(1, columns - formatX(from).length - formatX(to).length);
  return [
    ...grid.map((cells, index) =>
      `  ${(labels[index] ?? '').padStart(margin)} ${glyphs.axis}${cells.join('')}`.trimEnd(),
    ),
    `${' '.repeat(margin + 4)}${formatX(from)}${' '.repeat(gap)}${formatX(to)}`,
  ];
}
