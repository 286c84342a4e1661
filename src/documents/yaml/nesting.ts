import type { CST } from 'yaml';
import type { Problem } from './problem.ts';

/** Lists and maps within each other. */
export const MOST_DEPTH = 32;

/**
 * Up to here the walk tells of what is too deep, with all else that is wrong in the file. The parser calls itself once a
 * level, and where that takes all of the program's stack Node may end without an error that could be caught.
 */
const MOST_PARSED = 256;

type Collection = CST.BlockMap | CST.BlockSequence | CST.FlowCollection;

interface Level {
  readonly collection: Collection;
  readonly depth: number;
  /** Where the first that is too deep begins, on the way here. */
  readonly start: number;
}

/** What is nested too deep even for the parser, if anything is. */
export function tooDeepToParse(tokens: readonly CST.Token[]): Problem | undefined {
  const waiting: Level[] = [];
  const meet = (token: CST.Token | null | undefined, depth: number, start: number): void => {
    if (token && 'items' in token)
      waiting.push({ collection: token, depth, start: depth > MOST_DEPTH + 1 ? start : token.offset });
  };
  for (const token of tokens) if (token.type === 'document') meet(token.value, 1, 0);
  for (let level = waiting.pop(); level !== undefined; level = waiting.pop()) {
    const { collection, depth, start } = level;
    if (depth > MOST_PARSED) return tooDeep(start);
    for (const { key, value } of collection.items) {
      meet(key, depth + 1, start);
      meet(value, depth + 1, start);
    }
  }
  return undefined;
}

/** The message of both that find it. */
export const tooDeep = (start: number): Problem => ({
  code: 'depth',
  span: { start, end: start + 1 },
  message: `lists and maps are nested more than ${MOST_DEPTH} deep`,
  help: 'nest them less deep',
});
