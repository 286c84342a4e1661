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
  readonly table?: Table;
  readonly lines?: readonly string[];
  /** To be ticked by hand. */
  readonly boxes?: readonly string[];
}

export interface Table {
  readonly heading: readonly string[];
  /** Right where a column holds figures. */
  readonly align: readonly ('left' | 'right')[];
  readonly rows: readonly (readonly string[])[];
}
