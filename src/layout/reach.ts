import type { Family } from './family.ts';
import type { Layout } from './layout.ts';
import type { Position } from './position.ts';
import { type Coordinates, isComplete, readKey } from './readKey.ts';
import { neighbours, relate, stepAlong } from './relate.ts';

/** What a formula at one position means by `x`, `x[*]`, `x[3]` or `x[next]`, or why it means nothing. */
export type Reach =
  | { readonly kind: 'positions'; readonly positions: readonly Position[] }
  /** Nothing relates the two families. */
  | { readonly kind: 'unrelated' }
  /** Neighbours are those along one's own row. */
  | { readonly kind: 'other row' }
  /** The engine has no position of that name, or more than one. */
  | { readonly kind: 'unknown' };

const found = (positions: readonly Position[]): Reach => ({ kind: 'positions', positions });

/**
 * The positions of a family that are meant from a position: without a word the one that belongs to it; `*` all that
 * belong to it, and of its own family all there are; `next`, `previous` and `neighbours` along its own row; else those
 * of a name, of which a part is enough where the position says the rest: `top` from cylinder 3 is its top ring.
 */
export function reach(layout: Layout, from: Position, family: Family, at?: string): Reach {
  switch (at) {
    case undefined:
      return belonging(layout, from, family);
    case '*':
      return from.family === family ? found(layout.positionsOf(family)) : belonging(layout, from, family);
    case 'next':
      return along(from, family, stepAlong(layout, from, 1));
    case 'previous':
      return along(from, family, stepAlong(layout, from, -1));
    case 'neighbours':
      return along(from, family, neighbours(layout, from));
    default:
      return named(layout, from, family, at);
  }
}

function belonging(layout: Layout, from: Position, family: Family): Reach {
  const positions = relate(layout, from, family);
  return positions === undefined ? { kind: 'unrelated' } : found(positions);
}

const along = (from: Position, family: Family, positions: readonly Position[]): Reach =>
  from.family === family ? found(positions) : { kind: 'other row' };

function named(layout: Layout, from: Position, family: Family, key: string): Reach {
  const meaning = readKey(layout, family, key);
  if (meaning.kind !== 'coordinates') return { kind: 'unknown' };
  const wanted = from.family === family ? filled(meaning.coordinates, from) : meaning.coordinates;
  const all = layout.positionsOf(family).filter((each) => isAt(each, wanted));
  const related = isComplete(wanted) ? undefined : relate(layout, from, family);
  return found(related === undefined ? all : all.filter((each) => related.includes(each)));
}

const filled = (wanted: Coordinates, { coordinates }: Position): Coordinates =>
  wanted.map((name, index) => name ?? coordinates[index]);

const isAt = ({ coordinates }: Position, wanted: Coordinates): boolean =>
  wanted.every((name, index) => name === undefined || name === coordinates[index]);
