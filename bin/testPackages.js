// Packs the program, installs the tarball in an empty folder under each node that is supported, and does the main job there.
import { execFileSync, spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fetchNode } from './fetched.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const VERSIONS = ['20.19.0', '22', '24', '26'];
/** Of which a single file is made and tried. */
const BINARIES = ['20.19.0', '24'];
/** Much more than today's 1 MB: something was packed that nobody needs. */
const MOST_PACKED_BYTES = 3_000_000;
/** What one call may print, well above what a check of the examples does. */
const MOST_PRINTED_BYTES = 64 * 1024 ** 2;

const work = mkdtempSync(join(tmpdir(), 'tenths-package-'));
let failures = 0;
try {
  const tarball = pack();
  checkTarball(tarball);
  for (const version of VERSIONS) tryUnder(version, tarball);
  for (const version of BINARIES) tryBinary(version);
} finally {
  rmSync(work, { recursive: true, force: true });
}
process.stdout.write(`${failures === 0 ? 'all parts held' : `${failures} parts failed`}\n`);
process.exitCode = failures === 0 ? 0 : 1;

function pack() {
  const words = ['run', '--silent', 'package', '--', '--json', '--pack-destination', work];
  const told = execFileSync('npm', words, { cwd: root, encoding: 'utf8' });
  const [{ filename, size, unpackedSize }] = JSON.parse(told.slice(told.indexOf('[')));
  process.stdout.write(`${filename}: ${size} bytes packed, ${unpackedSize} unpacked\n`);
  return join(work, filename);
}

function checkTarball(tarball) {
  held('its size', statSync(tarball).size <= MOST_PACKED_BYTES, `more than ${MOST_PACKED_BYTES} bytes`);
  const lint = spawnSync('npx', ['publint', tarball, '--strict'], { cwd: root, encoding: 'utf8' });
  held('publint', lint.status === 0, lint.stdout + lint.stderr);
  const folder = join(work, 'unpacked');
  mkdirSync(folder);
  execFileSync('tar', ['-xzf', tarball, '-C', folder]);
  const notices = readFileSync(join(folder, 'package/dist/NOTICES.txt'), 'utf8');
  const { dependencies = {} } = JSON.parse(readFileSync(join(folder, 'package/package.json'), 'utf8'));
  held(
    'no package to install beside it',
    Object.keys(dependencies).length === 0,
    Object.keys(dependencies).join(', '),
  );
  for (const name of [
    'cli-table3',
    'yaml',
    'commander',
    'chalk',
    'csv-parse',
    'string-width',
    'mathjs',
    'hyparquet-writer',
  ]) {
    held(`the notice of ${name}`, new RegExp(`^${name} \\d`, 'm').test(notices), 'it is not in NOTICES.txt');
  }
}

function tryUnder(version, tarball) {
  const node = fetchNode(version);
  const shop = join(work, `shop ${version}`);
  mkdirSync(shop);
  writeFileSync(join(shop, 'package.json'), '{ "private": true }\n');
  const env = { ...process.env, PATH: `${dirname(node)}:${process.env.PATH}`, NO_COLOR: '1' };
  const installed = spawnSync('npm', ['install', '--offline', '--no-audit', '--no-fund', tarball], {
    cwd: shop,
    encoding: 'utf8',
    env: process.env,
  });
  held(`${version}: installs without a network`, installed.status === 0, installed.stderr);
  const program = join(shop, 'node_modules/.bin/tenths');
  const tenths = (...words) =>
    spawnSync(node, [program, ...words], { cwd: shop, encoding: 'utf8', env, maxBuffer: MOST_PRINTED_BYTES });
  const prints = (what, words, exitCode, pattern) => {
    const { status, signal, stdout, stderr } = tenths(...words);
    const ends = status === exitCode && pattern.test(stdout);
    held(`${version}: ${what}`, ends, `exit ${status ?? signal}\n${stdout.slice(0, 400)}${stderr}`);
  };
  prints('says its version', ['--version'], 0, /^\d+\.\d+\.\d+\n$/);
  mkdirSync(join(shop, 'new shop'));
  prints('makes a shop', ['init', 'new shop'], 0, /shop\.yaml/);
  held(
    `${version}: brings its schemas`,
    existsSync(join(shop, 'new shop/.tenths/schemas/session.json')),
    'no schemas in the shop',
  );
  cpSync(join(root, 'examples'), join(shop, 'examples'), { recursive: true });
  prints('checks where the examples stand', ['check', 'examples'], 0, /\d+ ok/);
  prints('checks all that was found in them', ['check', 'examples', '--all'], 1, /out, /);
  prints(
    'checks it as JSON',
    ['check', 'examples', '--all', '--format', 'json'],
    1,
    /"format": ?"tenths\.check"/,
  );
  prints('explains a finding', ['explain', 'reading/out'], 0, /reading\/out/);
}

/** One file of node and the program, in a folder that has neither, prints what the installed package prints. */
function tryBinary(version) {
  const file = join(work, `binary ${version}/tenths`);
  const made = spawnSync(process.execPath, ['bin/binary.js', fetchNode(version), file], {
    cwd: root,
    encoding: 'utf8',
  });
  held(`${version}: is made into one file`, made.status === 0, made.stderr);
  process.stdout.write(made.stdout);
  const shop = join(work, `shop ${version}`);
  const [HOME, PATH] = [join(work, `home ${version}`), '/nowhere'];
  mkdirSync(HOME);
  const printed = (command, words) => {
    const env = { HOME, PATH, NO_COLOR: '1' };
    const { status, stdout } = spawnSync(command, words, { cwd: shop, env, maxBuffer: MOST_PRINTED_BYTES });
    return { status, text: String(stdout) };
  };
  const installed = [join(shop, 'node_modules/tenths/bin/tenths.cjs'), 'check', 'examples', '--all'];
  const [one, other] = [
    printed(fetchNode(version), installed),
    printed(file, ['check', 'examples', '--all']),
  ];
  held(
    `${version}: one file checks as the package does`,
    one.status === 1 && other.status === 1 && one.text.length > 1000 && one.text === other.text,
    `exit ${one.status} and ${other.status}\n${other.text.slice(0, 400)}`,
  );
}

function held(what, isSo, why) {
  process.stdout.write(`${isSo ? 'held  ' : 'FAILED'}  ${what}\n`);
  if (isSo) return;
  failures += 1;
  process.stdout.write(`${why}\n`);
}
