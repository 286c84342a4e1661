import { readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { Script } from 'node:vm';
import { zlib } from './lateModules.ts';

/** A file of the bundle, as node makes a function of a CommonJS module. It asks for modules of node alone. */
type Wrapped = (
  exports: object,
  require: typeof process.getBuiltinModule,
  module: { exports: object },
  filename: string,
  dirname: string,
) => void;

/** Whether this node keeps no compiled code itself, so that the build has to. */
export const needsKeptCode = !('enableCompileCache' in process.getBuiltinModule('node:module'));

/** Where the build keeps what V8 compiled of a file. */
export const keptCodeOf = (file: string): string => `${file}.cache`;

/**
 * Runs a file of the bundle from the compiled code that the build kept of it, for a node that keeps none itself. Where that
 * is not there, is broken, or was made by another version of node, the file is compiled as ever.
 */
export function loadFromKeptCode(file: string): { readonly exports: object; readonly script: Script } {
  const source = readFileSync(file);
  const cachedData = keptCode(file, source);
  const script = new Script(
    `(function(exports,require,module,__filename,__dirname){${source.toString('latin1')}\n})`,
    {
      filename: file,
      ...(cachedData === undefined ? {} : { cachedData }),
    },
  );
  const module = { exports: {} };
  const wrapped: Wrapped = script.runInThisContext();
  wrapped(module.exports, process.getBuiltinModule, module, file, dirname(file));
  return { exports: module.exports, script };
}

/** Keeps what V8 compiled of a file. */
export function keepCode(file: string, code: Buffer): void {
  writeFileSync(keptCodeOf(file), Buffer.concat([code, sumOf(code, readFileSync(file))]));
}

function keptCode(file: string, source: Buffer): Buffer | undefined {
  try {
    const kept = readFileSync(keptCodeOf(file));
    const code = kept.subarray(0, -SUM_BYTES);
    return sumOf(code, source).equals(kept.subarray(-SUM_BYTES)) ? code : undefined;
  } catch {
    return undefined;
  }
}

/**
 * V8 looks at the head of its code alone, and at the length of the source: it would run whatever follows. Nor does it tell
 * two versions of node with one V8 apart, and code of 20.20 ends 20.19 at its first step.
 */
function sumOf(code: Buffer, source: Buffer): Buffer {
  const { crc32 } = zlib();
  const maker = `${process.version} ${process.platform} ${process.arch}`;
  const sum = Buffer.alloc(SUM_BYTES);
  sum.writeUInt32LE(crc32(maker, crc32(source, crc32(code))));
  return sum;
}

const SUM_BYTES = 4;
