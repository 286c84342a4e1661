import { InvalidArgumentError } from 'commander';
import { escapeHidden } from '../diagnostic/quoted.ts';
import { refusedControl } from '../documents/yaml/readScalar.ts';

/** Words of a call that a document is to hold: one that it would be refused for is refused before anything is written. */
export function forDocument(words: string): string {
  const found = refusedControl(words);
  if (found === undefined) return words;
  throw new InvalidArgumentError(
    `It holds the control character ${escapeHidden(found)}, which no document may hold.`,
  );
}
