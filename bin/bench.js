import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { AIM_HEAD, aimRows } from './bench/aims.js';
import { GROWING, GROWTH_HEAD, growthOf, growthRow } from './bench/growth.js';
import { manyEngines } from './bench/manyEngines.js';
import { repository } from './bench/repository.js';
import { runsOf } from './bench/runs.js';
import { startUp } from './bench/startUp.js';
import { MEASURED_HEAD, markdownTable, measuredRows, textTable } from './bench/table.js';
import { calledWith, named } from './called.js';
import { fetchNode } from './fetched.js';

const PARTS = { start: startUp, repository, many: manyEngines };

const USAGE = `
npm run bench -- [PART…] [--node PATH|VERSION]… [--growth] [--quick] [--scale N] [--markdown]

Measures the program beside bare node, parsing alone and a validator of schemas, and prints tables and whether the aims
are met; nothing fails when it is slow, since a busy machine would make it so.

PART is one of ${Object.keys(PARTS).join(', ')}, else all of them. --node is a path or a version such as 22, which is fetched; it may be
given several times. --growth measures how time and memory grow with the size of what is checked, instead of the rest.
--scale 0.05 takes smaller shops.
`;

const { values, positionals } = calledWith(
  USAGE,
  {
    node: { type: 'string', multiple: true, default: [process.execPath] },
    growth: { type: 'boolean', default: false },
    quick: { type: 'boolean', default: false },
    /** A part of every size of large shops and of what grows, to see in a short time that the bench itself works. */
    scale: { type: 'string', default: '1' },
    markdown: { type: 'boolean', default: false },
  },
  { allowPositionals: true },
);
// The long runs come last: they leave the machine busy for a while.
const parts =
  positionals.length === 0
    ? Object.keys(PARTS)
    : positionals.flatMap((each) => named(each, Object.keys(PARTS), 'part'));
const table = values.markdown ? markdownTable : textTable;
const scale = Number(values.scale);
const print = (text) => process.stdout.write(`${text}\n`);

print(
  `${cpus().length} processors, commit ${commit()}, load ${load()}${scale === 1 ? '' : `, sizes times ${scale}`}\n`,
);
const nodes = values.node.map((name) => (name.includes('/') ? name : fetchNode(name)));
for (const node of nodes) await benchOf(node, values.growth ? printGrowth : printMeasured);
print(`load ${load()} at the end`);

async function benchOf(node, carryOut) {
  const scratch = mkdtempSync(join(tmpdir(), 'tenths-bench-'));
  const rounds = values.quick ? 5 : 15;
  const longRounds = values.quick ? 1 : 3;
  try {
    print(`${values.markdown ? '### ' : ''}node ${execFileSync(node, ['--version'], { encoding: 'utf8' })}`);
    await carryOut({ scratch, rounds, longRounds, scale, ...runsOf(node, scratch) });
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

async function printMeasured(bench) {
  const rows = await measured(bench);
  print(`Medians of ${bench.rounds} rounds, of ${bench.longRounds} for 1,000 engines.\n`);
  print(table(MEASURED_HEAD, measuredRows(rows)));
  print(table(AIM_HEAD, aimRows(rows)));
}

function printGrowth(bench) {
  print(
    table(
      GROWTH_HEAD,
      GROWING.map((growing) => growthRow(growthOf(growing, bench))),
    ),
  );
}

async function measured(bench) {
  const rows = {};
  for (const [name, part] of Object.entries(PARTS)) {
    if (parts.includes(name)) Object.assign(rows, await part(bench));
  }
  return rows;
}

function load() {
  return loadavg()[0].toFixed(2);
}

function commit() {
  return execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim();
}
