/** One field, and where it begins. Lines and columns count from 1. */
export interface CsvCell {
  readonly text: string;
  readonly line: number;
  readonly column: number;
}

export interface CsvProblem {
  readonly message: string;
  readonly line: number;
  readonly column: number;
}

export interface Csv {
  /** Rows that are not empty, each with at least one cell. */
  readonly rows: readonly (readonly CsvCell[])[];
  readonly problems: readonly CsvProblem[];
}

/** Text of a spreadsheet by RFC 4180, with another delimiter if need be; a byte order mark is left out. */
export function parseCsv(text: string, delimiter: string): Csv {
  const scanner = new Scanner(text.replace(/^\uFEFF/, ''), delimiter);
  const rows: (readonly CsvCell[])[] = [];
  while (!scanner.atEnd()) {
    const row = scanner.row();
    if (row.some((cell) => cell.text !== '')) rows.push(row);
  }
  return { rows, problems: scanner.problems };
}

class Scanner {
  readonly problems: CsvProblem[] = [];
  readonly #text: string;
  readonly #delimiter: string;
  #at = 0;
  #line = 1;
  #lineStart = 0;

  constructor(text: string, delimiter: string) {
    this.#text = text;
    this.#delimiter = delimiter;
  }

  atEnd(): boolean {
    return this.#at >= this.#text.length;
  }

  row(): readonly CsvCell[] {
    const cells = [this.#cell()];
    while (this.#text[this.#at] === this.#delimiter) {
      this.#at += 1;
      cells.push(this.#cell());
    }
    this.#endOfLine();
    return cells;
  }

  #here(): { readonly line: number; readonly column: number } {
    return { line: this.#line, column: this.#at - this.#lineStart + 1 };
  }

  #cell(): CsvCell {
    const place = this.#here();
    if (this.#text[this.#at] === '"') return { text: this.#quoted(), ...place };
    const start = this.#at;
    while (!this.atEnd() && !this.#ends(this.#text[this.#at] ?? '')) this.#at += 1;
    return { text: this.#text.slice(start, this.#at).trim(), ...place };
  }

  #ends(character: string): boolean {
    return character === this.#delimiter || character === '\n' || character === '\r';
  }

  #quoted(): string {
    const opening = this.#here();
    let text = '';
    this.#at += 1;
    for (;;) {
      const quote = this.#text.indexOf('"', this.#at);
      const part = this.#text.slice(this.#at, quote < 0 ? undefined : quote);
      text += part;
      this.#pass(part);
      if (quote < 0) {
        this.problems.push({ message: 'the quotes that begin here never end', ...opening });
        return text;
      }
      this.#at += 1;
      if (this.#text[this.#at] !== '"') break;
      text += '"';
      this.#at += 1;
    }
    this.#afterQuotes();
    return text;
  }

  /** Moves over text that may hold line ends. */
  #pass(part: string): void {
    const start = this.#at;
    this.#at += part.length;
    for (let feed = part.indexOf('\n'); feed >= 0; feed = part.indexOf('\n', feed + 1)) {
      this.#line += 1;
      this.#lineStart = start + feed + 1;
    }
  }

  #afterQuotes(): void {
    const place = this.#here();
    const start = this.#at;
    while (!this.atEnd() && !this.#ends(this.#text[this.#at] ?? '')) this.#at += 1;
    if (this.#text.slice(start, this.#at).trim() !== '') {
      this.problems.push({ message: 'text stands behind the closing quotes', ...place });
    }
  }

  #endOfLine(): void {
    if (this.#text[this.#at] === '\r') this.#at += 1;
    if (this.#text[this.#at] === '\n') this.#at += 1;
    this.#line += 1;
    this.#lineStart = this.#at;
  }
}
