import { childOf, itemsOf, textAt } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** Rows of a spreadsheet that a session's readings came from. */
export interface ImportedRows {
  readonly file: string;
  /** How many below the headings, from the first. */
  readonly rows: number;
  /** Of what the headings and those rows hold. */
  readonly sha256: string;
}

export const readImported = (session: Node): readonly ImportedRows[] =>
  itemsOf(childOf(session, 'imported')).map((item) => ({
    file: textAt(item, 'file') ?? '',
    rows: Number(textAt(item, 'rows') ?? 0),
    sha256: textAt(item, 'sha256') ?? '',
  }));
