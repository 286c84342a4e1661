import { CsvError, type CsvErrorCode, parse } from 'csv-parse/sync';

/** One field, and where it begins. Lines, columns and rows count from 1; a row may be several lines. */
export interface CsvCell {
  readonly text: string;
  readonly line: number;
  readonly column: number;
  readonly row: number;
}

export interface CsvProblem {
  readonly message: string;
  readonly line: number;
  readonly column: number;
}

export interface Csv {
  /** Rows that are not empty, each with at least one cell. */
  readonly rows: readonly (readonly CsvCell[])[];
  /** Where a file breaks off, nothing behind it can be trusted: then there are no rows. */
  readonly problems: readonly CsvProblem[];
}

/** Text of a spreadsheet by RFC 4180, with another delimiter if need be; a byte order mark is left out. */
export function parseCsv(text: string, delimiter: string): Csv {
  const bytes = new TextEncoder().encode(text.replace(/^\uFEFF/, ''));
  const places = new Places(bytes);
  const rows: CsvCell[][] = [];
  try {
    parse(bytes, {
      delimiter,
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
      trim: true,
      // Of where a field begins the library says nothing, but up to which byte it has read when one ends.
      cast: (text, { index, records, bytes: end }) => {
        if (index === 0) rows.push([]);
        rows.at(-1)?.push({ text, ...places.next(index === 0, end), row: records + 1 });
      },
    });
    return { rows: rows.filter((row) => row.some((cell) => cell.text !== '')), problems: [] };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const message = MESSAGES[error.code] ?? error.message;
    return { rows: [], problems: [{ message, ...places.next(error.index === 0) }] };
  }
}

/** The library's errors in our words; the others are of calls and not of files. */
const MESSAGES: Readonly<Partial<Record<CsvErrorCode, string>>> = {
  CSV_QUOTE_NOT_CLOSED: 'the quotes that begin here never end',
  CSV_INVALID_CLOSING_QUOTE: 'text after the closing quotes',
  CSV_NON_TRIMABLE_CHAR_AFTER_CLOSING_QUOTE: 'text after the closing quotes',
  INVALID_OPENING_QUOTE: 'quotes stand within a cell that does not begin with them',
};

/** Where fields begin, asked for one behind the other. */
class Places {
  readonly #bytes: Uint8Array;
  /** Behind the field before. */
  #end = 0;
  #line = 1;
  #lineStart = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
  }

  /** Of the field behind the one before, which ends before the byte `end`. */
  next(isFirst: boolean, end = this.#end): { readonly line: number; readonly column: number } {
    this.#pass(isFirst ? this.#afterLineEnd() : this.#end + 1);
    const before = this.#bytes.subarray(this.#lineStart, this.#end);
    const place = { line: this.#line, column: DECODER.decode(before).length + 1 };
    this.#pass(end);
    return place;
  }

  #afterLineEnd(): number {
    const [first, second] = this.#bytes.subarray(this.#end, this.#end + 2);
    if (this.#end === 0) return 0;
    return this.#end + (first === RETURN && second === FEED ? 2 : 1);
  }

  /** Over what may hold line ends. */
  #pass(to: number): void {
    for (; this.#end < to; this.#end += 1) {
      const byte = this.#bytes[this.#end];
      const ends = byte === FEED || (byte === RETURN && this.#bytes[this.#end + 1] !== FEED);
      if (!ends) continue;
      this.#line += 1;
      this.#lineStart = this.#end + 1;
    }
  }
}

const [FEED, RETURN] = [10, 13];
const DECODER = new TextDecoder();
