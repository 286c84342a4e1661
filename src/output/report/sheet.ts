import type { Picture } from '../page/pictures/pictures.ts';

/** Who reads a sheet: what is on it, and in which words. */
export const READERS = ['customer', 'shop', 'machine-shop'] as const;

export type Reader = (typeof READERS)[number];

/** A sheet about one engine as plain data: HTML and Markdown are written from it. */
export interface Sheet {
  readonly title: string;
  /** What kind of sheet it is. */
  readonly about: string;
  readonly facts: readonly Fact[];
  /** Undefined where nothing is asked of it: a page for a machine shop. */
  readonly status: Status | undefined;
  readonly verdict: string;
  /** What is out or open, a sentence each. */
  readonly reasons: readonly string[];
  readonly sections: readonly SheetSection[];
  readonly cautions: readonly string[];
  /** Handed over alone: it is to fit one side of paper. */
  readonly isOneSide?: true;
}

export interface Fact {
  readonly name: string;
  readonly value: SheetCell;
}

/** A text, or the pieces of one of which some lead to another file. */
export type SheetCell = string | readonly Piece[];

export interface Piece {
  readonly text: string;
  /** The address from where the sheet lies. */
  readonly to?: string | undefined;
}

export interface Status {
  readonly isOpen: boolean;
  /** `NOT RELEASED`, or who released it and when: on every page. */
  readonly text: string;
}

export interface SheetSection {
  readonly title: string;
  readonly blocks: readonly Block[];
}

export type Block =
  | MeasureBlock
  | TableBlock
  | PicturesBlock
  | FieldsBlock
  | { readonly kind: 'text' | 'list' | 'boxes' | 'blanks'; readonly items: readonly string[] };

/** One characteristic, a row a position. */
export interface MeasureBlock {
  readonly kind: 'measure';
  readonly heading: string;
  readonly limits: string;
  /** What all of it comes to, where it has nothing to say: it is folded to that line. */
  readonly folded: string | undefined;
  readonly rows: readonly MeasureRow[];
  /** Of bores a map each, of journals a profile each. */
  readonly pictures: readonly Picture[];
}

export interface MeasureRow {
  readonly measure: string;
  readonly position: string;
  readonly where: string;
  readonly reading: string;
  readonly picture: Picture | undefined;
  readonly verdict: string;
  readonly tone: Tone;
  readonly before: string;
  readonly notes: string;
  /** Other ways to the same value. */
  readonly others: readonly string[];
}

/** A word says it first: the colour and the mark follow. */
export type Tone = 'out' | 'notice' | 'quiet';

export interface TableBlock {
  readonly kind: 'table';
  readonly title: string;
  /** Below its title, a line each. */
  readonly notes?: readonly string[];
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly SheetCell[])[];
  readonly folded: string | undefined;
}

/** A box for a pencil at each name. */
export interface FieldsBlock {
  readonly kind: 'fields';
  readonly title: string;
  readonly notes: readonly string[];
  readonly names: readonly string[];
}

export interface Column {
  readonly title: string;
  readonly align: 'left' | 'right';
  /** To be written in by hand. */
  readonly isRoom?: true;
}

export interface PicturesBlock {
  readonly kind: 'pictures';
  readonly pictures: readonly Picture[];
}

export const piecesText = (cell: SheetCell): string =>
  typeof cell === 'string' ? cell : cell.map(({ text }) => text).join('');

export const table = (
  title: string,
  columns: readonly (string | Column)[],
  rows: readonly (readonly SheetCell[])[],
  folded?: string,
): readonly TableBlock[] =>
  rows.length === 0
    ? []
    : [
        {
          kind: 'table',
          title,
          columns: columns.map((each) => (typeof each === 'string' ? { title: each, align: 'left' } : each)),
          rows,
          folded,
        },
      ];

export const items = (
  kind: 'text' | 'list' | 'boxes' | 'blanks',
  texts: readonly string[],
): readonly Block[] => (texts.length === 0 ? [] : [{ kind, items: texts }]);

/** A section that holds nothing is left out. */
export const section = (title: string, ...blocks: readonly (readonly Block[])[]): readonly SheetSection[] =>
  blocks.flat().length === 0 ? [] : [{ title, blocks: blocks.flat() }];

/** What stands at the head of a page; the rest is reported below. */
export const MOST_REASONS = 7;

/** All that is open, where it is more than the head of a page has room for. */
export const everyReason = (reasons: readonly string[]): readonly SheetSection[] =>
  reasons.length <= MOST_REASONS ? [] : section('All that is open', items('list', reasons));
