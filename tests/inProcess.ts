import { Readable } from 'node:stream';
import { run } from '../src/cli/run.ts';
import type { Output } from '../src/shell/world.ts';
import { type Ran, type RunOptions, surroundings } from './program.ts';

/** The day on which every call is made. */
export const TODAY = '2026-03-20';

interface HereOptions extends Omit<RunOptions, 'timeoutMilliseconds'> {
  /** Makes the output a terminal of that width. */
  readonly columns?: number;
}

/** A process of its own might be killed; such a call ends. */
interface Answer extends Ran {
  readonly exitCode: number;
}

/** One call of the program without a process of its own. What no command expects is thrown. */
export async function callHere(
  words: readonly string[],
  { cwd, env = {}, input = '', columns }: HereOptions,
): Promise<Answer> {
  const [out, err] = [collecting(columns), collecting(columns)];
  const exitCode = await run(words, {
    workingDirectory: cwd,
    environment: { ...surroundings(), ...env },
    today: TODAY,
    out,
    err,
    input: () => Readable.from(input === '' ? [] : [Buffer.from(input)], { objectMode: false }),
  });
  return { stdout: out.told(), stderr: err.told(), exitCode };
}

function collecting(columns: number | undefined): Output & { readonly told: () => string } {
  const texts: string[] = [];
  return {
    ...(columns === undefined ? {} : { isTTY: true, columns }),
    write: (text) => texts.push(text),
    told: () => texts.join(''),
  };
}
