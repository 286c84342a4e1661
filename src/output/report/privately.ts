import type { Reader } from './sheet.ts';

/** Nobody can promise that an engine is safe: what says so, or is marked `private:`, stays with the shop. */
const NOT_FOR_OTHERS = /^\s*private:|\bsafe(?:ly|ty)?\b/i;

/** A text of a document for a reader; undefined where it stays with the shop. */
export const privately = (text: string | undefined, reader: Reader): string | undefined =>
  text === undefined || (reader !== 'shop' && NOT_FOR_OTHERS.test(text)) ? undefined : text;
