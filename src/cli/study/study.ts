import { unitOf } from '../../checks/judge/session.ts';
import { tolerancesOf } from '../../checks/judge/tolerances.ts';
import { revisionText } from '../../output/diff/revision.ts';
import { writtenLines } from '../../output/escape/line.ts';
import { studyLines } from '../../output/study/studyText.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import { documentsNamed } from '../check/chooseSessions.ts';
import { type EngineFolder, openEngine } from '../shop/resolveShop.ts';
import { UsageError } from '../usage.ts';

/** Prints the gauge study that a session holds; the exit code. */
export function study(
  engineName: string | undefined,
  { session, at }: { readonly session?: string | undefined; readonly at?: string | undefined },
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
  const told = {
    study: holding.study,
    unit: unitOf(measure.quantity, engine),
    tolerances: tolerancesOf(measure, engine),
    // A register at the shop's root serves all engines.
    path: pathInShop(holding.path, found),
  };
  const style = textStyle(world.out, world.environment, false);
  const read = revision === undefined ? [] : [revisionText(revision, style), ''];
  world.out.write(writtenLines([...read, ...studyLines(told, style)]));
  return 0;
}

const pathInShop = (shown: string, { shop: { store }, folder }: EngineFolder): string =>
  store.list([folder]).find((path) => store.shown(path) === shown) ?? shown;
