import { isCalled, type ShelfPart } from '../../compare/parts/markedParts.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import { openDocument } from '../../documents/opened.ts';
import { readShelfPart } from '../../documents/parts/shelfPart.ts';
import { diagnosticsLines } from '../../output/check/runText.ts';
import { writtenLines } from '../../output/escape/line.ts';
import { kindIn } from '../../shell/discover/store.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import type { OpenedShop } from '../shop/everyEngine.ts';

/** The parts of a shop that have documents of their own; what is wrong with one is reported on stderr. */
export function shelfOf(
  { shop, engines }: OpenedShop,
  world: World,
): { readonly shelf: readonly ShelfPart[]; readonly hasProblems: boolean } {
  const { store } = shop;
  const problems: Diagnostic[] = [];
  const texts = new Map<string, string>();
  const shelf = store
    .list(['.'])
    .filter((path) => kindIn(store, path) === 'part')
    .flatMap((path) => {
      const bytes = store.read(path);
      if (!bytes.ok) return [];
      const opened = openDocument(path, store.shown(path), bytes.value);
      texts.set(opened.source.path, opened.source.text);
      problems.push(...opened.problems);
      if (opened.problems.length > 0) return [];
      const called = (name: string) => engines.find((each) => isCalled(name, each));
      return readShelfPart(opened, called, problems) ?? [];
    });
  world.err.write(
    writtenLines(diagnosticsLines(problems, texts, textStyle(world.err, world.environment, true))),
  );
  const broken = new Set(problems.map(({ place }) => place.path));
  return { shelf: shelf.filter(({ place }) => !broken.has(place.path)), hasProblems: problems.length > 0 };
}
