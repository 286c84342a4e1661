import type { Quantity } from '../quantity/units.ts';
import type { Family } from './layout.ts';

/** What a document's reader must know of a characteristic; the registry knows the rest. */
export interface Measure {
  readonly id: string;
  readonly quantity: Quantity;
  readonly family: Family;
  /** `[a, b]` at one position are the two halves of a pair of shells, not a row of stations. */
  readonly halves?: boolean;
}

export interface Measures {
  readonly find: (id: string) => Measure | undefined;
  readonly ids: () => readonly string[];
}
