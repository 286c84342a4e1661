import type { Engine } from '../../documents/assemble.ts';
import type { Carried } from './carriedPart.ts';
import { isOf, sendingsOf } from './sendings.ts';

/** What is stamped on a part: as it was sent, or as it was fitted last. */
export function markOf(carried: Carried, engine: Engine): string | undefined {
  const documents = [engine.document, ...engine.sessions];
  const sent = sendingsOf(carried, engine).find(({ mark }) => mark !== undefined);
  // Of several each has its own beside that of all.
  const own = documents
    .flatMap(({ partChanges }) => partChanges.flatMap(({ marksAt }) => marksAt))
    .findLast(({ parts }) => carried.at !== undefined && parts.some((each) => isOf(each, carried, engine)));
  const fitted = [engine.document.fitted, ...engine.sessions.map(({ sizes }) => sizes)]
    .flat()
    .findLast(({ at, identity }) => identity !== undefined && isOf(at, carried, engine));
  return sent?.mark ?? own?.mark ?? fitted?.identity;
}
