import { registryWith } from '../../characteristics/registry.ts';
import type { ShelfPart } from '../../compare/parts/markedParts.ts';
import { type CameOut, isCalled } from '../../compare/parts/marks.ts';
import type { Judgeable } from '../../compare/state.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import type { Engine } from '../../documents/assemble.ts';
import { type OpenedDocument, openDocument } from '../../documents/opened.ts';
import { readShelfPart } from '../../documents/parts/shelfPart.ts';
import { wordsOf } from '../../layout/part.ts';
import { diagnosticsLines } from '../../output/check/runText.ts';
import { writtenLines } from '../../output/escape/line.ts';
import { kindIn } from '../../shell/discover/store.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import { enginesNamed } from '../shop/enginesNamed.ts';
import type { OpenedShop } from '../shop/everyEngine.ts';
import type { Shop } from '../shop/shopSource.ts';

/** The parts of a shop that have documents of their own; what is wrong with one is reported on stderr. */
export function shelfOf(
  shop: Shop,
  called: (name: string) => Judgeable | undefined,
  world: World,
): { readonly shelf: readonly ShelfPart[]; readonly hasProblems: boolean } {
  const problems: Diagnostic[] = [];
  const texts = new Map<string, string>();
  const shelf = partDocuments(shop).flatMap((opened) => {
    texts.set(opened.source.path, opened.source.text);
    problems.push(...opened.problems);
    if (opened.problems.length > 0) return [];
    return readShelfPart(opened, called, problems) ?? [];
  });
  world.err.write(
    writtenLines(diagnosticsLines(problems, texts, textStyle(world.err, world.environment, true))),
  );
  const broken = new Set(problems.map(({ place }) => place.path));
  return { shelf: shelf.filter(({ place }) => !broken.has(place.path)), hasProblems: problems.length > 0 };
}

/** The engine of a name among those of a shop. */
export const calledIn =
  (engines: readonly Judgeable[]) =>
  (name: string): Judgeable | undefined =>
    engines.find(({ engine: { document, folder } }) => isCalled(name, { engine: document.name, folder }));

/** A shop's engines, and what was read outside of any as if each part were one by itself. */
export function withBench(
  opened: OpenedShop,
  world: World,
): OpenedShop & { readonly all: readonly Judgeable[] } {
  const { shelf, hasProblems } = shelfOf(opened.shop, calledIn(opened.engines), world);
  const outside = shelf.flatMap(({ name, mark, bench }) => {
    if (bench === undefined) return [];
    const { engine, registry } = bench;
    const document = { ...engine.document, name: `${name} ${mark}, in no engine`, job: NO_JOB };
    return [{ engine: { ...engine, document }, registry }];
  });
  return { ...opened, all: [...opened.engines, ...outside], hasProblems: opened.hasProblems || hasProblems };
}

const NO_JOB: Engine['document']['job'] = {
  number: undefined,
  customer: undefined,
  serial: undefined,
  delivered: undefined,
};

export const partDocuments = (shop: Shop): readonly OpenedDocument[] =>
  shop.store.list(['.']).flatMap((path) => partAt(path, shop) ?? []);

function partAt(path: string, { store }: Shop): OpenedDocument | undefined {
  const bytes = kindIn(store, path) === 'part' ? store.read(path) : undefined;
  return bytes?.ok === true ? openDocument(path, store.shown(path), bytes.value) : undefined;
}

/** What is wrong with a part's document beyond its own schema: its readings are those of an engine that it fits. */
export function partProblems(path: string, shop: Shop): readonly Diagnostic[] {
  const opened = partAt(path, shop);
  if (opened === undefined || opened.problems.length > 0) return [];
  const problems: Diagnostic[] = [];
  const { engines } = shop.loader.find({ folders: ['.'] });
  readShelfPart(
    opened,
    (name) => {
      const [folder] = enginesNamed(name, shop, engines);
      const { engine, registry } = folder === undefined ? NOT_THERE : shop.load(folder);
      return engine && registry && { engine, registry };
    },
    problems,
  );
  return problems;
}

const NOT_THERE = { engine: undefined, registry: undefined };

/** What the documents of parts say of engines that they left; by the words that engines use for parts. */
export function cameOutIn(shop: Shop): readonly CameOut[] {
  const { parts } = registryWith([]);
  return partDocuments(shop).flatMap((opened) => {
    const part = opened.problems.length > 0 ? undefined : readShelfPart(opened, () => undefined, []);
    const known = parts.all.find((each) => wordsOf(each).includes(part?.name.toLowerCase() ?? ''));
    return (part?.from ?? []).map(({ engine, date }) => ({
      name: known?.label ?? part?.name ?? '',
      mark: part?.mark ?? '',
      engine,
      date,
    }));
  });
}
