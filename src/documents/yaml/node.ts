import type { Node as ParsedNode } from 'yaml';
import type { Place } from '../../diagnostic/place.ts';

/** Where something stands in a file's text: UTF-16 offsets, the end exclusive. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** Where the parser found a node: all that it makes of a text have a range. */
export function parsedSpan({ range }: Pick<ParsedNode, 'range'>): Span {
  const [start, end] = range ?? [0, 0];
  return { start, end };
}

export interface ScalarNode {
  readonly kind: 'scalar';
  readonly span: Span;
  readonly value: string | number | boolean | null;
  /** For a plain scalar the characters as written: `0.0020` keeps the digits that a number would lose. */
  readonly source: string;
  /** Written bare, without quotes and not as a block: only then can text be a number. */
  readonly plain: boolean;
  /** A whole number written like `05`: bench shorthand, allowed only in a block of readings that has `in:`. */
  readonly leadingZero?: true;
  /** The loader has reported this scalar; what else is wrong with its value is not worth saying. */
  readonly refused?: true;
}

export interface Entry {
  /** The key's text, in normal form C: `at: { 3: … }` and `at: { "3": … }` are the same key. */
  readonly key: string;
  readonly keySpan: Span;
  readonly node: Node;
}

export interface MapNode {
  readonly kind: 'map';
  readonly span: Span;
  /** In the order of the file. */
  readonly entries: ReadonlyMap<string, Entry>;
}

export interface ListNode {
  readonly kind: 'list';
  readonly span: Span;
  readonly items: readonly Node[];
}

/** A YAML document's value with its positions; the only form in which the rest of the program sees YAML. */
export type Node = ScalarNode | MapNode | ListNode;

/** A file's text, and the way from offsets to lines and columns. */
export interface SourceText {
  /** Relative to the working directory, with `/`. */
  readonly path: string;
  /** As it stands in the file, a byte order mark and the line ends included. */
  readonly text: string;
  /** A byte order mark takes no column; offsets outside the text give its nearest end. */
  readonly place: (span: Span) => Place;
}
