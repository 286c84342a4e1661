import { type Line, line } from '../escape/line.ts';
import { hanging } from '../terminal/hanging.ts';
import { PAGE } from '../terminal/onPage.ts';
import { type Column, cell, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import { jobHead } from './jobHead.ts';
import { cellText, type Page, type Remarks, type Section, type Table, withoutEmptyColumns } from './page.ts';

export function pageLines(page: Page, style: TextStyle): readonly Line[] {
  const width = Math.min(style.width, PAGE);
  const { paint } = style;
  return [
    ...wrap(page.title, width).map(paint.strong),
    ...page.about.flatMap((each) => wrap(each, width)).map(paint.faint),
    '',
    ...page.answer.flatMap((each) => wrap(each, width)),
    ...page.sections.flatMap((each, index) => [
      ...(isJoined(each, page.sections[index - 1]) ? [] : ['']),
      ...sectionLines(each, width, style),
    ]),
    ...(page.cautions.length === 0 ? [] : ['']),
    ...page.cautions.flatMap((each) => wrap(each, width)).map(paint.faint),
  ];
}

/** Jobs that come with others are a line each, one below the other. */
const isJoined = ({ job }: Section, before: Section | undefined): boolean =>
  job?.isSupporting === true && before?.job?.isSupporting === true;

const sectionLines = (
  { title, job, table, lines = [], remarks = [], boxes = [] }: Section,
  width: number,
  style: TextStyle,
): readonly Line[] => [
  ...(job === undefined ? wrap(title, width).map(style.paint.strong) : jobHead(title, job, width, style)),
  ...(table === undefined ? [] : tableLines(table, width)),
  ...remarks.flatMap((each) => remarkLines(each, width, style)),
  ...lines.flatMap((each) => hanging('- ', each, width)),
  ...boxes.flatMap((each) => hanging('[ ] ', each, width)),
];

const INDENT = '    ';

/** The label before the first, the others under it. */
function remarkLines(
  { label, isWorking, texts }: Remarks,
  width: number,
  { paint }: TextStyle,
): readonly Line[] {
  if (isWorking) return texts.flatMap((each) => hanging('', each, width, `${INDENT}  `)).map(paint.faint);
  const mark = label === '' ? '' : label.padEnd(LABEL);
  return texts.flatMap((text, index) =>
    hanging(index === 0 ? mark : ' '.repeat(mark.length), text, width, INDENT),
  );
}

/** As wide as a label and the gap behind it. */
const LABEL = 6;

/** Beside each other where all of it fits; else the last column stands below its row. */
function tableLines(whole: Table, width: number): readonly Line[] {
  const table = withoutEmptyColumns(whole);
  const columns = table.columns.map(({ align }): Column => ({ align: align ?? 'left' }));
  const heading = table.columns.map((each) => each.heading);
  const rows = table.rows.map((row) => row.map(cellText));
  const laid = layTable(
    [heading, ...rows].map((row) => row.map(cell)),
    columns,
  );
  if (laid.every((each) => widthOf(each) <= width)) return laid;
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
