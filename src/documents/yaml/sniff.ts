/**
 * What a document says it is, from a look at its bytes instead of a parse: enough to find the engines of
 * a large repository. Undefined where the look does not tell; the document is then read whole.
 */
export function sniffKind(bytes: Uint8Array): string | undefined {
  const head = decoder.decode(bytes.subarray(0, HEAD)) + (bytes.length > HEAD ? CUT : '');
  return /^(?:\ufeff)?["']?kind["']? *: *["']?([a-z_-]+)["']? *(?:#.*)?\r?$/m.exec(head)?.[1];
}

const decoder = new TextDecoder();

/** Past any licence header or comment that a person puts before the first key. */
const HEAD = 4096;

/** Behind a line that may go on, so that half a word is none. */
const CUT = '…';
