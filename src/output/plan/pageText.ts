import { type Line, line } from '../escape/line.ts';
import { hanging } from '../terminal/hanging.ts';
import { PAGE } from '../terminal/onPage.ts';
import { type Column, cell, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import { cellText, type Page, type Section, type Table } from './page.ts';

export function pageLines(page: Page, style: TextStyle): readonly Line[] {
  const width = Math.min(style.width, PAGE);
  const { paint } = style;
  return [
    ...wrap(page.title, width).map(paint.strong),
    ...page.about.flatMap((each) => wrap(each, width)).map(paint.faint),
    '',
    ...page.answer.flatMap((each) => wrap(each, width)),
    ...page.sections.flatMap((each) => sectionLines(each, width, style)),
    ...(page.cautions.length === 0 ? [] : ['']),
    ...page.cautions.flatMap((each) => wrap(each, width)).map(paint.faint),
  ];
}

const sectionLines = (
  { title, table, lines = [], boxes = [] }: Section,
  width: number,
  { paint }: TextStyle,
): readonly Line[] => [
  '',
  ...wrap(title, width).map(paint.strong),
  ...(table === undefined ? [] : tableLines(table, width)),
  ...lines.flatMap((each) => hanging('- ', each, width)),
  ...boxes.flatMap((each) => hanging('[ ] ', each, width)),
];

/** Beside each other where all of it fits; else the last column stands below its row. */
function tableLines(table: Table, width: number): readonly Line[] {
  const columns = table.columns.map(({ align }): Column => ({ align: align ?? 'left' }));
  const heading = table.columns.map((each) => each.heading);
  const rows = table.rows.map((row) => row.map(cellText));
  const whole = layTable(
    [heading, ...rows].map((row) => row.map(cell)),
    columns,
  );
  if (whole.every((each) => widthOf(each) <= width)) return whole;
  const lasts = rows.map((row) => row.at(-1) ?? '');
  const short = layTable(
    [heading, ...rows].map((row) => row.slice(0, -1).map(cell)),
    columns.slice(0, -1),
  );
  return short.flatMap((each, index) => {
    const last = index === 0 ? '' : (lasts[index - 1] ?? '');
    return last === '' ? [each] : [each, ...hanging('', last, width, '      ').map((text) => line`${text}`)];
  });
}
