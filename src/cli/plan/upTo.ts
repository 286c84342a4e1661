import type { Engine } from '../../documents/assemble.ts';
import { engineAfter } from '../../plan/handover/engineAfter.ts';
import { documentsNamed } from '../check/chooseSessions.ts';
import { sessionsThere } from '../shop/noSession.ts';
import { UsageError } from '../usage.ts';

/** The engine as a session left it. */
export function upTo(engine: Engine, name: string): Engine {
  const [last] = documentsNamed(name, engine.sessions);
  if (last === undefined)
    throw new UsageError(`${engine.document.name} has no session ${name}`, sessionsThere(engine));
  return engineAfter(engine, engine.sessions.indexOf(last) + 1);
}
