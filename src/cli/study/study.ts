import { unitOf } from '../../checks/judge/session.ts';
import { tolerancesOf } from '../../checks/judge/tolerances.ts';
import { revisionText } from '../../output/diff/revision.ts';
import { type Line, writtenLines } from '../../output/escape/line.ts';
import { codeBlock, writtenMarkdown } from '../../output/escape/markdown.ts';
import { studyLines } from '../../output/study/studyText.ts';
import { onPage } from '../../output/terminal/onPage.ts';
import type { TextStyle } from '../../output/terminal/textStyle.ts';
import type { World } from '../../shell/world.ts';
import { documentsNamed } from '../check/chooseSessions.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/outputs.ts';
import { type EngineFolder, openEngine } from '../shop/resolveShop.ts';
import { UsageError } from '../usage.ts';

export interface StudyOptions {
  readonly session?: string | undefined;
  readonly at?: string | undefined;
  readonly format: readonly FormatChoice[];
}

/** Prints the gauge study that a session holds; the exit code. */
export function study(
  engineName: string | undefined,
  { session, at, format: choices }: StudyOptions,
  world: World,
): number {
  const { engine, revision, found } = openEngine(engineName, world, at);
  const chosen = session === undefined ? engine.sessions : documentsNamed(session, engine.sessions);
  const holding = chosen.findLast((each) => each.study !== undefined);
  if (holding?.study === undefined) {
    const where = session === undefined ? engine.document.name : session;
    throw new UsageError(
      `no session of ${where} holds a study`,
      'write `study: { measure, with, parts }` in a session',
    );
  }
  const { measure } = holding.study;
  const reported = {
    study: holding.study,
    unit: unitOf(measure.quantity, engine),
    tolerances: tolerancesOf(measure, engine),
    // A register at the shop's root serves all engines.
    path: pathInShop(holding.path, found),
  };
  const linesIn = (style: TextStyle): readonly Line[] => [
    ...(revision === undefined ? [] : [revisionText(revision, style), '']),
    ...studyLines(reported, style),
  ];
  printFormats(choices, world, (format, style) =>
    format === 'markdown'
      ? writtenMarkdown([codeBlock(linesIn(onPage(style)))])
      : writtenLines(linesIn(style)),
  );
  return 0;
}

const pathInShop = (shown: string, { shop: { store }, folder }: EngineFolder): string =>
  store.list([folder]).find((path) => store.shown(path) === shown) ?? shown;
