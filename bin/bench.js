// Measures the program against bare node and against parsing alone, and prints a table; nothing fails when it is slow,
// since a busy machine would make it so. `--quick` takes fewer rounds.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { median, medians, numberFrom, time } from './bench/runs.js';
import { writeShop } from './bench/shop.js';
import { PROGRAM } from './bundle.js';
import { commitAll } from './commitAll.js';

const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const program = here('tenths.cjs');
const quick = process.argv.includes('--quick');
// An engine with readings that are out makes the check end with 1.
const CHECKED = [0, 1];
const HEAD = ['', 'measured', 'ratio', 'target'];

// Where it is set, every start of node reads the certificates that it names: the ratios to bare node hold that time on
// both sides and look better for it, so a row tells how long it takes.
const CERTIFICATES = 'NODE_EXTRA_CA_CERTS';
const { [CERTIFICATES]: certificates, ...withoutCertificates } = process.env;
const hasCertificates = certificates !== undefined;

const ms = (value) => `${value.toFixed(0)} ms`;
const mib = (kib) => `${(kib / 1024).toFixed(0)} MiB`;
const ratio = (value) => value.toFixed(2);
const loadText = () => `load ${loadavg()[0].toFixed(2)}`;

const scratch = mkdtempSync(join(tmpdir(), 'tenths-bench-'));
try {
  process.stdout.write(`node ${process.version}, ${cpus().length} cores, ${loadText()}\n\n`);
  const rows = [
    ...startUp(quick ? 7 : 25),
    ...changesInRepository(quick ? 7 : 25),
    // The long runs come last: they leave the machine busy for a while.
    ...(await manyEngines(quick ? 1 : 3)),
  ];
  process.stdout.write(`${tableText([HEAD, ...rows])}\n${loadText()} at the end\n`);
} finally {
  rmSync(scratch, { recursive: true, force: true });
}

function startUp(rounds) {
  const times = medians(
    {
      node: () => time([here('bench/nothing.js')]),
      version: () => time([program, '--version']),
      check: () => time([program, 'check', here('bench/engine')], { exit: CHECKED }),
      ...(hasCertificates
        ? { fewer: () => time([here('bench/nothing.js')], { env: withoutCertificates }) }
        : {}),
    },
    rounds,
  );
  const row = (what, name, target) => [what, ms(times[name]), ratio(times[name] / times.node), target];
  return [
    [`bare node, median of ${rounds}`, ms(times.node), '1.00', ''],
    ...(hasCertificates ? [row(`the same without ${CERTIFICATES}`, 'fewer', '')] : []),
    row('--version', 'version', '1.3 of bare node'),
    row('check of one engine, six documents', 'check', '2.0, at most 2.5 of bare node'),
  ];
}

async function manyEngines(rounds) {
  const parser = await bundledParser();
  const folder = (engines) => join(scratch, String(engines));
  for (const engines of [100, 1000]) writeShop(folder(engines), engines);
  const check = (engines) => [program, 'check', folder(engines), '--format', 'json'];
  const times = medians(
    {
      parse: () => numberFrom([parser, folder(1000)]),
      hundred: () => time(check(100), { exit: CHECKED }),
      thousand: () => time(check(1000), { exit: CHECKED }),
    },
    rounds,
  );
  const peak = (engines) =>
    median(
      Array.from({ length: rounds }, () =>
        numberFrom(['--import', pathToFileURL(here('bench/peak.js')).href, ...check(engines)], {
          pipe: 3,
          exit: CHECKED,
        }),
      ),
    );
  const [few, many] = [peak(100), peak(1000)];
  return [
    [`parsing 1,000 engines, median of ${rounds}`, ms(times.parse), '1.00', ''],
    [
      `check of 1,000 engines, ${Math.min(4, cpus().length)} threads`,
      ms(times.thousand),
      ratio(times.thousand / times.parse),
      '1.5 of parsing',
    ],
    ['check of 100 engines', ms(times.hundred), ratio(times.thousand / times.hundred), '10 times for 1,000'],
    ['peak memory of 100 engines', mib(few), '1.00', ''],
    ['peak memory of 1,000 engines', mib(many), ratio(many / few), '1.3 of that of 100'],
  ];
}

/** A repository of 400 sessions, three an engine, in which the last commit changed one reading of one session. */
function changesInRepository(rounds) {
  const folder = join(scratch, 'repository');
  writeShop(folder, 134);
  commitAll(folder);
  const session = join(folder, 'engines/pump-0100/sessions/2-trial.yaml');
  writeFileSync(session, readFileSync(session, 'utf8').replace(/value: 0\.\d+/, 'value: 0.0088'));
  commitAll(folder);
  const tenths = (...words) => time([program, ...words], { exit: CHECKED, cwd: folder });
  const times = medians(
    {
      node: () => time([here('bench/nothing.js')]),
      engine: () => tenths('check', 'engines/pump-0100'),
      since: () => tenths('check', '--since', 'HEAD~1'),
      diff: () => tenths('diff', 'HEAD~1', 'HEAD'),
    },
    rounds,
  );
  const row = (what, name, target) => [what, ms(times[name]), ratio(times[name] / times.node), target];
  return [
    row('check of one engine with three sessions', 'engine', ''),
    row('check --since HEAD~1 of 400 sessions', 'since', '2.5 of bare node'),
    row('diff HEAD~1 HEAD of 400 sessions', 'diff', '2.5 of bare node'),
  ];
}

/** The parser on its own, from the same sources and in the same way as the program's. */
async function bundledParser() {
  const outfile = join(scratch, 'parse.mjs');
  await build({ ...PROGRAM, entryPoints: [here('bench/parse.js')], outfile });
  return outfile;
}

function tableText(rows) {
  const widths = HEAD.map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  return rows
    .map(([what, measured, times, target]) =>
      [what.padEnd(widths[0]), measured.padStart(widths[1]), times.padStart(widths[2]), target].join('  '),
    )
    .map((line) => `${line.trimEnd()}\n`)
    .join('');
}
