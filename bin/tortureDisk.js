// Entries on disks that are too small or read-only: `tenths record` while readings arrive, and every other command that
// writes. Needs the right to mount. What was answered must be kept, the session that stood must be whole, what went
// wrong must be said with exit code 2, and with room again the entry must go on. Prints figures; ends with 1 otherwise.
//
//   node bin/tortureDisk.js

import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const PROGRAM = join(import.meta.dirname, 'tenths.cjs');
const PAGE = 4096;
const POINTS = 100;

const mount = mkdtempSync(join(tmpdir(), 'torture disk '));
const sessions = join(mount, 'engines/pump/sessions');
const session = join(sessions, 'teardown.yaml');
const part = join(sessions, '.teardown.part');
const failures = [];

const say = (line) => process.stdout.write(`${line}\n`);
const mounted = (options) => spawnSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', mount]).status === 0;
const remounted = (options) => spawnSync('mount', ['-o', `remount,${options}`, mount]).status === 0;

/** A session that waits for a hundred readings, each of which is out and so spoken of once it is on the disk. */
const WAITING = `kind: session
stage: teardown
date: 2026-02-03
readings:
  - measure: main_journal_diameter   # throw alone
    at:
${Array.from({ length: POINTS }, (_, index) => `      ${index + 1}: ~\n`).join('')}`;

const READINGS = Array.from({ length: POINTS }, (_, index) => (3 + index / 10000).toFixed(4));

function makeShop() {
  const files = {
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'engines/pump/engine.yaml': `kind: engine\nname: Pump\nlayout: { mains: ${POINTS} }\n`,
    'engines/pump/limits.yaml':
      'kind: limits\nsource: Invented.\nlimits: { main_journal_diameter: { wear: { min: 9 } } }\n',
    'imports/mains.yaml':
      'columns: { position: Main, value: Reading }\nmeasure: main_journal_diameter\ndelimiter: comma\ndecimal: point\nunit: in\ndecimals: as written\n',
    'mains.csv': 'Main,Reading\n1,3.2478\n',
  };
  mkdirSync(sessions, { recursive: true });
  mkdirSync(join(mount, 'imports'));
  for (const [path, text] of Object.entries(files)) writeFileSync(join(mount, path), text);
  writeFileSync(session, WAITING);
}

function tenths(words, input = '') {
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...words], {
    cwd: mount,
    input,
    encoding: 'utf8',
    timeout: 60_000,
  });
  return { status, said: stdout + stderr, stderr };
}

const isTrace = (text) => /^ +at |bug of ours/m.test(text);

function keptIn(path) {
  if (!existsSync(path)) return [];
  return readFileSync(path, 'utf8')
    .split('\n')
    .flatMap((line) => /^\{"do":"take".*"text":"([^"]+)".*\}$/.exec(line)?.[1] ?? []);
}

const written = () => readFileSync(session, 'utf8').match(/\d\.\d{4}/g) ?? [];

/** One entry on a disk with so many pages left. */
function fillDisk(free, tally) {
  const fail = (what, said = '') => failures.push(`${free} pages free: ${what}\n${said.slice(-400)}`);
  makeShop();
  const used = spawnSync('du', ['-s', '-B', `${PAGE}`, mount], { encoding: 'utf8' }).stdout.split('\t')[0];
  if (!remounted(`size=${(Number(used) + free) * PAGE}`)) return fail('could not be made smaller');
  const { status, said, stderr } = tenths(['record', '--session', 'teardown'], `${READINGS.join('\n')}\n`);
  const answered = new Set(stderr.match(/^line \d+:/gm)).size;
  const kept = keptIn(part);
  tally.runs++;
  tally.answered += answered;
  if (isTrace(said)) fail('a stack trace', said);
  if (status === 2) {
    tally.full++;
    tally.begun += kept.length > 0 ? 1 : 0;
    if (!/ENOSPC/.test(stderr)) fail('nothing said of the disk', said);
    if (readFileSync(session, 'utf8') !== WAITING) fail('the session that stood is another');
    if (kept.length < answered) fail(`${answered} answered, ${kept.length} kept`);
  } else if (written().join() !== READINGS.join()) {
    fail('success, and other readings in the session', said);
  }
  if (kept.some((text, index) => text !== READINGS[index])) fail('other readings kept');
  const left = readdirSync(sessions).filter((name) => name.endsWith('.tmp') || name.endsWith('.lock'));
  if (left.length > 0) fail(`left ${left}`);
  if (status !== 2) return;
  // Room again: the entry goes on with what it had not acknowledged.
  remounted('size=2M');
  const rest = READINGS.slice(kept.length);
  const again = tenths(['record', '--session', 'teardown'], `${rest.map((each) => `${each}\n`).join('')}.\n`);
  if (again.status !== 1 || written().join() !== READINGS.join()) fail('did not go on', again.said);
}

function fillDisks() {
  const tally = { runs: 0, full: 0, begun: 0, answered: 0 };
  for (let free = 0; free <= 14; free++) {
    if (!mounted('size=2M')) return say('record on a small disk: left out, mounting is not permitted here');
    try {
      fillDisk(free, tally);
    } finally {
      spawnSync('umount', [mount]);
    }
  }
  say(
    `record on a small disk: ${tally.runs} entries of ${POINTS} readings, ${tally.full} stopped by the full disk ` +
      `(${tally.begun} of them after readings were kept), ${tally.answered} readings answered`,
  );
}

/** Every command that writes, on a disk that is mounted read-only. */
const WRITING = [
  ['record', '--session', 'teardown'],
  ['record', '--stage', 'trial'],
  ['new', 'engine', 'Crane'],
  ['new', 'session', '--stage', 'trial'],
  ['new', 'torque', 'caps', '--passes', '40'],
  ['init', '--hook', '--ci'],
  ['import', 'mains.csv', '--stage', 'machined'],
  ['import', 'mains.csv', '--new-map', 'more'],
];

function readOnly() {
  if (!mounted('size=2M')) return say('read-only disk: left out, mounting is not permitted here');
  try {
    makeShop();
    remounted('ro');
    for (const words of WRITING) {
      const { status, said, stderr } = tenths(words, '3.2478\n');
      if (status !== 2 || !/read-only \(EROFS\)/.test(stderr) || isTrace(said))
        failures.push(`read-only disk: ${words.join(' ')}: exit ${status}\n${said.slice(-400)}`);
    }
    const { status } = tenths(['check']);
    if (status !== 0) failures.push(`read-only disk: check: exit ${status}`);
  } finally {
    spawnSync('umount', [mount]);
  }
  say(`read-only disk: ${WRITING.length} commands that write, and check`);
}

try {
  fillDisks();
  readOnly();
} finally {
  rmSync(mount, { recursive: true, force: true });
}
say(`disks: ${failures.length} failures`);
for (const failure of failures) say(`  ${failure}`);
process.exitCode = failures.length === 0 ? 0 : 1;
