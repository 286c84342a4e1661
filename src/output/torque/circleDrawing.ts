import { apart, middleOf, type PlanePoint } from '../../torque/order/spacing.ts';
import { widthOf } from '../terminal/width.ts';
import { type DrawnFastener, widest } from './drawnFastener.ts';

/** Text in the drawing, from a column of a line. */
interface Mark {
  readonly line: number;
  readonly column: number;
  readonly text: string;
}

/** Half the lines of the drawing: from the smallest that looks round to what leaves room on a page. */
const RADII = [4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14];
/** A character is about twice as high as it is wide. */
const COLUMNS_PER_LINE = 2;
const RIM_DOTS = 40;

/** A bolt circle, at the smallest size where no two labels touch; undefined when none fits the width. */
export function drawCircle(
  fasteners: readonly DrawnFastener[],
  width: number,
  withNames: boolean,
): readonly string[] | undefined {
  if (fasteners.length === 0) return undefined;
  const texts = fasteners.map(({ number, name }) => (withNames ? `${number} ${name}` : number));
  const places = onUnitCircle(fasteners);
  for (const radius of RADII) {
    const drawn = marksAt(texts, places, radius);
    if (drawn?.every((mark) => endOf(mark) <= width)) return render(drawn);
  }
  return undefined;
}

/** From the joint's own lengths to a circle of 1 about its middle. */
function onUnitCircle(points: readonly PlanePoint[]): readonly PlanePoint[] {
  const middle = middleOf(points);
  const size = Math.max(...points.map((each) => apart(each, middle))) || 1;
  return points.map(({ x, y }) => ({ x: (x - middle.x) / size, y: (y - middle.y) / size }));
}

/** Labels with the circle behind them; undefined when two labels touch. */
function marksAt(
  texts: readonly string[],
  places: readonly PlanePoint[],
  radius: number,
): readonly Mark[] | undefined {
  const margin = Math.floor(widest(texts) / 2);
  const labels = texts.map((text, index) => markAt(places[index] ?? { x: 0, y: 0 }, text, radius, margin));
  const crowded = labels.some((a, index) => labels.slice(index + 1).some((b) => touch(a, b)));
  return crowded ? undefined : [...labels, ...rim(labels, radius, margin)];
}

function markAt({ x, y }: PlanePoint, text: string, radius: number, margin: number): Mark {
  const across = COLUMNS_PER_LINE * radius;
  return {
    line: radius + evenly(radius * y),
    column: margin + across + evenly(across * x) - Math.floor(widthOf(text) / 2),
    text,
  };
}

/** Halves go outwards on both sides, so that the drawing stays as even as the joint. */
const evenly = (value: number): number => Math.sign(value) * Math.round(Math.abs(value));

const endOf = ({ column, text }: Mark): number => column + widthOf(text);

/** On one line with less than a blank between them. */
const touch = (a: Mark, b: Mark): boolean =>
  a.line === b.line && a.column <= endOf(b) && b.column <= endOf(a);

/** The circle itself in dots, wherever no label stands. */
function rim(labels: readonly Mark[], radius: number, margin: number): readonly Mark[] {
  const dots = new Map<string, Mark>();
  for (let step = 0; step < RIM_DOTS; step++) {
    const angle = (2 * Math.PI * step) / RIM_DOTS;
    const dot = markAt({ x: Math.sin(angle), y: -Math.cos(angle) }, '·', radius, margin);
    if (!labels.some((label) => touch(dot, label))) dots.set(`${dot.line} ${dot.column}`, dot);
  }
  return [...dots.values()];
}

function render(marks: readonly Mark[]): readonly string[] {
  const last = Math.max(...marks.map(({ line }) => line));
  return Array.from({ length: last + 1 }, (_, line) => {
    const inLine = marks.filter((mark) => mark.line === line).sort((a, b) => a.column - b.column);
    return inLine.reduce((text, mark) => text + ' '.repeat(mark.column - widthOf(text)) + mark.text, '');
  });
}
