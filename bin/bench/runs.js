import { spawnSync } from 'node:child_process';

/**
 * Runs node once, its output to nowhere; milliseconds from start to end. What it says on stderr is a failure too: node
 * ends with 1 both for readings that are out and for a program that cannot be loaded.
 */
export function time(words, { exit = [0], cwd = undefined, env = process.env } = {}) {
  const start = performance.now();
  const { status, stderr } = spawnSync(process.execPath, words, {
    cwd,
    env,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const milliseconds = performance.now() - start;
  if (!exit.includes(status) || stderr.length > 0) throw failure(words, status, stderr);
  return milliseconds;
}

/** What node prints, or with `pipe` 3 what it writes there, as a number. */
export function numberFrom(words, { pipe = 1, exit = [0] } = {}) {
  const stdio = ['ignore', 'ignore', 'pipe', 'ignore'];
  stdio[pipe] = 'pipe';
  const { status, output, stderr } = spawnSync(process.execPath, words, { stdio });
  if (!exit.includes(status) || stderr.length > 0) throw failure(words, status, stderr);
  return Number(output[pipe]);
}

const failure = (words, status, stderr) =>
  new Error(`node ${words.join(' ')} ended with ${status}\n${stderr}`);

/**
 * The median time of every run, by name. Each round runs all of them once in a new order, so that whatever else the
 * machine does falls on all alike.
 */
export function medians(runs, rounds) {
  const times = new Map(Object.keys(runs).map((name) => [name, []]));
  for (let round = 0; round < rounds; round++) {
    for (const name of shuffled(Object.keys(runs))) times.get(name).push(runs[name]());
  }
  return Object.fromEntries([...times].map(([name, all]) => [name, median(all)]));
}

export function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

const shuffled = (list) =>
  list
    .map((item) => ({ item, at: Math.random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
