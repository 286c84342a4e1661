import { STAGES } from '../../documents/session/stage.ts';
import { discover } from '../../shell/discover/discover.ts';
import { kindOf } from '../../shell/discover/kindOf.ts';
import { shopRoot } from '../../shell/discover/root.ts';
import type { World } from '../../shell/world.ts';

/** A word that may be typed, and what it means. */
export interface Offer {
  readonly word: string;
  readonly means: string;
}

export const stageNames: readonly Offer[] = STAGES.map((word) => ({
  word,
  means: 'the latest of this stage',
}));

/** Folders' names of the shop's engines, found by a look at the head of each file. */
export const engineNames = (world: World): readonly Offer[] =>
  engineFolders(world).map((folder) => ({ word: folder.slice(folder.lastIndexOf('/') + 1), means: folder }));

/** Names of sessions of every engine, the latest first. */
export function sessionNames(world: World): readonly Offer[] {
  const root = shopRoot(world.workingDirectory);
  return engineFolders(world)
    .flatMap((folder) =>
      discover(root, [folder])
        .paths.filter((path) => kindOf(root, path) === 'session')
        .map((path) => ({ word: path.replace(/^.*\//, '').replace(/\.ya?ml$/, ''), means: folder })),
    )
    .sort((a, b) => (a.word < b.word ? 1 : -1));
}

export async function measureNames(): Promise<readonly Offer[]> {
  const { characteristics } = await import('../../characteristics/registry.ts');
  return characteristics.map(({ id, label }) => ({ word: id, means: label }));
}

function engineFolders({ workingDirectory }: World): readonly string[] {
  const root = shopRoot(workingDirectory);
  const { paths } = discover(root, ['.']);
  const folders = paths
    .filter((path) => kindOf(root, path) === 'engine')
    .map((path) => path.replace(/\/?[^/]*$/, ''));
  return [...new Set(folders)].filter((folder) => folder !== '');
}
