import { escapeHidden } from '../../diagnostic/quoted.ts';
import type { SourceText, Span } from './node.ts';
import type { Problem } from './problem.ts';
import { BYTE_ORDER_MARK, sourceText } from './sourceText.ts';

/** A season of sessions fits; beyond it the parser's memory and time are no longer small. */
export const MOST_BYTES = 256 * 1024;

/** What a file's bytes say, or why they cannot be taken as text at all. */
export interface Decoded {
  readonly source: SourceText;
  readonly problem?: Problem;
}

const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const lenient = new TextDecoder('utf-8', { ignoreBOM: true });
const START: Span = { start: 0, end: 0 };
const SAVE_AS_UTF8 = 'save it as UTF-8';

export function decode(path: string, bytes: Uint8Array): Decoded {
  if (bytes.length > MOST_BYTES) return { source: sourceText(path, ''), problem: tooBig(bytes.length) };
  if (isUtf16(bytes)) return { source: sourceText(path, ''), problem: utf16 };
  try {
    return { source: sourceText(path, strict.decode(bytes)) };
  } catch {
    const text = lenient.decode(bytes);
    return { source: sourceText(path, text), problem: notUtf8(text, bytes) };
  }
}

const tooBig = (size: number): Problem => ({
  code: 'too-big',
  span: START,
  message: `the file has ${Math.ceil(size / 1024)} KiB; at most ${MOST_BYTES / 1024} KiB are read`,
  help: 'split it: one file a session',
});

const utf16: Problem = {
  code: 'encoding',
  span: START,
  message: 'the file is in UTF-16, not in UTF-8',
  help: SAVE_AS_UTF8,
};

/** By its byte order mark, or by the zero bytes beside its first two letters. */
function isUtf16(bytes: Uint8Array): boolean {
  const [a, b, c, d] = bytes;
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return true;
  return (a === 0 && c === 0 && b !== 0 && d !== 0) || (a !== 0 && c !== 0 && b === 0 && d === 0);
}

function notUtf8(text: string, bytes: Uint8Array): Problem {
  const { index, offset } = firstDamage(text, bytes);
  // Behind ASCII, so two digits.
  const byte = bytes[offset]?.toString(16).toUpperCase();
  return {
    code: 'encoding',
    span: { start: index, end: index + 1 },
    message: `the byte 0x${byte} here is not UTF-8; the file may be in Latin-1 or Windows-1252`,
    help: SAVE_AS_UTF8,
  };
}

/** The first replacement character that does not stand in the file itself: the strict decoder has found that there is one. */
function firstDamage(text: string, bytes: Uint8Array): { readonly index: number; readonly offset: number } {
  let [index, offset] = [-1, 0];
  for (;;) {
    const from = index + 1;
    index = text.indexOf('\ufffd', from);
    offset += Buffer.byteLength(text.slice(from, index));
    if (bytes[offset] !== 0xef || bytes[offset + 1] !== 0xbf || bytes[offset + 2] !== 0xbd)
      return { index, offset };
    offset += 3;
  }
}

/**
 * Controls other than tab and line ends; a carriage return alone; a byte order mark that is not the first character. The
 * rest of the line comes along, so that the next is looked for behind it.
 */
const CONTROL = /(?:[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufffe\uffff]|\r(?!\n)|(?!^)\ufeff)[^\n]*/g;

/** Raw control characters, the first on each line. */
export const controlCharacters = (text: string): Problem[] =>
  Array.from(text.matchAll(CONTROL), ({ 0: found, index }) => control(found.charAt(0), index));

function control(character: string, start: number): Problem {
  const problem = { code: 'control-character', span: { start, end: start + 1 } } as const;
  if (character === '\r') {
    return {
      ...problem,
      message: 'a carriage return without a line feed',
      help: 'end lines with LF or CRLF',
    };
  }
  if (character === BYTE_ORDER_MARK) {
    return { ...problem, message: 'a byte order mark inside the text', help: 'delete it' };
  }
  return {
    ...problem,
    message: `the control character ${escapeHidden(character)} is not allowed here`,
    help: 'delete it',
  };
}
