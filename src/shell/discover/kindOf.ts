import { closeSync, openSync, readSync } from 'node:fs';
import { join } from 'node:path';
import { sniffKind } from '../../documents/yaml/sniff.ts';

const HEAD_BYTES = 4096;

/** What a file of the shop says it is, from its first bytes; undefined where they do not tell, or it cannot be read. */
export function kindOf(root: string, path: string): string | undefined {
  try {
    const handle = openSync(join(root, path), 'r');
    try {
      const bytes = new Uint8Array(HEAD_BYTES);
      return sniffKind(bytes.subarray(0, readSync(handle, bytes, 0, HEAD_BYTES, 0)));
    } finally {
      closeSync(handle);
    }
  } catch {
    return undefined;
  }
}
