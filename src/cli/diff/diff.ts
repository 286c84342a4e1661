import { isSame } from '../../compare/diff.ts';
import { notComparedText, sidesText } from '../../output/diff/comparison.ts';
import { diffJson } from '../../output/diff/diffJson.ts';
import { diffMarkdown } from '../../output/diff/diffMarkdown.ts';
import { diffSheet } from '../../output/diff/diffSheet.ts';
import { diffLines } from '../../output/diff/diffText.ts';
import { json, writtenJson } from '../../output/escape/json.ts';
import type { Written } from '../../output/escape/language.ts';
import { withGaps, writtenLines } from '../../output/escape/line.ts';
import { writtenMarkdown } from '../../output/escape/markdown.ts';
import type { TextStyle } from '../../output/terminal/textStyle.ts';
import { OpenedOnce } from '../../shell/discover/openedOnce.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { htmlPages } from '../format/htmlPages.ts';
import { printFormats } from '../format/outputs.ts';
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
  const html = await htmlPages(options.format);
  const compared =
    options.part === undefined ? comparedOf(words, options, world) : comparePart(words, options.part, world);
  const isDifferent = compared.engines.some((each) => !isSame(each.diff));
  const exit = compared.hasProblems ? 2 : options.exitCode && isDifferent ? 1 : 0;
  printFormats(options.format, world, (format, style) =>
    format === 'html'
      ? html(diffSheet(compared, options))
      : printed(format, compared, exit, options.all, style),
  );
  return exit;
}

function comparedOf(words: readonly string[], options: DiffOptions, world: World): Compared {
  const opened = new OpenedOnce();
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

function printed(
  format: string,
  compared: Compared,
  exit: 0 | 1 | 2,
  all: boolean,
  style: TextStyle,
): Written {
  const { sides, engines, notCompared } = compared;
  if (format === 'json') return writtenJson(json`${diffJson(compared, exit)}\n`);
  if (format === 'markdown') return writtenMarkdown(diffMarkdown(compared, { all }));
  if (engines.length + notCompared.length === 0)
    return writtenLines([`${sidesText(sides)}: nothing changed`]);
  return writtenLines(
    withGaps([
      ...engines.map((each) => diffLines(each, sides, { all }, style)),
      ...notCompared.map((each) => [style.paint.bad(notComparedText(each))]),
    ]),
  );
}
