import type { PartChange } from '../../documents/session/partChanges.ts';
import type { Part, Parts } from '../../layout/part.ts';

/**
 * Whether what is said to be fitted is another part than was said before, or one that was made to another size since: its mark or
 * code differs, or its size does and no session between says that it was machined. A mark that is said for the first time is
 * none; of a part that was spoken of a size is, since that is standard until somebody says another. What was said
 * first comes first, and what a session says to be machined before the size that it fits.
 */
export function isAnotherPart(change: PartChange, before: readonly PartChange[], parts: Parts): boolean {
  const since = before.slice(before.findLastIndex((each) => isReplacedBy(each, change, parts)) + 1);
  if (!since.some((each) => isFittedAlike(each, change))) return false;
  return [...change.identity].some(([key, text]) => {
    const last = since.findLastIndex((each) => isFittedAlike(each, change) && each.identity.has(key));
    const was = since[last]?.identity.get(key);
    if (MARKS.includes(key)) return was !== undefined && was !== text;
    return (was ?? 'std') !== text && !since.slice(last + 1).some((each) => isCutOf(each, change, parts));
  });
}

/** What is stamped or etched on it as its own: no machining changes that. */
const MARKS: readonly string[] = ['mark', 'code'];

export const isFittedAlike = (before: PartChange, { name }: PartChange): boolean =>
  before.how === 'fitted' && before.name === name;

/** All of it: what was said before is said of the one that came out. */
const isReplacedBy = (each: PartChange, { parts: fitted }: PartChange, parts: Parts): boolean =>
  each.how === 'replaced' &&
  fitted.some((own) =>
    each.parts.some(({ part, positions }) => positions.length === 0 && parts.within(part).includes(own.part)),
  );

const isCutOf = (each: PartChange, { parts: fitted }: PartChange, parts: Parts): boolean =>
  each.how === 'machined' && each.parts.some(({ part }) => fitted.some((own) => isOf(part, own.part, parts)));

const isOf = (a: Part, b: Part, parts: Parts): boolean =>
  parts.within(a).includes(b) || parts.within(b).includes(a);
