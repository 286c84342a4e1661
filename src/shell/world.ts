import type { Calculator } from '../calculator/calculator.ts';
import type { Written } from '../output/escape/language.ts';
import type { ParquetWriter } from '../parquet/parquetBytes.ts';
import type { OpenedOnce } from './discover/openedOnce.ts';

/** Everything outside the program that a command may touch: given to it, so that a test can give another. */
export interface World {
  readonly workingDirectory: string;
  readonly environment: Environment;
  /** The date where the bench stands, `YYYY-MM-DD`. */
  readonly today: string;
  /** Milliseconds since the program began: for whoever waits, never for a result. */
  readonly elapsed?: () => number;
  readonly out: Output;
  readonly err: Output;
  /** Tells that a run will be long, so that it pays to compile for it. */
  readonly optimise?: () => void;
  /** Shares a long run among threads. */
  readonly workerPool?: WorkerPool;
  /** Where results are kept for later runs; undefined where nothing is. */
  readonly cache?: () => CachePlace | undefined;
  /** Loads what `calc` works with: a file of its own, that no other command pays for. */
  readonly calculator?: () => Promise<Calculator>;
  /** Loads what writes Parquet: a file of its own as well. */
  readonly parquet?: () => Promise<ParquetWriter>;
  /** Documents as earlier calls of one process opened them, for whoever makes many calls in one. */
  readonly opened?: OpenedOnce;
  /** What is typed or piped in; undefined where a command has nothing to ask. */
  readonly input?: () => Input;
}

export interface CachePlace {
  /** Absolute, and the user's alone. */
  readonly folder: string;
  /** Which program this is, to the byte: another may come to other results. */
  readonly build: string;
}

export type Environment = Readonly<Record<string, string | undefined>>;

export interface Input extends NodeJS.ReadableStream {
  readonly isTTY?: boolean;
}

export interface Output {
  readonly isTTY?: boolean;
  readonly columns?: number;
  /** False where nobody reads any more; else anything. */
  readonly write: (text: Written) => unknown;
}

/** Carries out tasks in threads that all know the call; the results, plain data, come in the order of the tasks. */
export type WorkerPool = <Call, Task, Result>(call: Call, tasks: readonly Task[]) => AsyncIterable<Result>;
