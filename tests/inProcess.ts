import { Readable } from 'node:stream';
import type { Calculator } from '../src/calculator/calculator.ts';
import { run } from '../src/cli/run.ts';
import { OpenedOnce } from '../src/shell/discover/openedOnce.ts';
import type { CachePlace, Output } from '../src/shell/world.ts';
import { type Ran, type RunOptions, SURROUNDINGS } from './program.ts';

/** The day on which every call is made. */
export const TODAY = '2026-03-20';

export interface HereOptions extends RunOptions {
  /** Makes the output a terminal of that width. */
  readonly columns?: number;
  /** How late it is each time that is asked: a clock of the test's. */
  readonly elapsed?: () => number;
  /** Where results of earlier calls are kept; without it nothing is. */
  readonly cache?: CachePlace;
  /** Nobody reads what is printed, as behind a pipe whose other end was closed. */
  readonly isUnread?: boolean;
}

/** A process of its own might be killed; such a call ends. */
interface Answer extends Ran {
  readonly exitCode: number;
}

/** One call of the program without a process of its own. What no command expects is thrown. */
export async function callHere(
  words: readonly string[],
  { cwd, env = {}, input = '', columns, cache, elapsed, isUnread = false }: HereOptions,
): Promise<Answer> {
  const [out, err] = [collecting(columns, isUnread), collecting(columns)];
  const exitCode = await run(words, {
    workingDirectory: cwd,
    environment: { ...SURROUNDINGS, ...env },
    today: TODAY,
    parquet: async () => (await import('../src/parquet/parquetBytes.ts')).parquetBytes,
    calculator: theCalculator,
    out,
    err,
    cache: () => cache,
    opened,
    ...(elapsed === undefined ? {} : { elapsed }),
    input: () => Readable.from(input === '' ? [] : [Buffer.from(input)], { objectMode: false }),
  });
  return { stdout: out.told(), stderr: err.told(), exitCode };
}

/** Most calls read what another has read: a document that is the same, byte for byte, is parsed once. */
const opened = new OpenedOnce();

let calculator: Calculator | undefined;

/** Made once: a call takes it as it is, and to make one takes longer than most calls. */
async function theCalculator(): Promise<Calculator> {
  calculator ??= (await import('../src/calculator/calculator.ts')).newCalculator();
  return calculator;
}

function collecting(columns: number | undefined, isUnread = false): Output & { readonly told: () => string } {
  const texts: string[] = [];
  return {
    ...(columns === undefined ? {} : { isTTY: true, columns }),
    write: (text) => !isUnread && texts.push(text) > 0,
    told: () => texts.join(''),
  };
}
