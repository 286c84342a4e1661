// What takes too long or needs too much for `npm test`: programs killed while they write, every system call of a write
// failed in turn (needs strace), and a disk that is too small (needs the right to mount). Prints figures; ends with 1
// when a reading that was acknowledged is lost, a file is not whole, or success is reported falsely.
//
//   node bin/torture.js [kills=300]

import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildSync } from 'esbuild';
import { parse } from 'yaml';

const KILLS = Number(process.argv[2] ?? 300);
const START = 'kind: session\n# taken in the order of the bench\nreadings: []   # none yet\n';

const folder = mkdtempSync(join(tmpdir(), 'torture '));
const program = join(folder, 'appender.cjs');
const failures = [];

const say = (line) => process.stdout.write(`${line}\n`);

function bundle() {
  const entry = join(import.meta.dirname, '../tests/shell/write/appender.ts');
  buildSync({ entryPoints: [entry], outfile: program, bundle: true, platform: 'node', format: 'cjs' });
}

function makeShop(name) {
  const shop = join(folder, name);
  mkdirSync(shop);
  writeFileSync(join(shop, 'a.yaml'), START);
  return shop;
}

/** The notes of the readings in a session; undefined when the file is not whole. */
function notesIn(shop) {
  try {
    const { readings } = parse(readFileSync(join(shop, 'a.yaml'), 'utf8'));
    return readings.map(({ note }) => note);
  } catch {
    return undefined;
  }
}

const besides = (shop) => readdirSync(shop).filter((name) => name !== 'a.yaml');

/** Runs the appender and kills it after some time; gives what it acknowledged and how it ended. */
function runAndKill(shop, name, signal, delayMs) {
  return new Promise((ended) => {
    const child = spawn(process.execPath, [program, shop, 'a.yaml', name, '1000']);
    let said = '';
    let complaint = '';
    let begun = false;
    child.stdout.on('data', (text) => {
      said += text;
      // Counted from the first reading, so that the signal meets writing and not the start of the program.
      if (!begun) setTimeout(() => child.kill(signal), delayMs);
      begun = true;
    });
    child.stderr.on('data', (text) => {
      complaint += text;
      if (!begun) child.kill();
    });
    child.on('close', (code) => ended({ saved: said.split('\n').slice(0, -1), code, complaint }));
  });
}

async function killRuns() {
  let shop = makeShop('kills');
  const total = { saved: 0, lost: 0, torn: 0, left: 0, refused: 0, wrongExit: 0 };
  const seen = [];
  for (let run = 0; run < KILLS; run++) {
    // A new file now and then, or reading it would soon take all the time.
    if (run % 25 === 0) {
      shop = makeShop(`kills-${run}`);
      seen.length = 0;
    }
    const signal = ['SIGKILL', 'SIGINT', 'SIGTERM'][run % 3];
    const { saved, code, complaint } = await runAndKill(shop, `r${run}`, signal, Math.random() * 60);
    seen.push(...saved);
    const notes = notesIn(shop);
    total.saved += saved.length;
    total.lost += notes === undefined ? 0 : seen.filter((note) => !notes.includes(note)).length;
    total.torn += notes === undefined ? 1 : 0;
    total.refused += complaint === '' ? 0 : 1;
    if (complaint !== '') say(`  ${complaint.trim()}`);
    if (signal !== 'SIGKILL') {
      total.left += besides(shop).length;
      total.wrongExit += code === { SIGINT: 130, SIGTERM: 143 }[signal] ? 0 : 1;
    }
  }
  say(
    `kill: ${KILLS} runs (KILL, INT, TERM), ${total.saved} readings acknowledged, ${total.lost} lost, ${total.torn} files torn, ` +
      `${total.left} files left behind after INT or TERM, ${total.wrongExit} wrong exit codes, ${total.refused} runs refused`,
  );
  if (Object.entries(total).some(([name, count]) => name !== 'saved' && count > 0)) failures.push('kill');
}

/** Is what stands in the file one of the two whole states, and does it hold what was acknowledged? */
function judge(shop, status, said, tally, start = START) {
  const text = readFileSync(join(shop, 'a.yaml'), 'utf8');
  const notes = notesIn(shop);
  const whole = text === start || (notes?.length === 1 && notes[0] === 'x-1');
  const falseSuccess = (status === 0 || said.includes('x-1')) && text === start;
  tally.runs++;
  tally.old += text === start ? 1 : 0;
  tally.torn += whole ? 0 : 1;
  tally.falseSuccess += falseSuccess ? 1 : 0;
}

