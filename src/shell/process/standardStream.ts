import { fstatSync, writeSync } from 'node:fs';
import { systemCode, systemWords } from '../problem.ts';
import type { Output } from '../world.ts';

/** Takes some of the bytes and says how many, or throws the system's error. */
export type WriteSome = (bytes: Uint8Array) => number;

/**
 * Standard output or error, written at once: nothing waits in memory for a slow reader, nothing is lost when the
 * program ends, and node need not open a stream of its own. When the reader has gone (`| head -1`) the rest is
 * dropped quietly and the run goes on to its exit code.
 */
export function standardStream(handle: 1 | 2): Output {
  const write = quietWriter((bytes) => writeSync(handle, bytes));
  if (!mayBeTerminal(handle)) return { write };
  const { isTTY, columns } = handle === 1 ? process.stdout : process.stderr;
  return isTTY === true ? { isTTY, columns, write } : { write };
}

/** The disk under a redirected output is full, or worse: what was asked for is not there. */
export class CannotWrite extends Error {}

/** Writes the whole of a text; after an error of the reader's making it writes no more, and says false. */
export function quietWriter(writeSome: WriteSome, wait: () => void = waitABit): (text: string) => boolean {
  let isGone = false;
  const bytesOf = reusingBytes();
  return (text) => {
    let rest = bytesOf(text);
    while (rest.length > 0 && !isGone) {
      try {
        rest = rest.subarray(writeSome(rest));
      } catch (error) {
        const code = systemCode(error);
        // A pipe that another program set not to block, and that is full.
        if (code === 'EAGAIN') wait();
        else if (READER_HAS_GONE.has(code)) isGone = true;
        else throw new CannotWrite(`the output cannot be written: ${systemWords(error)}`);
      }
    }
    return !isGone;
  };
}

/** The bytes hold until the next call: an engine is some 100 KB, and new room for each takes longer than to fill it. */
function reusingBytes(): (text: string) => Uint8Array {
  let room = Buffer.alloc(0);
  return (text) => {
    const most = text.length * MOST_BYTES_A_UNIT;
    if (room.length < most) room = Buffer.allocUnsafeSlow(most);
    return room.subarray(0, room.write(text));
  };
}

/** Of UTF-8, for a unit of UTF-16. */
const MOST_BYTES_A_UNIT = 3;

/** A pipe whose other end was closed; on Windows that is an end of file. */
const READER_HAS_GONE: ReadonlySet<string> = new Set(['EPIPE', 'EOF', 'ECONNRESET']);

const waitABit = (): void => {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);
};

/** Asked before node's own stream is: to open that takes time, and a file or a pipe is none. */
function mayBeTerminal(handle: number): boolean {
  try {
    return fstatSync(handle).isCharacterDevice();
  } catch {
    return false;
  }
}
