import { unitOf } from '../../checks/judge/session.ts';
import { tolerancesOf } from '../../checks/judge/tolerances.ts';
import { revisionText } from '../../output/diff/revision.ts';
import type { Line } from '../../output/escape/line.ts';
import { LINES_FORMATS } from '../../output/lines/formats/index.ts';
import { studyLines } from '../../output/study/studyText.ts';
import type { TextStyle } from '../../output/terminal/textStyle.ts';
import type { World } from '../../shell/world.ts';
import { documentsNamed } from '../check/chooseSessions.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/printFormats.ts';
import { type EngineFolder, openEngine } from '../shop/resolveShop.ts';
import { UsageError } from '../usage.ts';

export interface StudyOptions {
  readonly session?: string | undefined;
  readonly at?: string | undefined;
  readonly format: readonly FormatChoice[];
}

/** Prints the gauge study that a session holds; the exit code. */
export async function study(
  engineName: string | undefined,
  { session, at, format: choices }: StudyOptions,
  world: World,
): Promise<number> {
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
  await printFormats(LINES_FORMATS, choices, linesIn, world);
  return 0;
}

const pathInShop = (shown: string, { shop: { store }, folder }: EngineFolder): string =>
  store.list([folder]).find((path) => store.shown(path) === shown) ?? shown;
