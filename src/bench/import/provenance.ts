import type { Csv } from '../../documents/csv.ts';
import type { ImportedRows } from '../../documents/session/imported.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { valueText } from '../../documents/writing/keyText.ts';

/** A digest of text, as `sha256` gives it in hexadecimal. */
export type Digest = (text: string) => string;

/** What came into a session from a file: so many rows below the headings, and a digest of what they held. */
export const provenanceOf = (file: string, csv: Csv, count: number, digest: Digest): ImportedRows => ({
  file,
  rows: count,
  sha256: digest(rowsText(csv, count)),
});

const rowsText = (csv: Csv, count: number): string =>
  JSON.stringify(csv.rows.slice(0, 1 + count).map((row) => row.map((cell) => cell.text)));

export type Known =
  /** So many rows, from the first, stand in a session already. */
  | { readonly kind: 'rows'; readonly count: number; readonly session: string | undefined }
  /** A file of this name was imported, and its rows are others now. */
  | { readonly kind: 'changed'; readonly count: number; readonly session: string };

/** What of a file is in an engine's sessions: found by what its rows hold, so that a file may be renamed. */
export function knownRows(
  file: string,
  csv: Csv,
  sessions: readonly SessionDocument[],
  digest: Digest,
): Known {
  const all = sessions.flatMap((session) =>
    session.imported.map((rows) => ({ rows, session: session.name })),
  );
  const same = all
    .filter(({ rows }) => rows.rows < csv.rows.length && digest(rowsText(csv, rows.rows)) === rows.sha256)
    .sort((a, b) => b.rows.rows - a.rows.rows)[0];
  if (same !== undefined) return { kind: 'rows', count: same.rows.rows, session: same.session };
  const named = all.find(({ rows }) => rows.file === file);
  if (named !== undefined) return { kind: 'changed', count: named.rows.rows, session: named.session };
  return { kind: 'rows', count: 0, session: undefined };
}

export const provenanceText = ({ file, rows, sha256 }: ImportedRows): string =>
  `{ file: ${valueText(file)}, rows: ${rows}, sha256: "${sha256}" }`;
