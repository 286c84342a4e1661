import { readPlain } from '../yaml/scalar.ts';

/** Words that are no text to some readers of YAML, though they are to ours. */
const RESERVED = /^(?:true|false|null|yes|no|on|off|y|n)$/i;

/** A value that is text, whatever it is made of: digits alone stand in quotes. */
export const valueText = (text: string): string =>
  readPlain(text) === text ? keyText(text) : JSON.stringify(text);

/** A key or a name as it is written: bare where nobody could misread it, else in double quotes. */
export function keyText(key: string): string {
  const bare = /^[+-]?[\p{L}\p{N}_](?:[\p{L}\p{N}\p{M}_ .+/-]*[\p{L}\p{N}\p{M}_.+/-])?$/u.test(key);
  const isClear = bare && !RESERVED.test(key) && typeof readPlain(key) !== 'object';
  return isClear ? key : JSON.stringify(key);
}
