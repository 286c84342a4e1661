import type { Comparison } from '../comparison.ts';

export interface ShownDiff extends Comparison {
  readonly exit: 0 | 1 | 2;
  /** Also what is the same. */
  readonly all: boolean;
}
