import { cutAlone } from '../../layout/readPart.ts';
import type { DocumentContext } from '../amount.ts';
import { readDate } from '../date.ts';
import { childOf, readNamed, textAt } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { type KnownParts, readWorkedParts } from './part.ts';
import type { WorkDone } from './reading.ts';

/** Of other work nobody knows how far it went. */
const SURFACING = /\b(?:re-?)?(?:surfac|skim|mill|faced|facing)/i;

/** One for each part that was worked on. */
export function readWork(
  item: Node,
  index: number,
  known: KnownParts,
  context: DocumentContext,
): readonly WorkDone[] {
  const [work, on] = [textAt(item, 'work'), childOf(item, 'on')];
  if (work === undefined || on === undefined) return [];
  readDate(childOf(item, 'date'), context);
  return (on.kind === 'list' ? on.items : [on]).flatMap((node) => {
    const named = readNamed(node);
    const parts = named === undefined ? [] : readWorkedParts(named, known, context);
    if (named === undefined || parts.length === 0) return [];
    return [{ index, work, on: named, parts: SURFACING.test(work) ? parts.map(cutAlone) : parts }];
  });
}
