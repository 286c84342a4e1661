import { cellText, type Page, type Section, type Table } from '../plan/page.ts';
import { type Block, type Fact, items, type Reader, type Sheet } from './sheet.ts';

/** A page of `plan` as a sheet: its words stay as they are. */
export const pageSheet = (page: Page, reader: Reader, facts: readonly Fact[]): Sheet => ({
  reader,
  title: page.title,
  about: page.about.join('; '),
  facts,
  status: undefined,
  verdict: page.answer.join(' '),
  reasons: [],
  sections: page.sections.map(({ title, ...rest }) => ({ title, blocks: blocksOf(rest) })),
  cautions: page.cautions,
});

const blocksOf = ({ table, lines = [], boxes = [] }: Omit<Section, 'title'>): readonly Block[] => [
  ...(table === undefined ? [] : [tableBlock(table)]),
  ...items('list', lines),
  ...items('boxes', boxes),
];

const tableBlock = ({ columns, rows }: Table): Block => ({
  kind: 'table',
  title: '',
  columns: columns.map(({ heading, align }) => ({ title: heading, align: align ?? 'left' })),
  rows: rows.map((row) => row.map(cellText)),
  folded: undefined,
});
