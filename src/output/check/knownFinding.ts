import { compareText } from '../../diagnostic/place.ts';

/** What a finding is known again by: neither its line nor its value, so that it is the same after an edit elsewhere. */
export interface KnownFinding {
  readonly code: string;
  /** Of no engine: the file that it is about. */
  readonly engine: string;
  /** A session by its path, or `state` for where the engine stands; null for what is of no engine. */
  readonly session: string | null;
  readonly measure: string | null;
  readonly position: string | null;
}

export const keyOfKnown = ({ code, engine, session, measure, position }: KnownFinding): string =>
  JSON.stringify([engine, session, measure, position, code]);

export const sortKnown = (list: readonly KnownFinding[]): readonly KnownFinding[] =>
  list.toSorted((a, b) => compareText(keyOfKnown(a), keyOfKnown(b)));

/** `reading/out main_journal_diameter 2, engines/pump, where it stands`. */
export function knownText({ code, engine, session, measure, position }: KnownFinding): string {
  const what = [code, measure, position].filter((each) => each !== null).join(' ');
  const where = session === 'state' ? 'the present state' : session;
  return [what, engine, where].filter((each) => each !== null).join(', ');
}
