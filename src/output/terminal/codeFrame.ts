import type { Place } from '../../diagnostic/place.ts';
import { visible } from '../escape/line.ts';
import { widthOf } from './width.ts';

/** What one character of the user's line looks like. */
interface Cell {
  readonly text: string;
  /** Columns on the terminal. */
  readonly width: number;
  readonly marked: boolean;
}

/** A piece of a line, and whether there is more of it on either side. */
interface Piece {
  readonly cells: readonly Cell[];
  readonly before: boolean;
  readonly after: boolean;
}

const TAB_WIDTH = 4;
/** A narrower window shows nothing that helps. */
const LEAST_ROOM = 16;

/**
 * The user's own line with its number, and carets under the place. A place over several lines is marked to the end
 * of its first line. No lines when the text has no such line.
 * @param options.width columns to fill at most; a longer line is cut around the carets
 */
export function codeFrame(
  text: string,
  place: Place,
  options: { readonly width: number },
): readonly string[] {
  const line = lineAt(text, place.line);
  if (line === undefined) return [];
  const number = ` ${place.line} `;
  const room = Math.max(LEAST_ROOM, options.width - number.length - 2);
  const { cells, before, after } = cut(pieceAround(line, place, room), room);
  const first = cells.findIndex(({ marked }) => marked);
  const indent = (before ? 1 : 0) + columnsOf(first < 0 ? cells : cells.slice(0, first));
  const carets = '^'.repeat(Math.max(1, columnsOf(cells.filter(({ marked }) => marked))));
  const shown = `${before ? '…' : ''}${cells.map((cell) => cell.text).join('')}${after ? '…' : ''}`;
  return [`${number}| ${shown}`.trimEnd(), `${' '.repeat(number.length)}| ${' '.repeat(indent)}${carets}`];
}

function lineAt(text: string, number: number): string | undefined {
  let start = text.startsWith('\ufeff') ? 1 : 0;
  for (let line = 1; line < number; line++) {
    const newline = text.indexOf('\n', start);
    if (newline < 0) return undefined;
    start = newline + 1;
  }
  const end = text.indexOf('\n', start);
  const line = text.slice(start, end < 0 ? text.length : end).replace(/\r$/, '');
  return text === '' ? undefined : line;
}

/** Far from the place a line is not even looked at: it may be a quarter of a million characters long. */
function pieceAround(line: string, place: Place, room: number): Piece {
  const from = Math.min(place.column - 1, line.length);
  const to = place.endLine > place.line ? line.length : Math.max(place.endColumn - 1, from + 1);
  const left = Math.max(0, from - 2 * room);
  const right = Math.min(line.length, from + 2 * room);
  const cells: Cell[] = [];
  let column = 0;
  for (const { segment, index } of charactersOf(line.slice(left, right))) {
    const text = segment === '\t' ? ' '.repeat(TAB_WIDTH - (column % TAB_WIDTH)) : visible(segment);
    const width = widthOf(text);
    const start = left + index;
    cells.push({ text, width, marked: start < to && start + segment.length > from });
    column += width;
  }
  return { cells, before: left > 0, after: right < line.length };
}

/** Made when the first frame is: it takes 10 ms, and most runs show none. */
let segmenter: Intl.Segmenter | undefined;

function charactersOf(text: string): Intl.Segments {
  segmenter ??= new Intl.Segmenter();
  return segmenter.segment(text);
}

const columnsOf = (cells: readonly Cell[]): number => cells.reduce((sum, { width }) => sum + width, 0);

/** The part that fits, the carets' beginning always in it and a third of the room before them. */
function cut({ cells, before, after }: Piece, room: number): Piece {
  if (columnsOf(cells) + Number(before) + Number(after) <= room) return { cells, before, after };
  const marked = cells.findIndex((cell) => cell.marked);
  const first = marked < 0 ? cells.length : marked;
  const start = !before && columnsOf(cells.slice(0, first)) < room / 2 ? 0 : backFrom(cells, first, room / 3);
  const more = before || start > 0;
  const end = forwardFrom(cells, start, room - 1 - Number(more));
  return { cells: cells.slice(start, end), before: more, after: after || end < cells.length };
}

function backFrom(cells: readonly Cell[], index: number, width: number): number {
  let start = index;
  for (let left = width; start > 0; start--) {
    left -= cells[start - 1]?.width ?? 0;
    if (left < 0) break;
  }
  return start;
}

function forwardFrom(cells: readonly Cell[], index: number, width: number): number {
  let end = index;
  for (let left = width; end < cells.length; end++) {
    left -= cells[end]?.width ?? 0;
    if (left < 0) break;
  }
  return end;
}
