import { setFlagsFromString } from 'node:v8';

/**
 * For a short run: the optimising compiler would cost more than it gains, and so does to wait until a function is called
 * for the eighth time before what it meets is remembered. Called before the program is loaded.
 */
export function skipOptimising(): void {
  setFlagsFromString('--no-opt');
  setFlagsFromString('--no-lazy-feedback-allocation');
}

/** For a run that turns out to be a long one: full speed, and memory that does not grow with the number of engines. */
export function optimise(): void {
  setFlagsFromString('--opt');
  setFlagsFromString('--lazy-feedback-allocation');
  // Left to itself the heap may grow fourfold before it is swept, to keep what was forgotten an engine ago.
  setFlagsFromString('--heap-growing-percent=100');
}
