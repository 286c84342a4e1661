/** In the order in which things are bought. */
export const ORDER_TIMES = ['now', 'after the yes', 'after measuring'] as const;

export type OrderTime = (typeof ORDER_TIMES)[number];

/** One line of what has to be bought. */
export interface OrderLine {
  readonly what: string;
  /** As the stock or its maker calls it, where that is stated. */
  readonly code: string | undefined;
  readonly size: string;
  readonly count: number;
  /** How many of the count are on the shelf. */
  readonly onShelf: number;
  /** How many of this size there are for all lines together; undefined where pieces were chosen, or none is kept by size. */
  readonly free?: number | undefined;
  readonly when: OrderTime;
  /** The job that needs it. */
  readonly for: string;
  /** What must be measured, stated or decided before it is bought, where anything must. */
  readonly waitsFor?: string | undefined;
  /** The day on which it is needed, where one is stated. */
  readonly neededBy?: string | undefined;
}
