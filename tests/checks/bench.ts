import { type Registry, registryWith } from '../../src/characteristics/registry.ts';
import type { Finding } from '../../src/checks/finding.ts';
import { type ReportedSession, reportEngine } from '../../src/checks/judge/report.ts';
import type { JudgingOptions, Row } from '../../src/checks/judge/row.ts';
import { assembleEngine, type Engine } from '../../src/documents/assemble.ts';
import { type OpenedDocument, openDocument } from '../../src/documents/opened.ts';

/** Documents by file name, as a shop of one engine would hold them. */
export type Documents = Readonly<Record<string, string>>;

export const opened = (path: string, text: string): OpenedDocument =>
  openDocument(path, path, new TextEncoder().encode(text));

/** The engine that these documents make; a document with a problem is a mistake in the test. */
export function engineOf(own: readonly OpenedDocument[]): { engine: Engine; registry: Registry } {
  let registry = registryWith([]);
  const { engine, diagnostics } = assembleEngine(
    { folder: '.', own, shared: [], extended: new Map(), studies: new Map() },
    (added, layout) => {
      registry = registryWith(added, layout);
      return registry;
    },
  );
  if (engine === undefined || diagnostics.length > 0) {
    throw new Error(
      diagnostics.map(({ message, place }) => `${place.path}:${place.line} ${message}`).join('\n'),
    );
  }
  return { engine, registry };
}

/** Every session of the documents, judged in the order of their dates. */
export function judged(documents: Documents, options: JudgingOptions = {}): readonly ReportedSession[] {
  const own = Object.entries(documents).map(([path, text]) => opened(path, text));
  const { engine, registry } = engineOf(own);
  return reportEngine(engine, registry, options).sessions;
}

/** The last session of the documents. */
export function lastJudged(documents: Documents, options: JudgingOptions = {}): ReportedSession {
  const last = judged(documents, options).at(-1);
  if (last === undefined) throw new Error('no session');
  return last;
}

export const withCode = (session: ReportedSession, code: string): readonly Finding[] =>
  session.findings.filter((each) => each.code === code);

export const messages = (session: ReportedSession, code: string): readonly string[] =>
  withCode(session, code).map((each) => each.message);

export function rowAt(session: ReportedSession, measure: string, position: string): Row {
  const row = session.rows.find(
    (each) => each.characteristic.id === measure && each.position.name === position,
  );
  if (row === undefined) throw new Error(`no row of ${measure} at ${position}`);
  return row;
}
