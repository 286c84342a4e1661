import { setFlagsFromString } from 'node:v8';

/**
 * In a short run the optimising compiler costs more than it gains, and so do waiting before V8 remembers what a function
 * met, and compiling a pattern twice, for its first use and for the later ones.
 */
export const SHORT_RUN = ['--no-opt', '--no-lazy-feedback-allocation', '--no-regexp-tier-up'];

/** Called before the program is loaded. */
export function skipOptimising(): void {
  for (const option of SHORT_RUN) setFlagsFromString(option);
}

/** For a run that turns out to be a long one: full speed, and memory that does not grow with the number of engines. */
export function optimise(): void {
  setFlagsFromString('--opt');
  setFlagsFromString('--lazy-feedback-allocation');
  // Left to itself the heap may grow fourfold before it is swept, to keep what was forgotten an engine ago.
  setFlagsFromString('--heap-growing-percent=100');
  if (hasOneOptimiser) setFlagsFromString('--interrupt-budget=400000');
}

/**
 * Node 20 has but the slow compiler, which begins after 67,584 bytes of a function's code have run. At six times that it
 * has fewer functions to compile, and compiles fewer of them anew. Later nodes have a quick one, and no such option.
 */
const hasOneOptimiser = process.versions.v8.startsWith('11.');
