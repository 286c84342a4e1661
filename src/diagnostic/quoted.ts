/**
 * Characters that a terminal obeys instead of showing, or that cannot be seen: C0 and C1 controls, directions
 * of writing, zero width, tags, noncharacters, lone surrogates.
 */
export const HIDDEN =
  /[\0-\x1f\x7f-\x9f\xad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ud800-\udfff\ufeff\ufff9-\ufffb\ufffe\uffff\u{e0000}-\u{e007f}]/gu;

/** Enough of a long text to know it by, in characters. */
const LONGEST_QUOTE = 60;

/** The text with every hidden character written as `\u{..}`, and line ends and tabs as `\n`, `\r`, `\t`. */
export const escapeHidden = (text: string): string => text.replace(HIDDEN, escapeOne);

/** A file's own words inside a message: in backticks, hidden characters escaped, long text cut. */
export function quoted(text: string): string {
  const cut = [...text.slice(0, 2 * LONGEST_QUOTE)].slice(0, LONGEST_QUOTE).join('');
  return `\`${escapeHidden(cut)}${cut.length < text.length ? '…' : ''}\``;
}

function escapeOne(character: string): string {
  if (character === '\n') return '\\n';
  if (character === '\r') return '\\r';
  if (character === '\t') return '\\t';
  return `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`;
}
