import { unitOf } from '../checks/session.ts';
import { revisionText } from '../output/revision.ts';
import { studyText } from '../output/studyText.ts';
import { textStyle } from '../shell/terminal.ts';
import type { World } from '../shell/world.ts';
import { documentsNamed } from './chooseSessions.ts';
import { openEngine } from './shopAt.ts';
import { UsageError } from './usage.ts';

/** Prints the gauge study that a session holds; the exit code. */
export function study(
  engineName: string | undefined,
  { session, at }: { readonly session?: string | undefined; readonly at?: string | undefined },
  world: World,
): number {
  const { engine, revision } = openEngine(engineName, world, at);
  const chosen = session === undefined ? engine.sessions : documentsNamed(session, engine.sessions);
  const found = chosen.findLast((each) => each.study !== undefined)?.study;
  if (found === undefined) {
    const where = session === undefined ? engine.document.name : session;
    throw new UsageError(
      `no session of ${where} holds a study`,
      'write study: { measure, with, parts } in a session',
    );
  }
  const style = textStyle(world.out, world.environment, false);
  if (revision !== undefined) world.out.write(`${revisionText(revision, style)}\n`);
  world.out.write(studyText(found, unitOf(found.measure.quantity, engine), style));
  return 0;
}
