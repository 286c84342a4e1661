import { oncePer } from '../../checks/once.ts';
import type { Engine } from '../../documents/assemble.ts';

const known = oncePer((_: Engine): Map<number, Engine> => new Map());

/** An engine as so many of its sessions left it: one object, so that what is worked out of it is worked out once. */
export function engineAfter(engine: Engine, count: number): Engine {
  if (count === engine.sessions.length) return engine;
  const made = known(engine).get(count) ?? { ...engine, sessions: engine.sessions.slice(0, count) };
  known(engine).set(count, made);
  return made;
}
