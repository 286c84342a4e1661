import type { Finding } from '../../checks/finding.ts';
import { deletedFile } from '../../checks/findings/files.ts';
import type { Row } from '../../checks/judge/row.ts';
import { latestRun } from '../../checks/state/run.ts';
import { standingRows } from '../../checks/state/state.ts';
import { takenWith } from '../../compare/instruments/taken.ts';
import { folderOf, isAtOrAbove } from '../../documents/opened.ts';
import type { Kind } from '../../documents/schema/kinds.ts';
import { plural } from '../../quantity/words.ts';
import { kindIn } from '../../shell/discover/store.ts';
import type { Shop } from '../shop/shopSource.ts';

/** A shop before documents were deleted, and after. */
export interface Deletion {
  readonly before: Shop;
  readonly after: Shop;
}

/** What deleted documents leave without what it stands on. Paths are relative to the shop. */
export const leftWithout = (deleted: readonly string[], shops: Deletion): readonly Finding[] =>
  deleted.flatMap((path) => {
    const kind = kindIn(shops.before.store, path);
    const lost = kind === undefined ? undefined : LOST.get(kind)?.(path, shops);
    return lost === undefined ? [] : [deletedFile(shops.after.store.shown(path), lost)];
  });

/** Documents that are still there, and that lay in the folder of an engine whose own document is deleted. */
export const withoutEngine = (deleted: readonly string[], { before, after }: Deletion): readonly string[] =>
  deleted
    .filter((path) => kindIn(before.store, path) === 'engine')
    .flatMap((path) => after.store.list([folderOf(path)]))
    .filter((path) => kindIn(after.store, path) !== undefined)
    .filter((path) => after.loader.engineAround(folderOf(path)) === undefined);

type Lost = (path: string, shops: Deletion) => string | undefined;

/** A torque document and what limits extend are named by those that stand on them: that is a problem of its own. */
const LOST: ReadonlyMap<string, Lost> = new Map(
  Object.entries<Lost>({
    engine: (path, shops) => {
      const left = withoutEngine([path], shops).length;
      return left === 0 ? undefined : `${plural(left, 'document')} of its folder ${have(left)} no engine`;
    },
    limits: (path, shops) => {
      const readings = sum(served(path, shops), (engine) => limitedBy(path, engine, shops));
      return readings === 0
        ? undefined
        : `${plural(readings, 'reading')} ${have(readings)} no limits any more`;
    },
    instruments: (path, shops) => {
      const readings = sum(served(path, shops), (engine) => takenBy(path, engine, shops));
      const were = readings === 1 ? 'was' : 'were';
      return readings === 0
        ? undefined
        : `${plural(readings, 'reading')} ${were} taken with instruments that no register has any more`;
    },
    shop: (path, shops) => {
      const engines = served(path, shops).filter((engine) => !hasShop(engine, shops.after)).length;
      return engines === 0
        ? undefined
        : `${plural(engines, 'engine')} ${have(engines)} none of the units, rules and grids that it may state`;
    },
  } satisfies Partial<Record<Kind, Lost>>),
);

const have = (count: number): string => (count === 1 ? 'has' : 'have');

const sum = (engines: readonly string[], of: (engine: string) => number): number =>
  engines.reduce((total, engine) => total + of(engine), 0);

/** The engines that a document served and that are still there. */
function served(path: string, { before, after }: Deletion): readonly string[] {
  const around = before.loader.engineAround(folderOf(path));
  return after.loader
    .find({ folders: ['.'] })
    .engines.filter((engine) =>
      around === undefined ? isAtOrAbove(folderOf(path), engine) : engine === around,
    );
}

/** How many values an engine stands with that had limits of that document, and now have none. */
function limitedBy(path: string, folder: string, { before, after }: Deletion): number {
  const now = new Set(standing(folder, after).filter(isLimited).map(keyOf));
  const shown = before.store.shown(path);
  return standing(folder, before).filter((row) => limitPaths(row).includes(shown) && !now.has(keyOf(row)))
    .length;
}

function standing(folder: string, shop: Shop): readonly Row[] {
  const { engine, registry } = shop.load(folder);
  const rows = engine && standingRows(engine, registry, latestRun(engine.sessions))?.rows;
  return (rows ?? []).filter(({ routes }) => routes.length > 0);
}

const limitPaths = ({ limits: { inForce } }: Row): readonly string[] =>
  Object.values(inForce.bands).flatMap(({ min, max }) =>
    [min, max].flatMap((each) => each?.place.path ?? []),
  );

const isLimited = (row: Row): boolean => limitPaths(row).length > 0;

const keyOf = ({ characteristic, position, half }: Row): string =>
  `${characteristic.id} ${position.key} ${half ?? ''}`;

/** How many places were read with instruments that only that register had. */
function takenBy(path: string, folder: string, { before, after }: Deletion): number {
  const { engine } = after.load(folder);
  const was = before.load(folder).engine;
  if (engine === undefined || was === undefined) return 0;
  const shown = before.store.shown(path);
  return [...was.instruments]
    .filter(([id, { place }]) => place.path === shown && !engine.instruments.has(id))
    .flatMap(([instrument]) => takenWith(engine, { instrument, has: () => true }))
    .reduce((total, { positions }) => total + positions.length, 0);
}

const hasShop = (engine: string, { store }: Shop): boolean =>
  store.list(['.']).some((path) => kindIn(store, path) === 'shop' && isAtOrAbove(folderOf(path), engine));
