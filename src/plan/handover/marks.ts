import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Part } from '../../layout/part.ts';
import { sendingsOf } from './sendings.ts';

/** What is stamped on a part: as it was sent, or as it was fitted last. */
export function markOf(part: Part, engine: Engine, { parts }: Registry): string | undefined {
  const sent = sendingsOf(part, engine).find(({ mark }) => mark !== undefined);
  const within = parts.within(part);
  const fitted = [engine.document.fitted, ...engine.sessions.map(({ sizes }) => sizes)]
    .flat()
    .findLast(({ at, identity }) => identity !== undefined && within.includes(at.part));
  return sent?.mark ?? fitted?.identity;
}
