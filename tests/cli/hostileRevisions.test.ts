import { chmodSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commit, git, put, tryGit } from '../shell/gitShop.ts';
import { call } from './call.ts';
import { withBenchShop } from './gitHere.ts';

const here = withBenchShop();

/** What would make a file, run a command or read outside if git took it for more than a name. */
const HOSTILE = [
  '--output=made',
  '--output made',
  '-o made',
  '-Omade',
  '--contents=made',
  '--no-index',
  '--exec=touch made',
  '--upload-pack=touch made',
  '--git-dir=.',
  '--help',
  '--all',
  '--end-of-options',
  '-',
  'HEAD --output=made',
  'HEAD\n--output=made',
  '$(touch made)',
  '`touch made`',
  ';touch made',
  '|touch made',
  'HEAD^{/--output=made}',
  ':/Teardown',
  '^HEAD',
  '../../etc/passwd',
  'HEAD\u001b[31m',
];

/** Every command that takes a revision. */
const CALLS: readonly (readonly [string, (revision: string) => readonly string[]])[] = [
  ['check --at', (revision) => ['check', `--at=${revision}`]],
  ['check --since', (revision) => ['check', `--since=${revision}`]],
  ['diff A', (revision) => ['diff', '--', revision, 'HEAD', 'engines/mill']],
  ['diff B', (revision) => ['diff', '--', 'HEAD', revision, 'engines/mill']],
  ['diff A:path', (revision) => ['diff', '--', `${revision}:engines/mill`, 'HEAD:engines/mill']],
  ['diff A:../path', () => ['diff', '--', 'HEAD:../../etc/passwd', 'HEAD:/etc/passwd']],
  [
    'explain --at',
    (revision) => ['explain', 'engines/mill', 'main_bearing_clearance', '1', `--at=${revision}`],
  ],
  ['study --at', (revision) => ['study', 'engines/mill', `--at=${revision}`]],
  ['trend --at', (revision) => ['trend', 'main_bearing_clearance', 'engines/mill', `--at=${revision}`]],
  [
    'trend --history --at',
    (revision) => ['trend', 'main_bearing_clearance', 'engines/mill', '--history', `--at=${revision}`],
  ],
];

describe('a hostile revision makes no file and runs no command', () => {
  it.each(CALLS)('in %s', async (_name, words) => {
    const before = readdirSync(here.shop);
    for (const revision of HOSTILE) {
      const { out, err, exit } = await call(here.shop, words(revision));
      expect([revision, exit, out]).toEqual([revision, 2, '']);
      expect(err).toMatch(/^tenths: /);
      expect(err).not.toMatch(/^\s+at /m);
      expect(err).not.toContain('\u001b');
    }
    expect(readdirSync(here.shop)).toEqual(before);
    expect(existsSync(join(process.cwd(), 'made'))).toBe(false);
  });
});

describe('a bare repository that came inside a pull request', () => {
  it('is only files to every command that reads commits from there', async () => {
    const inner = join(here.shop, 'engines/mill/evil');
    git(here.shop, 'clone', '-q', '--bare', '.', inner);
    mkdirSync(join(here.parent, 'markers'));
    put(here.parent, 'trap', `#!/bin/sh\n: > '${here.parent}/markers/embedded'\n`);
    chmodSync(join(here.parent, 'trap'), 0o755);
    git(inner, 'config', 'core.bare', 'false');
    git(inner, 'config', 'core.worktree', '.');
    git(inner, 'config', 'core.fsmonitor', `'${join(here.parent, 'trap')}'`);
    const head = commit(here.shop, 'Evil');
    for (const words of [
      ['check', '..', '--at', 'HEAD'],
      ['check', '..', '--since', 'HEAD~1'],
      ['diff', 'HEAD~1', 'HEAD', '../../mill'],
      ['trend', 'main_bearing_clearance', '../../mill', '--history'],
    ]) {
      expect((await call(inner, words)).exit).toBeLessThan(2);
    }
    expect((await call(inner, ['check', '..', '--at', 'HEAD'])).out).toContain(head.slice(0, 10));
    expect(readdirSync(join(here.parent, 'markers'))).toEqual([]);
    tryGit(inner, 'status');
    expect(readdirSync(join(here.parent, 'markers'))).toEqual(['embedded']);
  });
});
