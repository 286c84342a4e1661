import type { ComparedState, EngineDiff, NotCompared } from '../../compare/diff.ts';
import { shortCommit } from './revision.ts';

/** The two sides of a comparison. */
export interface Sides {
  readonly a: ComparedState;
  readonly b: ComparedState;
}

/** What a comparison came to. */
export interface Comparison {
  readonly sides: Sides;
  readonly engines: readonly EngineDiff[];
  readonly notCompared: readonly NotCompared[];
}

/** `teardown 2026-02-03 → rebuild 2026-03-14`; revisions with their commits. */
export const sidesText = ({ a, b }: Sides): string => `${sideName(a)} → ${sideName(b)}`;

const sideName = ({ name, commit }: ComparedState): string =>
  commit === null || commit.startsWith(name) ? name : `${name} (${shortCommit({ commit })})`;

export const notComparedText = ({ path, sides }: NotCompared): string =>
  `${path}: not compared, since a document has a problem in ${sides.map(({ name }) => name).join(' and in ')}`;
