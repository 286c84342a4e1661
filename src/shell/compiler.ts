import { setFlagsFromString } from 'node:v8';

/** For a short run: the optimising compiler would cost more than it gains. Called before the program is loaded. */
export const skipOptimising = (): void => setFlagsFromString('--no-opt');

/** For a run that turns out to be a long one. */
export const optimise = (): void => setFlagsFromString('--opt');
