import { AREAS } from './areas.js';

/**
 * Which test files are asked about a mutant: those that reach it, of its own area first, then the quick ones, as many as
 * the patience takes. What runs while sources are loaded is reached by whoever loads them, and coverage sees the first alone.
 */
export function juryOf({ files, atLoad }, patienceSeconds) {
  const early = new Set(atLoad);
  const reached = files.map(({ reaches, ...file }) => ({ ...file, reaches: new Set(reaches) }));
  return ({ id, area, file }) => {
    const own = ({ path }) => AREAS[area].tests.some((each) => path.startsWith(each));
    const asked = reached
      .filter(({ reaches, loads }) => reaches.has(id) || (early.has(id) && loads.includes(file)))
      .sort((a, b) => own(b) - own(a) || a.ms - b.ms);
    return withinPatience(asked, patienceSeconds * 1000);
  };
}

/** The first of them, as long as they take no longer together; one that takes too long by itself is asked where it is the only one. */
function withinPatience(files, patienceMs) {
  let took = 0;
  return files.filter(({ ms }, index) => {
    const isInTime = index === 0 || took + ms <= patienceMs;
    if (isInTime) took += ms;
    return isInTime;
  });
}
