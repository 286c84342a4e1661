import { conflictsOf } from '../../compare/parts/conflicts.ts';
import { type MarkedPart, markedParts, ofShelf, type ShelfPart } from '../../compare/parts/markedParts.ts';
import { isCalled, type MarkedStay } from '../../compare/parts/marks.ts';
import { measuredParts } from '../../compare/parts/measuredPart.ts';
import type { Judgeable } from '../../compare/state.ts';
import { compareText } from '../../diagnostic/place.ts';
import { partPage } from '../../output/parts/partPage.ts';
import { whereNow } from '../../output/parts/partsPage.ts';
import type { Page } from '../../output/plan/page.ts';
import type { BoardPart } from '../../output/report/board.ts';
import { addressFrom } from '../../output/report/links.ts';
import type { World } from '../../shell/world.ts';
import { shelfOf } from '../parts/shelf.ts';
import type { Shop } from '../shop/shopSource.ts';
import { partPage as pageName } from './pageNames.ts';

/** What the engines of a shop say of their parts, and what they are called. */
export interface SeenParts {
  readonly stays: readonly MarkedStay[];
  readonly engines: readonly { readonly folder: string; readonly engine: string }[];
}

/** Hands on a page of every part with a mark. Engines are read again, those of a part at a time: all of them would fill the memory. */
export function writePartPages(
  { stays, engines }: SeenParts,
  shop: Shop,
  world: World,
  write: (path: string, page: Page) => void,
): { readonly parts: readonly BoardPart[]; readonly hasProblems: boolean } {
  const judgeable = (folder: string): readonly Judgeable[] => {
    const { engine, registry } = shop.load(folder);
    return engine === undefined ? [] : [{ engine, registry }];
  };
  const called = (name: string): Judgeable | undefined =>
    engines.filter((each) => isCalled(name, each)).flatMap(({ folder }) => judgeable(folder))[0];
  const { shelf, hasProblems } = shelfOf(shop, called, world);
  const parts = groupsOf(stays, shelf).flatMap(({ folders, keys }) => {
    const own = markedParts(folders.flatMap(judgeable), shelf).filter((each) => keys.has(keyOf(each)));
    return measuredParts(own).map((part) => {
      const { name, mark } = part;
      const path = pageName(name, mark);
      write(path, partPage(part, conflictsOf(part)));
      return { name, mark, now: whereNow(part), page: addressFrom('index.html', path) };
    });
  });
  return { parts: parts.sort(byNameAndMark), hasProblems };
}

interface Group {
  readonly folders: readonly string[];
  readonly keys: Set<string>;
}

/** Parts that were in the same engines, or in none. */
function groupsOf(stays: readonly MarkedStay[], shelf: readonly ShelfPart[]): readonly Group[] {
  const folders = new Map<string, Set<string>>(shelf.map((each) => [keyOf(ofShelf(each)), new Set()]));
  for (const stay of stays) {
    const key = keyOf(stay);
    folders.set(key, (folders.get(key) ?? new Set()).add(stay.folder));
  }
  const groups = new Map<string, Group>();
  for (const [key, of] of folders) {
    const same = [...of].join('\0');
    const group = groups.get(same) ?? { folders: [...of], keys: new Set() };
    group.keys.add(key);
    groups.set(same, group);
  }
  return [...groups.values()];
}

const keyOf = ({ name, mark }: Pick<MarkedPart, 'name' | 'mark'>): string => `${name} ${mark}`;

const byNameAndMark = (a: BoardPart, b: BoardPart): number =>
  compareText(a.name, b.name) || compareText(a.mark, b.mark);
