import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach } from 'vitest';
import { callHere } from '../inProcess.ts';

export interface Called {
  readonly exitCode: number;
  readonly out: string;
  readonly err: string;
}

/** Texts by path. */
export type Files = Readonly<Record<string, string>>;

/** A folder of its own for each test, and a way to call the program in it. */
export interface Bench {
  readonly folder: () => string;
  readonly call: (...words: readonly string[]) => Promise<Called>;
  /** The same with a pipe into it. */
  readonly pipe: (input: string, ...words: readonly string[]) => Promise<Called>;
  /** Puts files there, by path. */
  readonly put: (files: Files) => void;
}

export function benchFolder(): Bench {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'tenths '));
  });
  afterEach(() => removeWhole(folder));
  return {
    folder: () => folder,
    call: (...words) => callIn(folder, words),
    pipe: (input, ...words) => callIn(folder, words, input),
    put: (files) => putIn(folder, files),
  };
}

export function putIn(folder: string, files: Files): void {
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}

/** A shell that was just killed may still write: what it made meanwhile goes at the next attempt. */
async function removeWhole(folder: string): Promise<void> {
  for (let left = 40; left > 0; left--) {
    try {
      return rmSync(folder, { recursive: true, force: true });
    } catch (error) {
      if (left === 1 || !(error instanceof Error && 'code' in error && error.code === 'ENOTEMPTY'))
        throw error;
      await setTimeout(50);
    }
  }
}

export async function callIn(folder: string, words: readonly string[], input = ''): Promise<Called> {
  const { stdout, stderr, exitCode } = await callHere(words, { cwd: folder, input });
  return { exitCode, out: stdout, err: stderr };
}
