import { startVitest } from 'vitest/node';
import { KINDS } from './attack/kinds.js';
import { Tally } from './attack/tally.js';
import { calledWith, named } from './called.js';

const USAGE = `
npm run attack -- [--count 100000] [--seconds S] [--seed N] [--only KIND]

Every attack that the tests know, from a seed of its own: prints a table of what was tried and what was wrong. A test that
fails shows the seed and the smallest input. Ends with 1 when anything was wrong, with 2 when something could not be run.

--count is the number of mutants of documents, a million before a release; everything else is tried in full. --seconds
tries mutants for so long instead, and of everything else as much as \`npm test\` does. --only names the kinds to try by a
part of their names: ${Object.keys(KINDS).join(', ')}.
`;

const { values } = calledWith(USAGE, {
  count: { type: 'number' },
  seconds: { type: 'number' },
  seed: { type: 'number' },
  only: { type: 'string', default: '' },
});
// Vitest waits for ever where all its processes have died.
const LONGEST_S = 12 * 3600;
const seed = values.seed ?? Date.now() % 2 ** 31;
const endless = values.seconds === undefined ? '100000' : String(Number.MAX_SAFE_INTEGER);
process.env.PROPERTY_SEED = String(seed);
process.env.ATTACK_COUNT = String(values.count ?? endless);
process.env.ATTACK_SECONDS = String(values.seconds ?? LONGEST_S);

const kinds = Object.fromEntries(
  named(values.only, Object.keys(KINDS), 'kind').map((kind) => [kind, KINDS[kind]]),
);
const tally = new Tally(kinds);

const patience = setTimeout(
  () => {
    process.stdout.write(`${tally.text(seed)}WRONG it came to no end\n`);
    process.exit(1);
  },
  Math.min(LONGEST_S, (values.seconds ?? LONGEST_S) * 10 + 900) * 1000,
);
await startVitest('test', Object.values(kinds).flat(), {
  run: true,
  watch: false,
  mode: values.seconds === undefined ? 'long' : 'test',
  reporters: [tally],
  testTimeout: LONGEST_S * 1000,
});
clearTimeout(patience);
process.stdout.write(tally.text(seed));
process.exit(tally.exitCode());
