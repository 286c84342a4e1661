import type { Files } from './shopOf.ts';

/** As many as `npm test` draws; of a long run the others are let go. */
const KEPT = 60;

/**
 * Asks once of equal texts what several properties ask: from one seed they draw the same shops, and change them in
 * ways of their own.
 */
export function oncePerTexts<T>(ask: (files: Files) => T): (files: Files) => T {
  const known = new Map<string, { readonly answer: T }>();
  return (files) => {
    const key = JSON.stringify(files);
    const found = known.get(key) ?? { answer: ask(files) };
    if (known.size < KEPT) known.set(key, found);
    return found.answer;
  };
}
