import type { EngineDiff } from '../../compare/diff.ts';
import type { Sides } from '../../output/diff/diffText.ts';

/** What a comparison came to. */
export interface Compared {
  readonly sides: Sides;
  readonly engines: readonly EngineDiff[];
  /** A document has a problem, which was told on stderr: something may be missing. */
  readonly hasProblems: boolean;
}
