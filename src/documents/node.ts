import type { Place } from '../diagnostic/place.ts';

/** Where something stands in a file's text: UTF-16 offsets, the end exclusive. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface ScalarNode {
  readonly kind: 'scalar';
  readonly span: Span;
  readonly value: string | number | boolean | null;
  /** The characters as written; for a plain `0.0020` the digits a number would lose. */
  readonly source: string;
  /** Written bare, without quotes and not as a block: only then can text be a number. */
  readonly plain: boolean;
}

export interface Entry {
  readonly key: string;
  readonly keySpan: Span;
  readonly node: Node;
}

export interface MapNode {
  readonly kind: 'map';
  readonly span: Span;
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
  readonly text: string;
  readonly place: (span: Span) => Place;
}
