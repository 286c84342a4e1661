import { isSame } from '../../compare/diff.ts';
import { DIFF_FORMATS } from '../../output/diff/formats/index.ts';
import { OpenedOnce } from '../../shell/discover/openedOnce.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/printFormats.ts';
import { engineNamed } from '../shop/resolveShop.ts';
import { Revisions } from '../shop/revisions.ts';
import { workTreeSource } from '../shop/shopSource.ts';
import type { Compared } from './compared.ts';
import { isRevisionAlone, readDiffCall } from './diffCall.ts';
import { comparePart } from './diffPart.ts';
import { compareRevisions } from './diffRevisions.ts';
import { compareSessions, mayBeSessions } from './diffSessions.ts';

export interface DiffOptions {
  readonly engine?: string | undefined;
  /** A mark: two sittings of its part are compared. */
  readonly part?: string | undefined;
  readonly all: boolean;
  readonly exitCode: boolean;
  readonly format: readonly FormatChoice[];
}

/** Compares two sessions, or two revisions; the exit code, 1 for a difference only where it was asked for. */
export async function diff(words: readonly string[], options: DiffOptions, world: World): Promise<number> {
  const compared =
    options.part === undefined ? comparedOf(words, options, world) : comparePart(words, options.part, world);
  const isDifferent = compared.engines.some((each) => !isSame(each.diff));
  const exit = compared.hasProblems ? 2 : options.exitCode && isDifferent ? 1 : 0;
  await printFormats(DIFF_FORMATS, options.format, { ...compared, exit, all: options.all }, world);
  return exit;
}

function comparedOf(words: readonly string[], options: DiffOptions, world: World): Compared {
  const opened = world.opened ?? new OpenedOnce();
  const source = workTreeSource(world, opened);
  const revisions = new Revisions(world);
  if (words.length > 1 && words.some(isRevisionAlone)) revisions.findTogether(words.slice(0, 2));
  const isRevision = (word: string): boolean => revisions.find(word) !== undefined;
  const call = readDiffCall(words, options.engine, source, isRevision);
  // Otherwise what a session is called comes first: a branch may have the name of a stage.
  const areRevisions = [call.a, call.b].some(
    (word) => word !== undefined && isRevisionAlone(word) && isRevision(word),
  );
  const sessions = areRevisions ? undefined : compareSessions(call, source, world);
  // Of an engine that is not there, or of one among several, nothing is a session: that is what to tell, unless git knows the words.
  const isOfEngine = call.engine !== undefined || mayBeSessions(call, source);
  if (sessions === undefined && isOfEngine && revisions.find(call.a) === undefined)
    engineNamed(call.engine, world, source);
  return sessions ?? compareRevisions(call, { source, revisions, opened }, options, world);
}
