/** What a chart shows, in one unit a direction. */
export interface Chart {
  /** By x. */
  readonly points: readonly { readonly x: number; readonly y: number; readonly isPast?: boolean }[];
  /** The fitted height at an x; undefined where no line is drawn. */
  readonly line: ((x: number) => number) | undefined;
  readonly limits: readonly { readonly y: number; readonly name: string }[];
  /** How far to the right it reaches: at least to the last point. */
  readonly until: number;
  readonly formatX: (x: number) => string;
  readonly formatY: (y: number) => string;
}

export interface ChartGlyphs {
  readonly reading: string;
  /** One that only an earlier commit holds. */
  readonly past: string;
  readonly line: string;
  readonly limit: string;
  readonly axis: string;
}

export const CHART_LINES: ChartGlyphs = { reading: '●', past: '○', line: '·', limit: '─', axis: '│' };
export const CHART_PLAIN: ChartGlyphs = { reading: 'o', past: 'x', line: '.', limit: '-', axis: '|' };

const HEIGHT = 11;
const WIDEST = 72;
const NARROWEST = 20;

/** A small chart: readings, the fitted line and the limits, at most `width` columns wide. */
export function drawTrend(chart: Chart, width: number, glyphs: ChartGlyphs): readonly string[] {
  const heights = [...chart.points.map(({ y }) => y), ...chart.limits.map(({ y }) => y)];
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const labels = new Map<number, string>();
  const names = new Map<number, string>();
  const row = (y: number): number =>
    high === low ? HEIGHT >> 1 : Math.round(((high - y) / (high - low)) * (HEIGHT - 1));
  for (const y of [low, high]) labels.set(row(y), chart.formatY(y));
  for (const { y, name } of chart.limits) {
    labels.set(row(y), chart.formatY(y));
    names.set(row(y), name);
  }
  const margin = Math.max(...[...labels.values()].map((label) => label.length));
  const nameRoom = Math.max(0, ...[...names.values()].map((name) => name.length + 1));
  const columns = Math.min(WIDEST, Math.max(NARROWEST, width - margin - nameRoom - 4));
  const grid = drawn(chart, columns, row, glyphs);
  const lines = grid.map((cells, index) => {
    const label = (labels.get(index) ?? '').padStart(margin);
    return `  ${label} ${glyphs.axis}${cells.join('')} ${names.get(index) ?? ''}`.trimEnd();
  });
  return [...lines, xLine(chart, margin + 4, columns)];
}

function drawn(
  { points, line, limits, until }: Chart,
  columns: number,
  row: (y: number) => number,
  glyphs: ChartGlyphs,
): readonly string[][] {
  const grid = Array.from({ length: HEIGHT }, () => Array.from({ length: columns }, () => ' '));
  const put = (at: number, column: number, glyph: string): void => {
    const cells = grid[at];
    if (cells !== undefined && column >= 0 && column < columns) cells[column] = glyph;
  };
  const from = points[0]?.x ?? 0;
  const span = until - from || 1;
  for (const { y } of limits) {
    for (let column = 0; column < columns; column++) put(row(y), column, glyphs.limit);
  }
  if (line !== undefined) {
    for (let column = 0; column < columns; column++) {
      put(row(line(from + (span * column) / (columns - 1))), column, glyphs.line);
    }
  }
  for (const { x, y, isPast } of points) {
    put(row(y), Math.round(((x - from) / span) * (columns - 1)), isPast ? glyphs.past : glyphs.reading);
  }
  return grid;
}

/** The first and the last x below the ends. */
function xLine({ points, until, formatX }: Chart, margin: number, columns: number): string {
  const [first, last] = [formatX(points[0]?.x ?? 0), formatX(until)];
  const gap = Math.max(2, columns - first.length - last.length);
  return `${' '.repeat(margin)}${first}${' '.repeat(gap)}${last}`;
}
