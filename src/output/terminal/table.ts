import { widthOf } from './width.ts';

export interface Column {
  readonly align: 'left' | 'right';
}

/** Text with the width it takes on a terminal; colours do not count. */
export interface Cell {
  readonly text: string;
  readonly width: number;
}

export const cell = (text: string): Cell => ({ text, width: widthOf(text) });

/** A coloured text stands as wide as the plain one. */
export const painted = (plain: string, paint: (text: string) => string): Cell => ({
  text: plain === '' ? '' : paint(plain),
  width: widthOf(plain),
});

/** Rows as lines, columns two spaces apart and as wide as their widest cell; no space at a line's end. */
export function layTable(
  rows: readonly (readonly Cell[])[],
  columns: readonly Column[],
  indent = 2,
): readonly string[] {
  const widths = columns.map((_, index) => Math.max(0, ...rows.map((row) => row[index]?.width ?? 0)));
  return rows.map((row) => {
    const cells = columns.flatMap(({ align }, index) => {
      const width = widths[index] ?? 0;
      return width === 0 ? [] : [pad(row[index] ?? cell(''), width, align)];
    });
    return `${' '.repeat(indent)}${cells.join('  ')}`.trimEnd();
  });
}

function pad({ text, width }: Cell, to: number, align: Column['align']): string {
  const space = ' '.repeat(Math.max(0, to - width));
  return align === 'left' ? `${text}${space}` : `${space}${text}`;
}

/** The lines of the first shape that fits the width; of the last where none does. */
export function fitting<Shape>(
  width: number,
  shapes: readonly Shape[],
  lay: (shape: Shape) => readonly string[],
): readonly string[] {
  let lines: readonly string[] = [];
  for (const shape of shapes) {
    lines = lay(shape);
    if (lines.every((line) => widthOf(withoutColours(line)) <= width)) break;
  }
  return lines;
}

const withoutColours = (line: string): string => line.replace(/\u001b\[\d+m/g, '');
