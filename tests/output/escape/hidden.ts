/** A character that a terminal obeys, or that no reader can see. Written anew, not taken from the program. */
export const HIDDEN =
  /[\x00-\x09\x0b-\x1f\x7f-\x9f\xad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\ufffe\uffff\p{Cs}\u{e0000}-\u{e007f}]/u;
