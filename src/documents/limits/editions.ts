import { compareText } from '../../diagnostic/place.ts';
import type { LimitsDocument } from './limits.ts';

/**
 * The limits that held on a day, in the order in which a band is looked for: those that a later edition brought in are
 * left out. Without a day all of them, the newest edition of a folder first.
 */
export function limitsOn(
  documents: readonly LimitsDocument[],
  day: string | undefined,
): readonly LimitsDocument[] {
  if (day === undefined || documents.every(({ from }) => from === undefined)) return documents;
  const held = documents.filter(({ from }) => from === undefined || from <= day);
  const known = editions.get(documents) ?? new Map<number, readonly LimitsDocument[]>();
  editions.set(documents, known);
  const same = known.get(held.length);
  // Of documents in one order as many are the same: those with the latest dates are left out first.
  if (same !== undefined) return same;
  known.set(held.length, held);
  return held;
}

/** What is worked out from limits is kept by their list, so that those of one edition are one list. */
const editions = new WeakMap<readonly LimitsDocument[], Map<number, readonly LimitsDocument[]>>();

/** The limits of each edition, from before the first to the last. */
export const everyEdition = (documents: readonly LimitsDocument[]): readonly (readonly LimitsDocument[])[] =>
  ['', ...new Set(documents.flatMap(({ from }) => from ?? []))].map((day) => limitsOn(documents, day));

/** Documents of one folder: the newest edition is asked first. */
export const newestFirst = (a: LimitsDocument, b: LimitsDocument): number =>
  compareText(b.from ?? '', a.from ?? '');