const tallyText = ({ runs, old, torn, falseSuccess }) =>
  `${runs} runs, ${old} kept the old file, ${runs - old - torn} have the new one, ${torn} damaged, ${falseSuccess} false successes`;

const FAULTS = ['error=ENOSPC', 'error=EIO', 'error=EMFILE', 'error=EACCES', 'signal=SIGKILL'];

/** Each system call that touches the shop's folder, failed in turn. */
function injectFaults() {
  if (spawnSync('strace', ['-V']).status !== 0) return say('strace: left out, it is not installed');
  const probe = makeShop('probe');
  if (strace(probe, []).status !== 0) return say('strace: left out, tracing is not permitted here');
  const calls = callsOn(probe);
  const tally = { runs: 0, old: 0, torn: 0, falseSuccess: 0 };
  let met = 0;
  for (const { call, nth } of calls) {
    for (const fault of faultsOf(call)) {
      const shop = makeShop(`inject-${tally.runs}`);
      const { status, stdout } = strace(shop, ['-e', `inject=${call}:${fault}:when=${nth}`]);
      met += wasMet(shop) ? 1 : 0;
      judge(shop, status, stdout, tally);
    }
  }
  say(
    `strace: ${calls.length} calls of one append, ${tallyText(tally)} (${met} faults met a call on the folder)`,
  );
  if (tally.torn + tally.falseSuccess > 0) failures.push('strace');
}

// A short count means something only where bytes are counted; here the system claims seven that it never moved.
const faultsOf = (call) => (/^p?(read|write)/.test(call) ? [...FAULTS, 'retval=7'] : FAULTS);

function strace(shop, inject) {
  const options = ['-f', '-y', '-qq', '-o', join(folder, 'trace'), '-e', 'trace=%file,%desc', ...inject];
  const run = [process.execPath, program, shop, 'a.yaml', 'x', '1'];
  return spawnSync('strace', [...options, ...run], { encoding: 'utf8', timeout: 60_000 });
}

const traceLines = () => readFileSync(join(folder, 'trace'), 'utf8').split('\n');

/** The calls of the main thread that name the folder or something in it: strace counts each thread by itself. */
function callsOn(shop) {
  const lines = traceLines();
  const main = lines[0].split(' ')[0];
  const counts = new Map();
  const found = [];
  for (const line of lines.filter((line) => line.startsWith(`${main} `))) {
    const call = /^\d+ +(\w+)\(/.exec(line)?.[1];
    if (call === undefined) continue;
    const nth = (counts.get(call) ?? 0) + 1;
    counts.set(call, nth);
    if (line.includes(shop) && call !== 'execve') found.push({ call, nth });
  }
  return found;
}

// The number of calls before ours is not the same in every run, so a fault may hit another call.
const wasMet = (shop) =>
  traceLines().some((line) => line.includes(shop) && (line.includes('(INJECTED)') || line.endsWith('= ?')));

/** A disk on which the new file just does not fit. */
function fillDisks() {
  const mount = join(folder, 'disk');
  mkdirSync(mount);
  const tally = { runs: 0, old: 0, torn: 0, falseSuccess: 0 };
  for (const pages of [3, 4, 5, 6, 7, 8]) {
    const sized = ['-t', 'tmpfs', '-o', `size=${pages * 4096}`, 'tmpfs', mount];
    if (spawnSync('mount', sized).status !== 0)
      return say('small disk: left out, mounting is not permitted here');
    try {
      // Two pages: with the new text beside it and the lock, the smaller disks are full.
      const padded = START + `# ${'x'.repeat(98)}\n`.repeat(75);
      writeFileSync(join(mount, 'a.yaml'), padded);
      const { status, stdout } = spawnSync(process.execPath, [program, mount, 'a.yaml', 'x', '1'], {
        encoding: 'utf8',
      });
      judge(mount, status, stdout, tally, padded);
      if (besides(mount).length > 0) failures.push(`small disk: left ${besides(mount)}`);
    } finally {
      execFileSync('umount', [mount]);
    }
  }
  say(`small disk: ${tallyText(tally)}`);
  if (tally.torn + tally.falseSuccess > 0) failures.push('small disk');
}

try {
  bundle();
  await killRuns();
  injectFaults();
  fillDisks();
} finally {
  rmSync(folder, { recursive: true });
}
if (failures.length > 0) say(`FAILED: ${failures.join(', ')}`);
process.exitCode = failures.length > 0 ? 1 : 0;
