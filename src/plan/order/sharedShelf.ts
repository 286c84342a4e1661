import type { NeededLine } from './orderLine.ts';

/**
 * What lies on the shelf is there once: what was chosen from it piece by piece is taken, and of the others that are of one
 * size those whose turn is first, and among them the earlier line, have the rest.
 */
export function sharedShelf(lines: readonly NeededLine[]): readonly NeededLine[] {
  const taken = new Map<string, number>();
  const take = (line: NeededLine): NeededLine => {
    const before = taken.get(nameOf(line)) ?? 0;
    const onShelf =
      line.free === undefined ? line.onShelf : Math.min(line.count, Math.max(0, line.free - before));
    taken.set(nameOf(line), before + onShelf);
    return { ...line, onShelf };
  };
  const chosen = new Map(lines.filter(({ free }) => free === undefined).map((line) => [line, take(line)]));
  const byTurn = [...lines].sort(({ turn: a = 0 }, { turn: b = 0 }) => a - b);
  const shared = new Map(byTurn.map((line) => [line, chosen.get(line) ?? take(line)]));
  return lines.map((line) => shared.get(line) ?? line);
}

const nameOf = ({ what, size }: NeededLine): string => `${what}, ${size}`;
