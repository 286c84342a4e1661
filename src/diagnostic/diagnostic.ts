import { comparePlaces, compareText, type Place } from './place.ts';

export type DocumentCode =
  | 'too-big'
  | 'depth'
  | 'alias'
  | 'tag'
  | 'directive'
  | 'key'
  | 'duplicate-key'
  | 'scalar'
  | 'control-character'
  | 'encoding'
  | 'yaml'
  | 'merge'
  | 'kind'
  | 'unknown-key'
  | 'missing-key'
  | 'type'
  | 'value'
  | 'no-unit'
  | 'wrong-quantity'
  | 'number-as-text'
  | 'decimal-comma'
  | 'too-fine'
  | 'unknown-measure'
  | 'unknown-position'
  | 'two-engines'
  | 'limits-conflict'
  | 'extends'
  | 'formula'
  | 'unreadable'
  | 'unread';

/** A problem with a document, never with the engine. Every one of them is an error. */
export interface Diagnostic {
  readonly code: `document/${DocumentCode}`;
  /** What is wrong, with the numbers or words in it. */
  readonly message: string;
  /** What to do about it. */
  readonly help?: string;
  readonly place: Place;
}

export function diagnostic(code: DocumentCode, place: Place, message: string, help?: string): Diagnostic {
  const known = { code: `document/${code}`, message, place } as const;
  return help === undefined ? known : { ...known, help };
}

export const sortDiagnostics = (list: readonly Diagnostic[]): Diagnostic[] =>
  [...list].sort((a, b) => comparePlaces(a.place, b.place) || compareText(a.code, b.code));
