// Measures the program beside bare node, parsing alone and a validator of schemas, and prints tables and whether the aims
// are met; nothing fails when it is slow, since a busy machine would make it so.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { AIM_HEAD, aimRows } from './bench/aims.js';
import { GROWING, GROWTH_HEAD, growthOf, growthRow } from './bench/growth.js';
import { manyEngines } from './bench/manyEngines.js';
import { repository } from './bench/repository.js';
import { runsOf } from './bench/runs.js';
import { startUp } from './bench/startUp.js';
import { MEASURED_HEAD, markdownTable, measuredRows, textTable } from './bench/table.js';
import { fetchNode } from './fetched.js';

const PARTS = { start: startUp, repository, many: manyEngines };

/** Words name the parts that are wanted, else all. The long runs come last: they leave the machine busy for a while. */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    /** A path or a version such as 22, which is fetched; may be given several times. */
    node: { type: 'string', multiple: true, default: [process.execPath] },
    /** How time and memory grow with the size of what is checked, instead of the rest. */
    growth: { type: 'boolean', default: false },
    quick: { type: 'boolean', default: false },
    markdown: { type: 'boolean', default: false },
  },
});
const table = values.markdown ? markdownTable : textTable;
const print = (text) => process.stdout.write(`${text}\n`);

print(`${cpus().length} processors, commit ${commit()}, load ${load()}\n`);
const nodes = values.node.map((name) => (name.includes('/') ? name : fetchNode(name)));
for (const node of nodes) await benchOf(node, values.growth ? printGrowth : printMeasured);
print(`load ${load()} at the end`);

async function benchOf(node, carryOut) {
  const scratch = mkdtempSync(join(tmpdir(), 'tenths-bench-'));
  const rounds = values.quick ? 5 : 15;
  const longRounds = values.quick ? 1 : 3;
  try {
    print(`${values.markdown ? '### ' : ''}node ${execFileSync(node, ['--version'], { encoding: 'utf8' })}`);
    await carryOut({ scratch, rounds, longRounds, ...runsOf(node, scratch) });
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
    if (positionals.length === 0 || positionals.includes(name)) Object.assign(rows, await part(bench));
  }
  return rows;
}

function load() {
  return loadavg()[0].toFixed(2);
}

function commit() {
  return execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim();
}
