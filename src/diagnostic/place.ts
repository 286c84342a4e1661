/** A stretch of a file. Lines and columns count from 1; columns are UTF-16 units; the end is exclusive. */
export interface Place {
  /** Relative to the working directory, with `/`. */
  readonly path: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export const startOfFile = (path: string): Place => ({ path, line: 1, column: 1, endLine: 1, endColumn: 1 });

/** Reading order: by path, then line, then column. */
export const comparePlaces = (a: Place, b: Place): number =>
  compareText(a.path, b.path) || a.line - b.line || a.column - b.column;

export const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
