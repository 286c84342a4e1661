import type { Layout } from '../../torque/order/layouts.ts';
import { closestSpacing, IN_LINE_SHARE } from '../../torque/order/spacing.ts';
import { widthOf } from '../terminal/width.ts';
import { type DrawnFastener, widest } from './drawnFastener.ts';

/** Fasteners by row, then by column; a place may be empty. */
type Grid = readonly (readonly (DrawnFastener | undefined)[])[];

/** How wide one place is drawn, and what stands between two of them and round them all. */
interface Frame {
  readonly cell: number;
  readonly between: string;
  readonly corner: string;
}

/** Blanks on both sides of the longest text where there is room for them. */
const COMFORT = 4;

/** A row, a head, or caps in a row; undefined when it cannot be drawn in the width. */
export function drawGrid(
  fasteners: readonly DrawnFastener[],
  width: number,
  kind: Layout['kind'],
  withNames: boolean,
): readonly string[] | undefined {
  const grid = asGrid(fasteners);
  const columns = grid?.[0]?.length;
  if (grid === undefined || columns === undefined) return undefined;
  const frame = frameFor(columns, longest(fasteners, withNames), width, kind);
  if (frame === undefined) return undefined;
  const edge = frameLine(frame, Array(columns).fill('─'.repeat(frame.cell)), '+');
  const behind = betweenRows(frame, columns, grid.length, kind);
  const rows = grid.flatMap((row, index) => [
    ...(index === 0 ? [] : [behind(index)]),
    ...rowLines(row, frame, withNames),
  ]);
  return [edge, ...rows, edge];
}

const longest = (fasteners: readonly DrawnFastener[], withNames: boolean): number =>
  widest(fasteners.flatMap(({ number, name }) => (withNames ? [number, name] : [number])));

/** Caps are framed one by one, with a blank between them; anything else has one frame. */
function frameFor(columns: number, text: number, width: number, kind: Layout['kind']): Frame | undefined {
  const caps = kind === 'caps';
  const room = caps ? Math.floor((width + 1) / columns) - 3 : Math.floor((width - 2) / columns);
  const cell = Math.min(room, text + COMFORT);
  if (cell < text + (caps ? 0 : 1)) return undefined;
  return { cell, between: caps ? '| |' : '', corner: caps ? '+ +' : '' };
}

function rowLines(row: Grid[number], frame: Frame, withNames: boolean): readonly string[] {
  const line = (text: (fastener: DrawnFastener) => string): string =>
    frameLine(
      frame,
      row.map((each) => centre(each === undefined ? '' : text(each), frame.cell)),
      '|',
    );
  return withNames
    ? [line(({ number }) => number), line(({ name }) => name)]
    : [line(({ number }) => number)];
}

/** An empty line; under the middle row of caps the line of the crankshaft, which lies behind them. */
function betweenRows(
  frame: Frame,
  columns: number,
  rows: number,
  kind: Layout['kind'],
): (index: number) => string {
  const across = (fill: string): readonly string[] => Array(columns).fill(centre('', frame.cell, fill));
  return (index) => frameLine(frame, across(kind === 'caps' && 2 * index === rows ? '·' : ' '), '|');
}

const frameLine = ({ between, corner }: Frame, cells: readonly string[], edge: '+' | '|'): string =>
  `${edge}${cells.join(edge === '+' ? corner : between)}${edge}`;

/** Text in the middle of a place; an odd blank goes to the right. */
function centre(text: string, width: number, fill = ' '): string {
  const blanks = Math.max(0, width - widthOf(text));
  const before = Math.floor(blanks / 2);
  return fill.repeat(before) + text + fill.repeat(blanks - before);
}

/** Rows and columns in their order; undefined for no fasteners, or two of them at one place. */
function asGrid(fasteners: readonly DrawnFastener[]): Grid | undefined {
  const tolerance = IN_LINE_SHARE * closestSpacing(fasteners);
  const [xs, ys] = [
    lines(
      fasteners.map(({ x }) => x),
      tolerance,
    ),
    lines(
      fasteners.map(({ y }) => y),
      tolerance,
    ),
  ];
  const grid: (DrawnFastener | undefined)[][] = ys.map(() => xs.map(() => undefined));
  for (const fastener of fasteners) {
    const row = grid[lineOf(fastener.y, ys)] ?? [];
    const column = lineOf(fastener.x, xs);
    if (row[column] !== undefined) return undefined;
    row[column] = fastener;
  }
  return fasteners.length === 0 ? undefined : grid;
}

/** Where each line of fasteners begins, from the least. */
function lines(places: readonly number[], tolerance: number): readonly number[] {
  const starts: number[] = [];
  for (const place of [...places].sort((a, b) => a - b)) {
    const last = starts.at(-1);
    if (last === undefined || place - last > tolerance) starts.push(place);
  }
  return starts;
}

const lineOf = (place: number, starts: readonly number[]): number =>
  starts.findLastIndex((start) => start <= place);
