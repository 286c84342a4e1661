/** One way to serve a place, such as two shell halves of one journal. */
export interface Option {
  /** Nought or more. */
  readonly cost: number;
  /** How many of each item in stock it takes, by the item's index. */
  readonly takes: readonly (readonly [item: number, count: number])[];
}

/** The options of each place. */
export type Places = readonly (readonly Option[])[];

/** The index of the option chosen for each place; undefined where a place goes without. */
export type Choices = readonly (number | undefined)[];

/** An option of every place, by its index. */
export interface Complete {
  readonly options: readonly number[];
  readonly cost: number;
}
