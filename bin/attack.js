// Every attack that the tests know, from a seed of its own: prints a table of what was tried and what was wrong. A test that
// fails shows the seed and the smallest input. Ends with 1 when anything was wrong, with 2 when something could not be run.
//
//   node bin/attack.js [--count 100000] [--seconds S] [--seed N] [--only KIND]
//
// --count is the number of mutants of documents, a million before a release; everything else is tried in full. --seconds
// tries mutants for so long instead, and of everything else as much as `npm test` does.

import { parseArgs } from 'node:util';
import { startVitest } from 'vitest/node';
import { KINDS } from './attack/kinds.js';
import { Tally } from './attack/tally.js';

const { values } = parseArgs({
  options: {
    count: { type: 'string' },
    seconds: { type: 'string' },
    seed: { type: 'string' },
    only: { type: 'string', default: '' },
  },
});
const seed = Number(values.seed ?? Date.now() % 2 ** 31);
const endless = values.seconds === undefined ? '100000' : String(Number.MAX_SAFE_INTEGER);
process.env.PROPERTY_SEED = String(seed);
process.env.ATTACK_COUNT = values.count ?? endless;
if (values.seconds !== undefined) process.env.ATTACK_SECONDS = values.seconds;

const kinds = Object.fromEntries(Object.entries(KINDS).filter(([kind]) => kind.includes(values.only)));
const tally = new Tally(kinds);

// Vitest waits for ever where all its processes have died.
const LONGEST_S = 4 * 3600;
const patience = setTimeout(
  () => {
    process.stdout.write(`${tally.text(seed)}WRONG it came to no end\n`);
    process.exit(1);
  },
  Math.min(LONGEST_S, Number(values.seconds ?? LONGEST_S) * 10 + 900) * 1000,
);
await startVitest('test', Object.values(kinds).flat(), {
  run: true,
  watch: false,
  mode: values.seconds === undefined ? 'long' : 'test',
  reporters: [tally],
});
clearTimeout(patience);
process.stdout.write(tally.text(seed));
process.exit(tally.exitCode());
