import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Environment } from '../world.ts';
import { cacheFolder } from './cacheFolder.ts';

/** What a single executable holds beside node. */
interface Sea {
  readonly getRawAsset: (name: string) => ArrayBuffer;
}

/**
 * The files of the program, out of the executable that holds them: into the user's own folder for what can be made anew,
 * where every start compares them byte for byte, or into a folder of this run alone, which goes with it.
 * @param name of the folder: another build has another
 */
export function unpacked(names: readonly string[], name: string, environment: Environment): string {
  const cache = cacheFolder(environment);
  const folder = cache === undefined ? ofThisRun() : join(cache, name);
  const { getRawAsset } = process.getBuiltinModule('node:sea') as unknown as Sea;
  for (const each of names) putThere(join(folder, each), Buffer.from(getRawAsset(each)));
  return folder;
}

function ofThisRun(): string {
  const folder = mkdtempSync(join(tmpdir(), 'tenths-'));
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Whole or not at all: another run may be reading it. */
function putThere(file: string, bytes: Buffer): void {
  if (isThere(file, bytes)) return;
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  const written = `${file}.${process.pid}.part`;
  writeFileSync(written, bytes, { mode: 0o600 });
  renameSync(written, file);
}

function isThere(file: string, bytes: Buffer): boolean {
  try {
    return readFileSync(file).equals(bytes);
  } catch {
    return false;
  }
}
