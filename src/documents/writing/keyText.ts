/** Words that are no text to some readers of YAML, though they are to ours. */
const RESERVED = /^(?:true|false|null|yes|no|on|off|y|n)$/i;

/** A key as it is written: bare where nobody could misread it, else in double quotes. */
export function keyText(key: string): string {
  const bare = /^[+-]?[\p{L}\p{N}_](?:[\p{L}\p{N}\p{M}_ .+/-]*[\p{L}\p{N}\p{M}_.+/-])?$/u.test(key);
  return bare && !RESERVED.test(key) ? key : JSON.stringify(key);
}
