import type { Engine } from '../../documents/assemble.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Page } from './page.ts';

/** A page that is handed over, for scripts; its shape is schemas/plan-page-output.json. */
export const pageJson = (name: string, page: Page, engine: Engine, at: SessionDocument, exit: number) => ({
  format: 'tenths.plan-page',
  version: 1,
  exit,
  page: name,
  engine: engine.document.name,
  path: engine.folder,
  session: at.name,
  title: page.title,
  answer: page.answer,
  sections: page.sections.map(({ title, table, lines = [], boxes = [] }) => ({
    title,
    table: table === undefined ? null : { heading: table.heading, rows: table.rows },
    lines,
    boxes,
  })),
  cautions: page.cautions,
});
