import { conflictsOf } from '../../compare/parts/conflicts.ts';
import { type HeldBefore, heldBefore } from '../../compare/parts/heldBefore.ts';
import { type MarkedPart, markedParts } from '../../compare/parts/markedParts.ts';
import { type MeasuredPart, measuredParts } from '../../compare/parts/measuredPart.ts';
import type { PastState } from '../../compare/past.ts';
import { nearest } from '../../diagnostic/suggestion.ts';
import { PAGES_FORMATS } from '../../output/pages/formats/index.ts';
import { partPage } from '../../output/parts/partPage.ts';
import { partsPage } from '../../output/parts/partsPage.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/printFormats.ts';
import { type OpenedShop, openShop } from '../shop/everyEngine.ts';
import type { EngineFolder } from '../shop/resolveShop.ts';
import { statesBefore } from '../trend/statesBefore.ts';
import { UsageError } from '../usage.ts';
import { calledIn, shelfOf } from './shelf.ts';

export interface PartOptions {
  readonly at?: string | undefined;
  readonly format: readonly FormatChoice[];
  /** What earlier commits held as well. */
  readonly history?: boolean | undefined;
}

/** Prints all parts with a mark, or everything known of one; the exit code. */
export async function part(mark: string | undefined, options: PartOptions, world: World): Promise<number> {
  const opened = partsOfShop(options.at, world);
  const { parts, hasProblems } = opened;
  if (mark === undefined && options.history === true)
    throw new UsageError('earlier commits are looked at for one part', 'tenths part MARK --history');
  const exit = hasProblems ? 2 : 0;
  const pages =
    mark === undefined
      ? [partsPage(parts, measuredParts(parts).flatMap(conflictsOf))]
      : measuredParts(partsMarked(mark, parts)).map((measured) => {
          const held = options.history === true ? heldOf(measured, opened, world) : undefined;
          return partPage(measured, conflictsOf(measured), held);
        });
  await printFormats(PAGES_FORMATS, options.format, { name: 'part', pagesFor: () => pages, exit }, world);
  return exit;
}

interface OpenedParts extends OpenedShop {
  readonly parts: readonly MarkedPart[];
}

/** Of each engine its commits are gone through once. */
function heldOf(part: MeasuredPart, { engines, revision }: OpenedParts, world: World): readonly HeldBefore[] {
  const known = new Map<EngineFolder, readonly PastState[]>();
  return heldBefore(part, ({ engine }) => {
    const found = engines.find((each) => each.engine === engine)?.found;
    if (found === undefined) return [];
    const states = known.get(found) ?? statesBefore(found, revision, world);
    known.set(found, states);
    return states;
  });
}

export function partsOfShop(at: string | undefined, world: World): OpenedParts {
  const opened = openShop(at, world);
  const { shelf, hasProblems } = shelfOf(opened.shop, calledIn(opened.engines), world);
  return {
    ...opened,
    parts: markedParts(opened.engines, shelf),
    hasProblems: opened.hasProblems || hasProblems,
  };
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
