import { execFileSync, spawnSync } from 'node:child_process';
import {
  appendFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

/** Plain git, as a person would call it; gives what it printed. */
export const git = (folder: string, ...args: string[]): string =>
  execFileSync('git', args, {
    cwd: folder,
    encoding: 'utf8',
    timeout: 100_000,
    stdio: ['ignore', 'pipe', 'pipe'],
  }).trim();

/** Plain git for what may fail: only what it leaves behind is looked at. */
export function tryGit(folder: string, ...args: string[]): void {
  // Some commands ask for this on their standard input, the others do not read it.
  const input = 'protocol=https\nhost=nowhere.invalid\n\n';
  spawnSync('git', args, { cwd: folder, timeout: 100_000, input });
}

export function put(folder: string, path: string, text: string): void {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
}

export const temporaryFolder = (): string => realpathSync(mkdtempSync(join(tmpdir(), 'git shop ')));

/** With a space and letters beyond ASCII. */
export const SHOP_NAME = 'Übung shop';

/** Makes a folder once, and copies of it after that: to copy is faster. */
export function madeOnce(make: (folder: string) => void): (folder: string) => void {
  let made: string | undefined;
  return (folder) => {
    if (made === undefined) {
      const first = temporaryFolder();
      make(first);
      made = first;
    }
    cpSync(made, folder, { recursive: true });
  };
}

/** Of whoever commits, and without what git does on its own after a commit. */
const SETTINGS = `[core]
\tfsync = none
[user]
\tname = A. Machinist
\temail = machinist@example.invalid
[maintenance]
\tauto = false
`;

export function newRepository(folder: string): void {
  git(folder, 'init', '-q', '-b', 'main', '--template=');
  appendFileSync(join(folder, '.git/config'), SETTINGS);
}

/** As `git config` sets them, without a process for each. */
export function configure(gitFolder: string, settings: Readonly<Record<string, string>>): void {
  appendFileSync(join(gitFolder, 'config'), Object.entries(settings).map(settingText).join(''));
}

function settingText([key, value]: readonly [string, string]): string {
  const [, section, within, name] = /^([^.]+)(?:\.(.+))?\.([^.]+)$/.exec(key) ?? [];
  const title = within === undefined ? section : `${section} "${within}"`;
  return `[${title}]\n\t${name} = "${value.replaceAll(/["\\]/g, '\\$&')}"\n`;
}

/** A repository of two commits. */
export function makeShop(parent: string, name = SHOP_NAME): string {
  const shop = join(parent, name);
  copyShop(shop);
  return shop;
}

const copyShop = madeOnce((shop) => {
  newRepository(shop);
  put(shop, 'engines/pump é/engine.yaml', 'kind: engine\n');
  put(shop, 'engines/pump é/sessions/teardown.yaml', 'kind: session\n');
  put(shop, 'shop.yaml', 'kind: shop\n');
  commit(shop, 'Teardown');
  put(shop, 'engines/pump é/sessions/rebuild.yaml', 'kind: session\r\nby: RK\r\n');
  commit(shop, 'Rebuild of the pump');
  pack(shop);
});

/** All that was committed as one file: a third of the time to copy. */
export const pack = (shop: string): string => git(shop, 'repack', '-adq');

export function commit(shop: string, message: string): string {
  git(shop, 'add', '-A');
  git(shop, 'commit', '-q', '-m', message);
  return headOf(shop);
}

/** Read as git has just written it: a process for each would take longer than the commits. */
export function headOf(shop: string): string {
  try {
    const [, branch] = /^ref: (.*)\n$/.exec(readFileSync(join(shop, '.git/HEAD'), 'utf8')) ?? [];
    if (branch !== undefined) return readFileSync(join(shop, '.git', branch), 'utf8').trim();
  } catch {
    // In a tree beside another, and where branches are packed.
  }
  return git(shop, 'rev-parse', 'HEAD');
}
