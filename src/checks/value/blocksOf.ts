import type { ReadingBlock } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { oncePer } from '../once.ts';

/** The blocks of a session by what they measure. */
export const blocksOf = oncePer(
  ({ blocks }: SessionDocument): ReadonlyMap<string, readonly ReadingBlock[]> => {
    const found = new Map<string, ReadingBlock[]>();
    for (const block of blocks) {
      const { id } = block.measure;
      const others = found.get(id);
      if (others === undefined) found.set(id, [block]);
      else others.push(block);
    }
    return found;
  },
);
