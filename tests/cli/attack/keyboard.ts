import { Readable } from 'node:stream';
import { run } from '../../../src/cli/run.ts';
import { TODAY } from '../../inProcess.ts';
import { SURROUNDINGS } from '../../program.ts';

/** What a person types at a terminal of some width, all at once, and what the terminal is sent. */
export async function typed(
  lines: readonly string[],
  words: readonly string[],
  cwd: string,
  columns: number,
): Promise<{ readonly exitCode: number; readonly text: string }> {
  const texts: string[] = [];
  const screen = { isTTY: true, columns, write: (text: string) => texts.push(text) > 0 };
  const keys = Readable.from([Buffer.from(lines.map((line) => `${line}\r`).join(''))]);
  const exitCode = await run(words, {
    workingDirectory: cwd,
    environment: { ...SURROUNDINGS },
    today: TODAY,
    out: screen,
    err: screen,
    input: () => Object.assign(keys, { isTTY: true }),
  });
  return { exitCode, text: texts.join('') };
}
