import type { EngineState } from '../../compare/state.ts';
import type { Trend, TrendLine } from '../../compare/trend.ts';
import { valueAt } from '../../measurement/line.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { positionText } from '../check/view/rowView.ts';
import type { Line } from '../escape/line.ts';
import { LINES } from '../terminal/picture.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { CHART_LINES, CHART_PLAIN, type ChartGlyphs, drawTrend } from './trendChart.ts';
import { heightText, limitName, printingOfLine, xText } from './trendWords.ts';

/** The line that meets its limit first; else the longest. */
export function mostPressing(lines: readonly TrendLine[]): TrendLine | undefined {
  const reachedAt = ({ fit: { outlook } }: TrendLine): number =>
    outlook.kind === 'beyond'
      ? Number.NEGATIVE_INFINITY
      : outlook.kind === 'reached'
        ? outlook.x
        : Number.POSITIVE_INFINITY;
  return lines
    .filter(({ points }) => points.length > 2)
    .toSorted((a, b) => {
      const [x, y] = [reachedAt(a), reachedAt(b)];
      return x === y ? b.points.length - a.points.length : x - y;
    })[0];
}

/** The chart of one line with its intervals; none where two readings or fewer would only be joined. */
export function chartLines(
  line: TrendLine,
  { axis, characteristic, past }: Trend,
  unitFor: EngineState['unitFor'],
  style: TextStyle,
): readonly Line[] {
  const { points, fit } = line;
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined || points.length < 3 || fit.line === null) return [];
  const printing = printingOfLine(line, unitFor);
  const { line: fitted, outlook } = fit;
  const isShown = outlook.kind !== 'two readings' && outlook.kind !== 'no trend';
  const ahead = outlook.kind === 'reached' ? Math.min(outlook.x, last.x + (last.x - first.x)) : last.x;
  const limits = (['min', 'max'] as const).flatMap((side) => {
    const limit = line.limits[side];
    const y = limit && toNumber(limit.amount);
    return y === undefined ? [] : [{ y, name: limitName(line, side, printing).replace(/ [^ ]+$/, '') }];
  });
  const drawn = drawTrend(
    {
      points: points.map(({ x, y, session }) => ({ x, y, isPast: past.removed.has(session) })),
      line: isShown ? (x) => valueAt(fitted, x) : undefined,
      limits,
      until: Math.max(last.x, ahead),
      formatX: (x) => xText(x, axis, (last.x - first.x) / 10),
      formatY: (y) => heightText(y, printing),
    },
    style.width,
    glyphsOf(style),
  );
  const name = `${characteristic.label} ${positionText(line.row)}`.trim();
  return [style.paint.strong(name), ...drawn, ...intervalLines(line, axis, unitFor)];
}

export const glyphsOf = ({ glyphs }: TextStyle): ChartGlyphs =>
  glyphs === LINES ? CHART_LINES : CHART_PLAIN;

/** The line with what it is known to, and where the next reading is to be expected. */
function intervalLines(
  line: TrendLine,
  axis: Trend['axis'],
  unitFor: EngineState['unitFor'],
): readonly string[] {
  const { last, next } = line.fit;
  const printing = printingOfLine(line, unitFor);
  const finer = { ...printing, decimals: printing.decimals + 1 };
  const range = ({ lower, upper }: { lower: number; upper: number }): string =>
    `${heightText(lower, finer)} to ${heightText(upper, finer)}`;
  const at = line.points.at(-1)?.x ?? 0;
  return [
    ...(last === null ? [] : [`  the line at ${xText(at, axis)}: ${range(last)} (95 %)`]),
    ...(next === null ? [] : [`  a next reading at ${xText(next.x, axis)}: ${range(next.interval)} (95 %)`]),
  ];
}
