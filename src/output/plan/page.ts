import { tableName } from '../../layout/naming.ts';
import type { Position } from '../../layout/position.ts';
import type { Urgency } from '../../plan/work/urgency.ts';

/** A page that is handed over: what it comes to first, then its parts, then the cautions. */
export interface Page {
  readonly title: string;
  /** Whose engine, which session. */
  readonly about: readonly string[];
  readonly answer: readonly string[];
  readonly sections: readonly Section[];
  readonly cautions: readonly string[];
}

export interface Section {
  readonly title: string;
  /** Of a job of a plan: its place in the order of work, and how pressing it is. */
  readonly job?: { readonly number: number; readonly urgency: Urgency; readonly isSupporting: boolean };
  readonly table?: Table;
  /** What the lines say in figures, for scripts; of a table its rows are that already. */
  readonly values?: readonly Values[];
  readonly lines?: readonly string[];
  /** What it comes to, how that was worked out, then why, and what must follow. */
  readonly remarks?: readonly Remarks[];
  /** To be ticked by hand. */
  readonly boxes?: readonly string[];
}

export interface Remarks {
  /** What they are; empty for what the section comes to. */
  readonly label: string;
  /** Workings stand back behind what they lead to. */
  readonly isWorking?: true;
  readonly texts: readonly string[];
}

export interface Table {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly PageCell[])[];
}

export interface TableColumn {
  readonly heading: string;
  /** Under which scripts find it; undefined of a blank that is filled in by hand. */
  readonly key: string | undefined;
  /** Left unless it holds figures. */
  readonly align?: 'right';
}

/** As it is printed; with its value where that is no text. */
export type PageCell = string | ValueCell;

export interface ValueCell {
  readonly text: string;
  readonly value: PageValue;
  /** The folder of the engine that it names. */
  readonly engine?: string;
}

/** Lengths are in the engine's unit; weights, by keys that end in `_g`, in grams. */
export type PageValue = string | number | null | Ends | Halves;

export interface Ends {
  readonly least: number;
  readonly greatest: number;
}

export interface Halves {
  readonly upper: string | number | null;
  readonly lower: string | number | null;
}

export type Values = Readonly<Record<string, PageValue>>;

/** As documents write it, without the label that stands beside it in print. */
export const nameCell = (position: Position): PageCell => ({
  text: tableName(position),
  value: position.name,
});

/** What a section comes to, with how it was worked out. */
export const comesTo = (remarks: readonly Remarks[]): readonly string[] =>
  remarks.filter(({ label }) => label === '').flatMap(({ texts }) => texts);

export const labelled = (remarks: readonly Remarks[]): readonly Remarks[] =>
  remarks.filter(({ label }) => label !== '');

export const cellText = (each: PageCell): string => (typeof each === 'string' ? each : each.text);

/** Of a section; none where it has no rows. */
export const tableOf = (columns: readonly TableColumn[], rows: readonly (readonly PageCell[])[]) =>
  rows.length === 0 ? {} : { table: { columns, rows } };

/** To be printed: without the columns that nothing stands in, but for those that are filled in by hand. */
export function withoutEmptyColumns({ columns, rows }: Table): Table {
  const isShown = (_: unknown, index: number): boolean =>
    columns[index]?.key === undefined || rows.some((row) => cellText(row[index] ?? '') !== '');
  return { columns: columns.filter(isShown), rows: rows.map((row) => row.filter(isShown)) };
}
