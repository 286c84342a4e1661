import type { Origin } from '../../output/report/facts.ts';
import type { Revision } from '../../shell/git/commitFiles.ts';
import { dayOfCommit } from '../../shell/git/git.ts';
import { repositoryAround } from '../../shell/git/repository.ts';
import type { World } from '../../shell/world.ts';
import { orUsage } from '../usage.ts';

/** The commit that was asked for, with its own date: nothing of a sheet comes from the clock. */
export function originAt(revision: Revision | undefined, world: World): Origin {
  if (revision === undefined) return { commit: undefined };
  const { place } = orUsage(repositoryAround('.', world));
  return { commit: { ...revision, date: orUsage(dayOfCommit(place, revision.commit)) } };
}
