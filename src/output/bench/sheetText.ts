import type { Line } from '../escape/line.ts';
import { PAGE } from '../terminal/onPage.ts';
import { type Column, cell, layTable } from '../terminal/table.ts';
import { wrap } from '../terminal/wrap.ts';
import type { BlankBlock, BlankSheet } from './blankSheet.ts';

const BLANK = '_________';
const LEFT: Column = { align: 'left' };

/** With the limits beside the blanks. */
export const sheetLines = (
  { engine, stage, cautions, blocks }: BlankSheet,
  date: string,
): readonly Line[] => [
  `${engine}   ${stage} ${date}`,
  `by ${BLANK}${BLANK}   hours ${BLANK}   temperature ${BLANK}`,
  ...cautions.flatMap(cautionLines),
  ...blocks.flatMap((block) => ['', ...blockLines(block)]),
];

const cautionLines = (caution: string): readonly Line[] => wrap(`Caution: ${caution}`, PAGE);

function blockLines(block: BlankBlock): readonly Line[] {
  const { heading, limits, instrument, how, caution, places, rows } = block;
  const isNamed = places.some((name) => name !== '');
  const header = ['', ...places].map(cell);
  const body = rows.map((row) => [row.position, ...places.map(() => BLANK), row.limits].map(cell));
  return [
    `${heading}   ${limits}   with ${instrument ?? BLANK}`.trimEnd(),
    ...(how === undefined ? [] : wrap(how, PAGE)),
    ...(caution === undefined ? [] : cautionLines(caution)),
    ...layTable(
      isNamed ? [header, ...body] : body,
      Array.from({ length: 2 + places.length }, () => LEFT),
    ),
  ];
}
