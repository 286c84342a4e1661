import { readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { zlib } from './lateModules.ts';

/** What V8 compiled of a file, and how much code there was in the process that kept it. */
export interface KeptCode {
  readonly code: Buffer;
  readonly codeBytes: number;
}

const EXTENSION = '.compiled';

/** A shop calls a handful of commands, of one or two versions. */
const MOST_FILES = 12;

/** The path in a folder where what one command runs of a file is kept. Nodes and programs stand beside each other. */
export function keptPath(folder: string, file: string, command: string): string {
  const whose = zlib().crc32(`${MAKER} ${file}`).toString(16).padStart(8, '0');
  return join(folder, `${command}-${whose}${EXTENSION}`);
}

/** Undefined where nothing is kept, or what is was spoiled or made of another file or by another node. */
export function readKept(path: string, source: Buffer): KeptCode | undefined {
  try {
    const bytes = readFileSync(path);
    const [code, end] = [bytes.subarray(0, -END_BYTES), bytes.subarray(-END_BYTES)];
    const codeBytes = end.readUInt32LE();
    return endOf({ code, codeBytes }, source).equals(end) ? { code, codeBytes } : undefined;
  } catch {
    return undefined;
  }
}

/** Puts it in its place whole or not at all, and takes the oldest away; a disk that refuses costs only time. */
export function writeKept(path: string, kept: KeptCode, source: Buffer): void {
  const unfinished = `${path}.${process.pid}`;
  try {
    writeFileSync(unfinished, Buffer.concat([kept.code, endOf(kept, source)]), { mode: 0o600 });
    renameSync(unfinished, path);
    removeOldest(dirname(path));
  } catch {
    remove(unfinished);
  }
}

function remove(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // A later run takes it away.
  }
}

/** Of files that were not finished too: whoever wrote them was killed. */
function removeOldest(folder: string): void {
  const files = readdirSync(folder)
    .filter((name) => basename(name).includes(EXTENSION))
    .map((name) => join(folder, name))
    .map((path) => ({ path, time: statSync(path).mtimeMs }))
    .sort((a, b) => b.time - a.time);
  for (const { path } of files.slice(MOST_FILES)) remove(path);
}

/**
 * V8 looks at the head of its code alone, and at the length of the source: it would run whatever follows. Nor does it tell
 * two versions of node with one V8 apart, and code of 20.20 ends 20.19 at its first step.
 */
function endOf({ code, codeBytes }: KeptCode, source: Buffer): Buffer {
  const { crc32 } = zlib();
  const end = Buffer.alloc(END_BYTES);
  end.writeUInt32LE(codeBytes);
  end.writeUInt32LE(crc32(MAKER, crc32(end.subarray(0, 4), crc32(source, crc32(code)))), 4);
  return end;
}

const END_BYTES = 8;

const MAKER = `${process.version} ${process.platform} ${process.arch}`;
