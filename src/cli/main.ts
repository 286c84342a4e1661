import { join } from 'node:path';
import type * as CalculatorFile from '../calculator/calculator.ts';
import { writtenLines } from '../output/escape/line.ts';
import type * as ParquetFile from '../parquet/parquetBytes.ts';
import { cachePlace } from '../shell/cache/cachePlace.ts';
import { systemTrouble } from '../shell/problem.ts';
import { cacheFolder } from '../shell/process/cacheFolder.ts';
import { elapsedMs, today } from '../shell/process/clock.ts';
import { type Loaded, load, loadCompiled } from '../shell/process/compiled.ts';
import { optimise, skipOptimising } from '../shell/process/compiler.ts';
import { keptPath } from '../shell/process/keptCode.ts';
import { childProcess, crypto } from '../shell/process/lateModules.ts';
import { CannotWrite, standardStream } from '../shell/process/standardStream.ts';
import { workerPool } from '../shell/process/workerPool.ts';
import { VERSION } from '../version.ts';
import type * as Program from './run.ts';

const [, , ...words] = process.argv;
const out = standardStream(1);

const asksVersion = words.length === 1 && (words[0] === '--version' || words[0] === '-V');

// Everything has been written by then. Left to end by itself, node would first take the heap apart.
reported(asksVersion ? printVersion : runShort).then((exitCode) => process.exit(exitCode));

function printVersion(): number {
  out.write(writtenLines([VERSION]));
  return 0;
}

/** Most runs look at one engine: only one that looks at many calls for the optimising compiler. */
async function runShort(): Promise<number> {
  const workingDirectory = folderHere();
  if (workingDirectory === undefined) {
    printTrouble(['tenths: the folder of this terminal is no longer there', '        cd to one that is']);
    return 2;
  }
  if (words.some(asksGit)) childProcess();
  if (mayTakeKeptResults(words)) crypto();
  const { exports, keep } = loadProgram();
  const { run } = exports as typeof Program;
  const err = standardStream(2);
  const input = () => process.stdin;
  let isShort = true;
  const exitCode = await run(words, {
    workingDirectory,
    environment: process.env,
    today: today(),
    elapsed: elapsedMs,
    out,
    err,
    input,
    optimise: () => {
      isShort = false;
      optimise();
    },
    cache: () => cachePlace(process.env, import.meta.dirname),
    calculator: async () => besideThis<typeof CalculatorFile>('calculator.cjs').newCalculator(),
    parquet: async () => besideThis<typeof ParquetFile>('parquetBytes.cjs').parquetBytes,
    workerPool: (call, tasks) => workerPool(join(import.meta.dirname, 'poolMember.cjs'), call, tasks),
  });
  // V8 takes compiled code only under the options that it was made under.
  if (isShort && exitCode !== 2) keep();
  return exitCode;
}

/** From what the same command compiled before, where a folder for that is the user's alone. */
function loadProgram(): Pick<Loaded, 'exports' | 'keep'> {
  const command = commandIn(words);
  const file = join(import.meta.dirname, command === 'check' ? 'checkAlone.cjs' : 'run.cjs');
  const folder = folderForCode();
  const path = folder === undefined ? undefined : keptPath(folder, file, command);
  skipOptimising();
  return path === undefined ? { exports: load(file), keep: () => {} } : loadCompiled(file, path);
}

/** Whoever forbids node to keep compiled code wants none of ours either. */
function folderForCode(): string | undefined {
  return process.env.NODE_DISABLE_COMPILE_CACHE === undefined ? cacheFolder(process.env) : undefined;
}

/** What may stand in the name of a file. */
function commandIn([first = '']: readonly string[]): string {
  return /^[a-z]+$/.test(first) ? first : 'tenths';
}

/** A file of the bundle that most runs never load. */
function besideThis<Exports>(file: string): Exports {
  const { createRequire } = process.getBuiltinModule('node:module');
  return createRequire(join(import.meta.dirname, file))(`./${file}`);
}

// Node's own modules come compiled, for V8's own options alone: those that a call will need are loaded before these change.

function asksGit(word: string): boolean {
  return word === 'diff' || /^--(?:since|at|history|staged)\b/.test(word);
}

function mayTakeKeptResults([command, ...rest]: readonly string[]): boolean {
  return (command === 'check' || command === 'report') && !rest.includes('--no-cache');
}

/** Undefined where somebody has removed it. */
function folderHere(): string | undefined {
  try {
    return process.cwd();
  } catch {
    return undefined;
  }
}

async function reported(carryOut: () => number | Promise<number>): Promise<number> {
  try {
    return await carryOut();
  } catch (error) {
    printTrouble(troubleLines(error));
    return 2;
  }
}

/** Where trouble cannot be told either, the exit code alone says it. */
function printTrouble(lines: readonly string[]): void {
  try {
    standardStream(2).write(writtenLines(lines));
  } catch (error) {
    if (!(error instanceof CannotWrite)) throw error;
  }
}

/** What no command expects is a fault of the program's, not of its user's; but a disk may fail at any call. */
function troubleLines(error: unknown): readonly string[] {
  const { message, stack } = error instanceof Error ? error : new Error(String(error));
  if (error instanceof CannotWrite) return [`tenths: ${message}`];
  const trouble = systemTrouble(error);
  if (trouble !== undefined) return [`tenths: ${trouble}`, '        mend that, then call again'];
  const reported = `tenths: this is a bug of ours: ${message}, please report it`;
  return process.env.TENTHS_DEBUG === undefined ? [reported] : [reported, ...(stack ?? '').split('\n')];
}
