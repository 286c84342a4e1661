import { capital } from '../../quantity/words.ts';
import {
  comesTo,
  labelled,
  type Page,
  type PageCell,
  type Section,
  type Table,
  withoutEmptyColumns,
} from '../plan/page.ts';
import type { Links } from './links.ts';
import { type Block, type Fact, items, type Sheet, type SheetCell } from './sheet.ts';

/** A page of text as a sheet: its words stay as they are. */
export const pageSheet = (page: Page, facts: readonly Fact[], links: Links): Sheet => ({
  title: page.title,
  about: page.about.join('; '),
  facts,
  status: undefined,
  verdict: page.answer.join(' '),
  reasons: [],
  sections: page.sections.map((each) => ({ title: headingOf(each), blocks: blocksOf(each, links) })),
  cautions: page.cautions,
});

const headingOf = ({ title, job }: Section): string =>
  job === undefined ? title : `${job.number}. ${title} (${job.urgency})`;

const blocksOf = (
  { table, lines = [], remarks = [], boxes = [] }: Section,
  links: Links,
): readonly Block[] => [
  ...(table === undefined ? [] : [tableBlock(table, links)]),
  ...items('list', comesTo(remarks)),
  ...labelled(remarks).flatMap(({ label, texts }) => [
    ...items('text', [`${capital(label)}:`]),
    ...items('list', texts),
  ]),
  ...items('list', lines),
  ...items('boxes', boxes),
];

function tableBlock(table: Table, links: Links): Block {
  const { columns, rows } = withoutEmptyColumns(table);
  return {
    kind: 'table',
    title: '',
    columns: columns.map(({ heading, align }) => ({ title: heading, align: align ?? 'left' })),
    rows: rows.map((row) => row.map((cell) => sheetCell(cell, links))),
    folded: undefined,
  };
}

const sheetCell = (cell: PageCell, links: Links): SheetCell => {
  if (typeof cell === 'string') return cell;
  const { text, engine } = cell;
  return engine === undefined ? text : [{ text, to: links.engine(engine) }];
};
