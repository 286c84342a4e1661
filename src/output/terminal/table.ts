import Table from 'cli-table3';
import { ownPiece } from '../escape/language.ts';
import { type Line, sourceOfLine, trimmedLine } from '../escape/line.ts';
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
  const used = columns
    .map(({ align }, index) => ({ align, index }))
    .filter(({ index }) => rows.some((row) => (row[index]?.width ?? 0) > 0));
  if (used.length === 0) return rows.map(() => '');
  const table = new Table({
    chars: { ...NO_BORDERS, left: ' '.repeat(indent), middle: '  ' },
    style: { 'padding-left': 0, 'padding-right': 0, head: [], border: [], compact: true },
    colAligns: used.map(({ align }) => align),
  });
  table.push(...rows.map((row) => used.map(({ index }) => sourceOfLine(row[index]?.text ?? ''))));
  const lines = table.toString().split('\n');
  return lines.map((each) => trimmedLine(ownPiece(each)));
}

const NO_BORDERS = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
} as const;

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
