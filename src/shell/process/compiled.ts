import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { getHeapCodeStatistics } from 'node:v8';
import { Script } from 'node:vm';
import { type KeptCode, readKept, writeKept } from './keptCode.ts';

/** A file of the bundle, as node makes a function of a CommonJS module. It asks for modules of node alone. */
type Wrapped = (
  exports: object,
  require: typeof process.getBuiltinModule,
  module: { exports: object },
  filename: string,
  dirname: string,
) => void;

export interface Loaded {
  readonly exports: object;
  /** Whether V8 took what was kept. */
  readonly isKept: boolean;
  /** Keeps for the next run what has run by now. */
  readonly keep: () => void;
}

/**
 * Runs a file of the bundle from what earlier runs compiled of it: to compile it anew at each start takes longer than to
 * judge an engine, and node's own cache holds a file whole or what ran as it was loaded.
 * @param path where that is kept
 */
export function loadCompiled(file: string, path: string): Loaded {
  const source = wrappedSource(file);
  const kept = readKept(path, source);
  const script = new Script(source.toString('latin1'), {
    filename: file,
    ...(kept === undefined ? {} : { cachedData: kept.code }),
  });
  const module = { exports: {} };
  const wrapped: Wrapped = script.runInThisContext();
  wrapped(module.exports, process.getBuiltinModule, module, file, dirname(file));
  const taken = script.cachedDataRejected === false ? kept : undefined;
  return {
    exports: module.exports,
    isKept: taken !== undefined,
    keep: () => {
      if (taken !== undefined && Math.random() > LOOKS) return;
      const codeBytes = getHeapCodeStatistics().bytecode_and_metadata_size;
      if (hasGrown(codeBytes, taken)) writeKept(path, { code: script.createCachedData(), codeBytes }, source);
    },
  };
}

/** To put text round a text of this size afterwards would copy it once more, into the heap. */
function wrappedSource(file: string): Buffer {
  const opened = openSync(file, 'r');
  try {
    const { size } = fstatSync(opened);
    const wrapped = Buffer.allocUnsafe(HEAD.length + size + TAIL.length);
    HEAD.copy(wrapped);
    for (let read = 0, more = 1; read < size && more > 0; read += more) {
      more = readSync(opened, wrapped, HEAD.length + read, size - read, null);
    }
    TAIL.copy(wrapped, HEAD.length + size);
    return wrapped;
  } finally {
    closeSync(opened);
  }
}

const HEAD = Buffer.from('(function(exports,require,module,__filename,__dirname){');
const TAIL = Buffer.from('\n})');

/** To look how much code there is takes a fiftieth of a short run, so one in eight looks. */
const LOOKS = 1 / 8;

/** To keep it takes as long as compiling some of it, so a function or two are not worth it. */
const hasGrown = (codeBytes: number, kept: KeptCode | undefined): boolean =>
  kept === undefined || codeBytes > kept.codeBytes * 1.02;

/** As node does it. */
export const load = (file: string): object => createRequire(file)(file);
