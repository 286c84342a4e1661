import type { Line } from '../escape/line.ts';
import { layManyRows } from '../terminal/manyRows.ts';
import { type Column, cell } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import type { QuietView } from './view/quietView.ts';

const COLUMNS: readonly Column[] = [{ align: 'left' }, { align: 'left' }, { align: 'left' }];

/** `cylinder bore 1 to 6  4.1250 to 4.1254 in  ok`: whole tables, a line each. */
export function quietLines(views: readonly QuietView[], { width }: TextStyle): readonly Line[] {
  const lines = layManyRows(
    views.map(({ name, range, word }) => [name, range, word].map(cell)),
    COLUMNS,
    0,
  );
  if (lines.every((each) => widthOf(each) <= width)) return lines;
  return views.flatMap(({ name, range, word }) => wrap(`${name}: ${range}, ${word}`, width));
}
