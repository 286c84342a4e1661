import { readdirSync, readFileSync, statSync } from 'node:fs';
import { AREAS } from './areas.js';
import { mutantsOf } from './mutantsOf.js';

/** As many mutants of each area, drawn by a seed; an area that has fewer gives all, and the others more. */
export function sampled(count, seed, areas) {
  const pools = areas
    .map((area) =>
      shuffled(
        AREAS[area].sources.flatMap(filesIn).flatMap((file) => mutantsIn(area, file)),
        seed,
      ),
    )
    .sort((a, b) => a.length - b.length);
  const drawn = [];
  for (const [index, pool] of pools.entries())
    drawn.push(...pool.slice(0, Math.ceil((count - drawn.length) / (pools.length - index))));
  return shuffled(drawn, seed).map((each, index) => ({ ...each, id: index + 1 }));
}

const mutantsIn = (area, file) =>
  mutantsOf(file, readFileSync(file, 'utf8')).map((mutant) => ({ area, ...mutant }));

const filesIn = (path) =>
  statSync(path).isFile()
    ? [path]
    : readdirSync(path, { recursive: true })
        .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
        .sort()
        .map((name) => path + name);

/** Fisher and Yates, by a generator of our own so that a seed gives the same sample on every machine. */
function shuffled(all, seed) {
  const random = xorshift(seed);
  const list = [...all];
  for (let last = list.length - 1; last > 0; last--) {
    const other = random() % (last + 1);
    [list[last], list[other]] = [list[other], list[last]];
  }
  return list;
}

function xorshift(seed) {
  let state = seed >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state;
  };
}
