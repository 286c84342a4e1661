import { unitOf } from '../../checks/judge/session.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Page, PageCell, PageValue, Table, Values } from './page.ts';

/** A page that is handed over, for scripts; its shape is schemas/plan-page-output.json. */
export const pageJson = (name: string, page: Page, engine: Engine, at: SessionDocument, exit: number) => ({
  format: 'tenths.plan-page',
  version: 2,
  exit,
  page: name,
  engine: engine.document.name,
  path: engine.folder,
  session: at.name,
  unit: unitOf('length', engine).name,
  title: page.title,
  answer: page.answer,
  sections: page.sections.map(({ title, table, values = [], lines = [], boxes = [] }) => ({
    title,
    values: table === undefined ? values : valuesOf(table),
    lines,
    boxes,
  })),
  cautions: page.cautions,
});

const valuesOf = ({ columns, rows }: Table): readonly Values[] =>
  rows.map((row) =>
    Object.fromEntries(
      columns.flatMap(({ key }, index) => {
        const cell = row[index];
        return key === undefined || cell === undefined ? [] : [[key, valueIn(cell)]];
      }),
    ),
  );

/** An empty place of a table holds nothing. */
const valueIn = (cell: PageCell): PageValue => (typeof cell === 'string' ? cell || null : cell.value);
