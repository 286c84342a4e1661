import { cpSync, mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runHere } from './line.ts';
import type { Ran } from './program.ts';

/** One command of a transcript, and what it is said to do. */
export interface Step {
  /** Lines that begin with `# ` before the command. */
  readonly remarks: readonly string[];
  readonly command: string;
  /** Output as it is written down; stderr with `! ` before each line, `[exit N]` last. */
  readonly told: readonly string[];
}

/** Where the exit code is written: in a case always, in a document only where it is not 0. */
export type ExitCodes = 'always' | 'unless 0';

/** Stands for any number of lines, so that a document need not show all. */
const ANYTHING = '…';

/** Reads `$ …` lines with what follows each. Throws on text that belongs to no command. */
export function stepsOf(text: string): readonly Step[] {
  const steps: { remarks: string[]; command: string; told: string[] }[] = [];
  let remarks: string[] = [];
  for (const line of text.trimEnd().split('\n')) {
    const step = steps.at(-1);
    const isBetween = step === undefined || /^\[exit \d+\]$/.test(step.told.at(-1) ?? '');
    if (line.startsWith('$ ')) {
      steps.push({ remarks, command: line.slice(2), told: [] });
      remarks = [];
    } else if (isBetween && (line === '' || line.startsWith('# '))) {
      if (line !== '') remarks.push(line);
    } else if (step === undefined || isBetween) throw new Error(`no command gives this line: ${line}`);
    else step.told.push(line);
  }
  return steps.map((step) => ({ ...step, told: withoutBlankEnd(step.told) }));
}

function withoutBlankEnd(lines: readonly string[]): readonly string[] {
  const last = lines.findLastIndex((line) => line !== '');
  return lines.slice(0, last + 1);
}

export const transcript = (steps: readonly Step[]): string =>
  `${steps.map(({ remarks, command, told }) => [...remarks, `$ ${command}`, ...told].join('\n')).join('\n\n')}\n`;

/** The steps as they really go, carried out one after another. What was told and still holds stays as it was written. */
export async function carryOut(
  steps: readonly Step[],
  folder: string,
  exitCodes: ExitCodes,
): Promise<readonly Step[]> {
  const done: Step[] = [];
  for (const step of steps) {
    refuseOthers(step.command);
    const lines = linesOf(await runHere(step.command, { cwd: folder }), exitCodes).map((line) =>
      line.replaceAll(folder, '/shop'),
    );
    done.push({ ...step, told: holds(step.told, lines) ? step.told : lines });
  }
  return done;
}

/** What stands in a shop, and a few programs that put a shop into the state a case is about. */
const PROGRAMS = /^(?:[A-Z_]+=\S* )*(?:tenths|cat|cp|git|ln|mkdir|mkfifo|mv|printf|rm|sed|chmod)\b/;

function refuseOthers(command: string): void {
  if (!PROGRAMS.test(command)) throw new Error(`a transcript does not run this: ${command}`);
}

function linesOf({ stdout, stderr, exitCode }: Ran, exitCodes: ExitCodes): readonly string[] {
  const lines = (text: string): readonly string[] => (text === '' ? [] : text.replace(/\n$/, '').split('\n'));
  return [
    ...withoutBlankEnd(lines(stdout)),
    ...lines(stderr).map((line) => `! ${line}`.trimEnd()),
    ...(exitCodes === 'unless 0' && exitCode === 0 ? [] : [`[exit ${exitCode ?? 'killed'}]`]),
  ];
}

/** Whether lines are as told, where `…` alone on a line stands for any number of them. */
export function holds(told: readonly string[], lines: readonly string[]): boolean {
  const [first, ...rest] = told;
  if (first === undefined) return lines.length === 0;
  if (first === ANYTHING) return lines.some((_, from) => holds(rest, lines.slice(from))) || holds(rest, []);
  return lines[0] === first && holds(rest, lines.slice(1));
}

/** Does something in a copy of a folder, or in an empty one, where nothing above it is a shop or a repository. */
export async function inCopyOf<Result>(
  folder: string | undefined,
  act: (copy: string) => Promise<Result>,
): Promise<Result> {
  const copy = realpathSync(mkdtempSync(join(tmpdir(), 'tenths-shop-')));
  try {
    if (folder !== undefined) cpSync(folder, copy, { recursive: true, verbatimSymlinks: true });
    return await act(copy);
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
}

/** `TENTHS_UPDATE=1 npm test` writes down what the commands did, for a person to read. */
export const isUpdating = process.env.TENTHS_UPDATE === '1';
