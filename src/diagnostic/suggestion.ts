/**
 * The nearest of the candidates, or undefined when none is close enough to be what was meant.
 * Optimal string alignment distance: a swapped pair of letters counts once.
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const candidate of candidates) {
    if (Math.abs(candidate.length - word.length) >= bestDistance) continue;
    const distance = alignmentDistance(word, candidate);
    // A word of which no letter is left is another word: 4 is no slip for 1.
    if (distance < bestDistance && distance < word.length) [best, bestDistance] = [candidate, distance];
  }
  return best;
}

/** "did you mean X?", or undefined where nothing is near. */
export function didYouMean(word: string, candidates: Iterable<string>): string | undefined {
  const found = nearest(word, candidates);
  return found === undefined ? undefined : `did you mean ${found}?`;
}

export function alignmentDistance(a: string, b: string): number {
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const substitution = at(previous, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let cost = Math.min(at(previous, j) + 1, at(current, j - 1) + 1, substitution);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        cost = Math.min(cost, at(before, j - 2) + 1);
      }
      current.push(cost);
    }
    [before, previous] = [previous, current];
  }
  return at(previous, b.length);
}

const at = (row: readonly number[], index: number): number => row[index] ?? Number.POSITIVE_INFINITY;
