import type { Part } from '../../layout/part.ts';

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
  /** That day is before the session by which the list is made. */
  readonly isLate?: boolean;
}

/** A line while a list is made: what several of it are called, whatever the count. */
export interface NeededLine extends OrderLine {
  /** What one of it is called. */
  readonly one?: string;
  /** The lower takes from the shelf before the higher; none takes first. */
  readonly turn?: number;
}

type Goods = Required<Pick<NeededLine, 'what' | 'one'>>;

/** What a part is bought as: shells in pairs, a set of rings for each bore. */
export function goodsOf({ label, plural, sized, boughtAs }: Part): Goods {
  if (sized?.liesIn !== undefined) return { what: `${label} pairs`, one: `${label} pair` };
  if (sized?.inSets === true) return { what: 'ring sets', one: 'ring set' };
  return boughtAs === undefined ? { what: plural, one: label } : { what: `${boughtAs}s`, one: boughtAs };
}

export const calledByNumber = ({ one, turn: _, ...line }: NeededLine): OrderLine =>
  line.count === 1 && one !== undefined ? { ...line, what: one } : line;
