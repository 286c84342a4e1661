import { HIDDEN } from '../../diagnostic/quoted.ts';
import { type Escaped, letOut, ownPiece, tagWith, type Written } from './language.ts';

/** JSON around values: whatever is put into it becomes JSON. */
export const json = tagWith<'json', unknown>((value) => harmless(JSON.stringify(value)));

/** Several lines, for a reader's eye. */
export const spreadJson = (value: unknown): Escaped<'json'> =>
  ownPiece(harmless(JSON.stringify(value, null, 2)));

export const writtenJson = ({ source }: Escaped<'json'>): Written => letOut(source);

/** What a terminal or a log would obey stands in strings alone, where an escape reads the same. */
const harmless = (text: string): string =>
  text.replace(OBEYED, (found) =>
    found === '\n'
      ? found
      : [...Array(found.length).keys()].map((at) => escapeOf(found.charCodeAt(at))).join(''),
  );

const OBEYED = new RegExp(`${HIDDEN.source}|#(?=#)`, 'gu');

const escapeOf = (unit: number): string => `\\u${unit.toString(16).padStart(4, '0')}`;
