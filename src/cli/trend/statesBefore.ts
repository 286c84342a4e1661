import type { PastState } from '../../compare/past.ts';
import { shortCommit } from '../../output/diff/revision.ts';
import { writtenLines } from '../../output/escape/line.ts';
import type { Revision } from '../../shell/git/commitFiles.ts';
import type { World } from '../../shell/world.ts';
import type { EngineFolder } from '../shop/resolveShop.ts';
import { pastStates } from './pastStates.ts';

/** What earlier commits held; what could not be looked at is reported on stderr. */
export function statesBefore(
  found: EngineFolder,
  revision: Revision | undefined,
  world: World,
): readonly PastState[] {
  const { states, notJudged, isCutShort } = pastStates(found, revision, world);
  if (notJudged.length > 0) {
    const commits = notJudged.map((each) => `${shortCommit(each)} of ${each.date}`).join(', ');
    world.err.write(writtenLines([`tenths: left out, as the engine cannot be judged there: ${commits}`]));
  }
  if (isCutShort) {
    const said =
      'this is a shallow clone, whose history was cut short: git fetch --unshallow fetches the rest';
    world.err.write(writtenLines([`tenths: ${said}`]));
  }
  return states;
}
