import type { Outcome } from '../shell/problem.ts';

/** The words of a call that cannot be carried out: told on stderr, with exit code 2. */
export class UsageError extends Error {
  readonly help: string | undefined;

  constructor(message: string, help?: string) {
    super(message);
    this.help = help;
  }
}

/** What went wrong and what to do about it, as it is reported on stderr. */
export const problemLines = ({ message, help }: ReportedProblem): readonly string[] => [
  `tenths: ${message}`,
  ...(help === undefined ? [] : [`        ${help}`]),
];

interface ReportedProblem {
  readonly message: string;
  readonly help?: string | undefined;
}

/** What the shell was asked for; where it could not, that ends the call. */
export function orUsage<Value>(outcome: Outcome<Value>): Value {
  if (outcome.ok) return outcome.value;
  throw new UsageError(outcome.problem.message, outcome.problem.help);
}

/** The engine of a call: behind `--engine`, or the last word. */
export function onlyOneEngine(word: string | undefined, option: string | undefined): string | undefined {
  if (word !== undefined && option !== undefined) {
    throw new UsageError(`the engine is named twice: ${word} and --engine ${option}`, 'name it once');
  }
  return option ?? word;
}
