import { VERSION } from '../../version.ts';
import { cellText, type Page, type Table } from '../plan/page.ts';

/** Pages about more than one engine, for scripts; their shape is schemas/pages-output.json. */
export const pagesJson = (name: string, pages: readonly Page[], exit: 0 | 2) => ({
  format: 'tenths.pages',
  version: 1,
  tool: { name: 'tenths', version: VERSION },
  exit,
  about: name,
  pages: pages.map(({ title, about, answer, sections, cautions }) => ({
    title,
    about,
    answer,
    sections: sections.map(({ title: heading, table, lines = [] }) => ({
      title: heading,
      table: table === undefined ? null : printedTable(table),
      lines,
    })),
    cautions,
  })),
});

const printedTable = ({ columns, rows }: Table) => ({
  heading: columns.map(({ heading }) => heading),
  rows: rows.map((row) => row.map(cellText)),
});
