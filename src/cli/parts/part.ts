import { conflictsOf } from '../../compare/parts/conflicts.ts';
import { type MarkedPart, markedParts } from '../../compare/parts/markedParts.ts';
import { measuredPart } from '../../compare/parts/measuredPart.ts';
import { nearest } from '../../diagnostic/suggestion.ts';
import { partPage } from '../../output/parts/partPage.ts';
import { partsPage } from '../../output/parts/partsPage.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printPages } from '../page/printPages.ts';
import { openShop } from '../shop/everyEngine.ts';
import { UsageError } from '../usage.ts';
import { shelfOf } from './shelf.ts';

export interface PartOptions {
  readonly at?: string | undefined;
  readonly format: readonly FormatChoice[];
}

/** Prints all parts with a mark, or everything known of one; the exit code. */
export function part(mark: string | undefined, options: PartOptions, world: World): number {
  const { parts, hasProblems } = partsOfShop(options.at, world);
  const exit = hasProblems ? 2 : 0;
  const pages =
    mark === undefined
      ? [partsPage(parts, parts.map(measuredPart).flatMap(conflictsOf))]
      : partsMarked(mark, parts).map((each) => {
          const measured = measuredPart(each);
          return partPage(measured, conflictsOf(measured));
        });
  return printPages('part', () => pages, { format: options.format, exit }, world);
}

export function partsOfShop(
  at: string | undefined,
  world: World,
): { readonly parts: readonly MarkedPart[]; readonly hasProblems: boolean } {
  const opened = openShop(at, world);
  const { shelf, hasProblems } = shelfOf(opened, world);
  return { parts: markedParts(opened.engines, shelf), hasProblems: opened.hasProblems || hasProblems };
}

/** Parts of several kinds may have one mark. */
export function partsMarked(mark: string, parts: readonly MarkedPart[]): readonly MarkedPart[] {
  const found = parts.filter((each) => each.mark === mark || `${each.name} ${each.mark}` === mark);
  if (found.length > 0) return found;
  const meant = nearest(
    mark,
    parts.map((each) => each.mark),
  );
  throw new UsageError(
    `no part is marked ${mark}`,
    meant === undefined ? 'tenths part lists those that are' : `did you mean ${meant}?`,
  );
}
