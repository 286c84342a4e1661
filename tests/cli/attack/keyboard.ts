import { Readable } from 'node:stream';
import { run } from '../../../src/cli/run.ts';
import { TODAY } from '../../inProcess.ts';
import { SURROUNDINGS } from '../../program.ts';

interface Entry {
  readonly exitCode: number;
  readonly text: string;
  /** The same, each write by itself. */
  readonly writes: readonly string[];
}

/** What a person types at a terminal of some width, line by line and all at once, and what the terminal is sent. */
export const typed = (
  lines: readonly string[],
  words: readonly string[],
  cwd: string,
  columns: number,
): Promise<Entry> => keyedIn(lines.map((line) => `${line}\r`).join(''), words, cwd, columns);

/** The same key by key. */
export async function keyedIn(
  keyed: string,
  words: readonly string[],
  cwd: string,
  columns: number,
): Promise<Entry> {
  const texts: string[] = [];
  const screen = { isTTY: true, columns, write: (text: string) => texts.push(text) > 0 };
  const keys = Readable.from([Buffer.from(keyed)]);
  const exitCode = await run(words, {
    workingDirectory: cwd,
    environment: { ...SURROUNDINGS },
    today: TODAY,
    out: screen,
    err: screen,
    input: () => Object.assign(keys, { isTTY: true }),
  });
  return { exitCode, text: texts.join(''), writes: texts };
}
