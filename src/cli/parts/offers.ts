import type { Registry } from '../../characteristics/registry.ts';
import { markedParts } from '../../compare/parts/markedParts.ts';
import { isCalled } from '../../compare/parts/marks.ts';
import { type BenchedPart, offeredTo } from '../../compare/parts/offered.ts';
import type { Judgeable } from '../../compare/state.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import type { OpenedDocument } from '../../documents/opened.ts';
import { NO_OFFERS, type NotOffered, type OfferedParts } from '../../documents/parts/offeredPart.ts';
import { type Bench, readShelfPart } from '../../documents/parts/shelfPart.ts';
import type { EngineFolder } from '../shop/resolveShop.ts';
import type { Shop } from '../shop/shopSource.ts';
import { partDocuments } from './shelf.ts';

/** What lies on the shelves of a shop for one of its engines, which may be as an earlier session left it. */
export function offersFor({ shop, folder }: EngineFolder, of: Judgeable): OfferedParts {
  const documents = partDocuments(shop);
  if (documents.length === 0) return NO_OFFERS;
  const { engines, unread } = everyOther(shop, folder);
  const all = [of, ...engines];
  const read = documents.map((opened) => benchedIn(opened, of, all));
  const benched = read.flatMap((each) => ('marked' in each ? each : []));
  const broken = read.flatMap((each) => ('why' in each ? each : []));
  const { offered, notOffered } = offeredTo(of, benched);
  return { offered, notOffered: [...notOffered, ...broken, ...(offered.length > 0 ? unread : [])] };
}

/** Read without a word: `tenths check` tells what is wrong with other engines. */
function everyOther(
  shop: Shop,
  folder: string,
): { readonly engines: readonly Judgeable[]; readonly unread: readonly NotOffered[] } {
  const others = shop.loader.find({ folders: ['.'] }).engines.filter((each) => each !== folder);
  const read = others.map((each) => ({ each, ...shop.load(each) }));
  return {
    engines: read.flatMap(({ engine, registry }) => (engine === undefined ? [] : [{ engine, registry }])),
    unread: read
      .filter(({ engine }) => engine === undefined)
      .map(({ each }) => ({
        called: each,
        why: 'its documents cannot be read: what is fitted there is not known',
      })),
  };
}

/** With the first engine that it fits it is read as it was written, with this one as it would be in it. */
function benchedIn(
  opened: OpenedDocument,
  of: Judgeable,
  all: readonly Judgeable[],
): BenchedPart | NotOffered | readonly never[] {
  const problems: Diagnostic[] = [...opened.problems];
  const called = (name: string): Judgeable | undefined =>
    all.find(({ engine }) => isCalled(name, { engine: engine.document.name, folder: engine.folder }));
  const shelf = readShelfPart(opened, called, problems);
  const isForIt = shelf?.fits.some((name) => called(name) === of) ?? false;
  const [problem] = problems;
  if (problem !== undefined && (isForIt || shelf === undefined))
    return { called: opened.source.path, why: problem.message };
  if (shelf === undefined || !isForIt) return [];
  const marked = markedParts(all, [shelf]).find((each) => each.shelf === shelf);
  return marked === undefined ? [] : { marked, shelf, bench: benchOf(opened, of, shelf.bench) };
}

/** Plain numbers of its document are in the units of the first engine that it fits. */
function benchOf(
  opened: OpenedDocument,
  { engine, registry }: Judgeable,
  first: Bench<Registry> | undefined,
): BenchedPart['bench'] {
  if (first === undefined) return '`fits:` names no engine of this shop';
  const problems: Diagnostic[] = [];
  const isIt = (name: string): boolean =>
    isCalled(name, { engine: engine.document.name, folder: engine.folder });
  const served = { engine: { ...engine, units: first.engine.units }, registry };
  const read = readShelfPart(opened, (name) => (isIt(name) ? served : undefined), problems);
  return problems[0]?.message ?? read?.bench ?? 'its document cannot be read';
}
