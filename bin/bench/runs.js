import { spawnSync } from 'node:child_process';
/**
 * Runs of one node without what bends its start: the certificates of NODE_EXTRA_CA_CERTS are read at each, some 80 ms on
 * both sides of every ratio, and options of NODE_OPTIONS hold for all alike. What is compiled is kept below `cache`.
 */
export function runsOf(node, cache) {
  const bare = Object.entries(process.env).filter(([name]) => !name.startsWith('NODE_'));
  const env = { ...Object.fromEntries(bare), XDG_CACHE_HOME: cache };
  return {
    timed: (words, options) => timed(node, words, { env, ...options }),
    told: (words, options) => told(node, words, { env, ...options }),
  };
}

/** The shell alone tells processor time to the millisecond, with that of the processes which the program waited for. */
const TIMED = 'TIMEFORMAT="%3R %3U %3S"; time "$@" 2>&3 3>&-';

/**
 * Runs node once, its output to nowhere; milliseconds by the clock and of processors. What it says on stderr is a failure
 * too: node ends with 1 both for readings that are out and for a program that cannot be loaded.
 */
function timed(node, words, { exit = [0], talks = false, cwd, env }) {
  const stdio = ['ignore', 'ignore', 'pipe', 'pipe'];
  const { status, output } = spawnSync('bash', ['-c', TIMED, 'bash', node, ...words], { cwd, env, stdio });
  if (!exit.includes(status) || (!talks && output[3].length > 0)) throw failure(words, status, output[3]);
  const [wall, user, system] = String(output[2]).trim().split(' ').map(Number);
  return { wall: wall * 1000, cpu: (user + system) * 1000 };
}

/** What node prints, or with `pipe` 3 what it writes there, read as JSON. */
function told(node, words, { pipe = 1, exit = [0], env }) {
  const stdio = ['ignore', 'ignore', 'pipe', 'ignore'];
  stdio[pipe] = 'pipe';
  const { status, output, stderr } = spawnSync(node, words, { stdio, env });
  if (!exit.includes(status) || stderr.length > 0) throw failure(words, status, stderr);
  return JSON.parse(output[pipe]);
}

const failure = (words, status, stderr) =>
  new Error(`node ${words.join(' ')} ended with ${status}\n${stderr}`);

/** One after another, as one. */
export const added = (parts) => ({
  wall: parts.reduce((sum, { wall }) => sum + wall, 0),
  cpu: parts.reduce((sum, { cpu }) => sum + cpu, 0),
});

/**
 * The medians of every run, by name. Each round runs all of them once in a new order, so that whatever else the machine
 * does falls on all alike.
 */
export function medians(runs, rounds) {
  const times = new Map(Object.keys(runs).map((name) => [name, []]));
  for (let round = 0; round < rounds; round++) {
    for (const name of shuffled(Object.keys(runs))) times.get(name).push(runs[name]());
  }
  return Object.fromEntries([...times].map(([name, all]) => [name, middleOf(all)]));
}

/** Of each unit by itself. */
function middleOf(runs) {
  const units = Object.keys(runs[0]);
  return Object.fromEntries(units.map((unit) => [unit, median(runs.map((run) => run[unit]))]));
}

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

const shuffled = (list) =>
  list
    .map((item) => ({ item, at: Math.random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
