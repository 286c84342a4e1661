import { joined } from '../escape/language.ts';
import { type Line, line, trimmedLine } from '../escape/line.ts';
import { widthOf } from './width.ts';

export interface Column {
  readonly align: 'left' | 'right';
}

/** Text with the width it takes on a terminal. */
export interface Cell {
  readonly text: Line;
  readonly width: number;
}

export const cell = (text: Line): Cell => ({ text, width: widthOf(text) });

/** Rows as lines, columns two spaces apart and as wide as their widest cell; no space at a line's end. */
export function layTable(
  rows: readonly (readonly Cell[])[],
  columns: readonly Column[],
  indent = 2,
): readonly Line[] {
  const widths = columns.map((_, index) => Math.max(0, ...rows.map((row) => row[index]?.width ?? 0)));
  return rows.map((row) => {
    const cells = columns.flatMap(({ align }, index) => {
      const width = widths[index] ?? 0;
      return width === 0 ? [] : [pad(row[index] ?? cell(''), width, align)];
    });
    return trimmedLine(line`${' '.repeat(indent)}${joined(cells, line`  `)}`);
  });
}

function pad({ text, width }: Cell, to: number, align: Column['align']) {
  const space = ' '.repeat(Math.max(0, to - width));
  return align === 'left' ? line`${text}${space}` : line`${space}${text}`;
}

/** The lines of the first shape that fits the width; of the last where none does. */
export function fitting<Shape>(
  width: number,
  shapes: readonly Shape[],
  lay: (shape: Shape) => readonly Line[],
): readonly Line[] {
  let lines: readonly Line[] = [];
  for (const shape of shapes) {
    lines = lay(shape);
    if (lines.every((each) => widthOf(each) <= width)) break;
  }
  return lines;
}
