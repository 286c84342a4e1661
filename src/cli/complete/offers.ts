import { STAGES } from '../../documents/session/stage.ts';
import { discover } from '../../shell/discover/discover.ts';
import { kindOf } from '../../shell/discover/kindOf.ts';
import { shopRoot } from '../../shell/discover/root.ts';
import type { World } from '../../shell/world.ts';
import type { Offer } from './offer.ts';

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

/** What a film is worked out from. */
export async function bearingNames(): Promise<readonly Offer[]> {
  const { BEARING_KINDS } = await import('../../oiling/bearingKind.ts');
  return BEARING_KINDS.map(({ measure, plural }) => ({ word: measure, means: plural }));
}

export async function measureNames(): Promise<readonly Offer[]> {
  const { characteristics } = await import('../../characteristics/registry.ts');
  const { ALSO_CALLED, idsCalled } = await import('../../documents/alsoCalled.ts');
  const others = characteristics.flatMap(({ id, label }) =>
    (ALSO_CALLED[id] ?? [])
      .filter((name) => idsCalled(name).length === 1)
      .map((name) => ({ word: name.replaceAll(/[\s-]/g, '_'), means: label })),
  );
  return [...characteristics.map(({ id, label }) => ({ word: id, means: label })), ...others];
}

/** Of the characteristic among the words; on the engine among them, else on all of the shop. */
export async function positionNamesFor(words: readonly string[], world: World): Promise<readonly Offer[]> {
  const { positionNames } = await import('./positions.ts');
  const all = engineDocuments(world);
  const meant = all.filter((path) => words.some((word) => isOf(folderOf(path), word)));
  return positionNames(words, meant.length > 0 ? meant : all, shopRoot(world.workingDirectory));
}

const isOf = (folder: string, word: string): boolean =>
  folder === word.replace(/\/$/, '') || folder.endsWith(`/${word}`);

const engineFolders = (world: World): readonly string[] =>
  [...new Set(engineDocuments(world).map(folderOf))].filter((folder) => folder !== '');

const folderOf = (path: string): string => path.replace(/\/?[^/]*$/, '');

function engineDocuments({ workingDirectory }: World): readonly string[] {
  const root = shopRoot(workingDirectory);
  return discover(root, ['.']).paths.filter((path) => kindOf(root, path) === 'engine');
}
