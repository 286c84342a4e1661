import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

export const PROGRAM = join(import.meta.dirname, '../tenths.cjs');

export const POINTS = 100;

/** Where the entries of the shop below go. */
export const SESSIONS = 'engines/pump/sessions';

/** A session that waits for a hundred readings, each of which is out and so spoken of once it is on the disk. */
export const WAITING = `kind: session
stage: teardown
date: 2026-02-03
readings:
  - measure: main_journal_diameter   # throw alone
    at:
${Array.from({ length: POINTS }, (_, index) => `      ${index + 1}: ~\n`).join('')}`;

const FILES = {
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'engines/pump/engine.yaml': `kind: engine\nname: Pump\nlayout: { mains: ${POINTS} }\n`,
  'engines/pump/limits.yaml':
    'kind: limits\nsource: Invented.\nlimits: { main_journal_diameter: { wear: { min: 9 } } }\n',
  'imports/mains.yaml':
    'columns: { position: Main, value: Reading }\nmeasure: main_journal_diameter\ndelimiter: comma\ndecimal: point\nunit: in\ndecimals: as written\n',
  'mains.csv': 'Main,Reading\n1,3.2478\n',
  [`${SESSIONS}/teardown.yaml`]: WAITING,
};

export function makeShop(folder) {
  for (const [path, text] of Object.entries(FILES)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

/** Nothing that the user has set. */
export const ENVIRONMENT = { PATH: process.env.PATH, HOME: '/nonexistent', LANG: 'C.UTF-8' };

export function tenths(folder, words, input = '', env = ENVIRONMENT) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...words], {
    cwd: folder,
    input,
    env,
    encoding: 'utf8',
    timeout: 60_000,
  });
  return { status, said: stdout + stderr, stderr };
}

/** How many readings were answered. */
export const answersIn = (stderr) => new Set(stderr.match(/^line \d+:/gm)).size;

/** The readings that an entry keeps beside its session. */
export function keptIn(path) {
  if (!existsSync(path)) return [];
  return readFileSync(path, 'utf8')
    .split('\n')
    .flatMap((line) => /^\{"do":"take".*"text":"([^"]+)".*\}$/.exec(line)?.[1] ?? []);
}

/** The readings that stand in a session. */
export const writtenIn = (path) =>
  existsSync(path) ? (readFileSync(path, 'utf8').match(/\d\.\d{4}/g) ?? []) : [];

/** Our own fault, not the disk's. */
export const isTrace = (text) => /^ +at |bug of ours/m.test(text);
