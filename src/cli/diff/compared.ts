import type { Comparison } from '../../output/diff/comparison.ts';

/** What a comparison came to. */
export interface Compared extends Comparison {
  /** A document has a problem, which was told on stderr: something may be missing. */
  readonly hasProblems: boolean;
}
