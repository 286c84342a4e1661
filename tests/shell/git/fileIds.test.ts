import {
  lstatSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readBelow } from '../../../src/shell/discover/safeRead.ts';
import { fileIds } from '../../../src/shell/git/fileIds.ts';
import { notedFiles } from '../../../src/shell/git/index.ts';
import { openRepository } from '../../../src/shell/git/openRepository.ts';
import type { GitPlace } from '../../../src/shell/git/process.ts';
import type { Outcome } from '../../../src/shell/problem.ts';
import { runs, some } from '../../propertyRuns.ts';
import { commit, git, headOf, makeShop, put, temporaryFolder, tryGit } from '../gitShop.ts';

let parent = '';
let shop = '';

beforeEach(() => {
  parent = temporaryFolder();
  shop = makeShop(parent);
  writtenLongAgo();
});

afterEach(() => rmSync(parent, { recursive: true }));

const PATHS = [
  'engines/pump é/engine.yaml',
  'engines/pump é/sessions/rebuild.yaml',
  'engines/pump é/sessions/teardown.yaml',
  'shop.yaml',
];

let age = 1e9;

/** As a shop is on the day after: no file is as young as what git noted of it. */
function writtenLongAgo(): void {
  // git compares whole seconds: by another second it sees that there is something to note.
  age += 1;
  for (const entry of readdirSync(shop, { recursive: true, withFileTypes: true }))
    if (entry.isFile() && !`${entry.parentPath}/`.includes('/.git/'))
      utimesSync(join(entry.parentPath, entry.name), age, age);
  tryGit(shop, 'update-index', '-q', '--refresh');
}

function place(folder = shop): GitPlace {
  const opened = openRepository(folder, process.env);
  if (!opened.ok) throw new Error(opened.problem.message);
  return opened.value;
}

/** The ids as they are reported, and which files were read for them. */
function told(paths: readonly string[] = PATHS, root = shop): { ids: unknown[]; read: string[] } {
  const read: string[] = [];
  const reading = (path: string): Outcome<Uint8Array> => {
    read.push(path);
    return readBelow(root, path, 10_000);
  };
  const idOf = fileIds(root, { place: place(root), commit: headOf(root) }, reading);
  return { ids: paths.map(idOf), read };
}

const asGitSays = (paths: readonly string[] = PATHS, root = shop): string[] =>
  git(root, 'hash-object', ...paths).split('\n');

describe('the ids of files in a working tree are those that git gives them', () => {
  it('and nothing is read that git has seen as it is', () => {
    expect(told()).toEqual({ ids: asGitSays(), read: [] });
    expect(told(['engine.yaml', 'sessions/teardown.yaml'], join(shop, 'engines/pump é'))).toEqual({
      ids: asGitSays(['engines/pump é/engine.yaml', 'engines/pump é/sessions/teardown.yaml']),
      read: [],
    });
  });

  it('also by way of a link to the shop', () => {
    symlinkSync(shop, join(parent, 'link'));
    expect(told(PATHS, join(parent, 'link'))).toEqual({ ids: asGitSays(), read: [] });
  });

  it('after an edit, also of the same length and with the old time put back', () => {
    const before = lstatSync(join(shop, 'shop.yaml'));
    put(shop, 'shop.yaml', 'kind: pohs\n');
    utimesSync(join(shop, 'shop.yaml'), before.atime, before.mtime);
    expect(lstatSync(join(shop, 'shop.yaml'))).toMatchObject({ size: before.size, mtimeMs: before.mtimeMs });
    expect(told()).toEqual({ ids: asGitSays(), read: ['shop.yaml'] });
  });

  it('also of one that git was told to take for unchanged', () => {
    git(shop, 'update-index', '--assume-unchanged', 'shop.yaml');
    put(shop, 'shop.yaml', 'kind: pohs\n');
    expect(told()).toEqual({ ids: asGitSays(), read: ['shop.yaml'] });
  });

  it('also of one that git has never seen, or that is gone', () => {
    put(shop, 'new.yaml', 'kind: limits\n');
    expect(told(['new.yaml'])).toEqual({ ids: asGitSays(['new.yaml']), read: ['new.yaml'] });
    rmSync(join(shop, 'shop.yaml'));
    expect(told(['shop.yaml'])).toEqual({ ids: [undefined], read: ['shop.yaml'] });
  });

  it('of one that is in conflict by what it holds', () => {
    git(shop, 'checkout', '-q', '-b', 'other', 'HEAD~1');
    put(shop, 'shop.yaml', 'kind: shop\n# ours\n');
    commit(shop, 'Ours');
    git(shop, 'checkout', '-q', 'main');
    put(shop, 'shop.yaml', 'kind: shop\n# theirs\n');
    commit(shop, 'Theirs');
    tryGit(shop, 'merge', 'other');
    expect(readFileSync(join(shop, 'shop.yaml'), 'utf8')).toContain('<<<<<<<');
    expect(told(['shop.yaml'])).toEqual({ ids: asGitSays(['shop.yaml']), read: ['shop.yaml'] });
  });

  it('and of one that git turns to other line ends it is what git keeps', () => {
    git(shop, 'config', 'core.autocrlf', 'true');
    rmSync(join(shop, 'shop.yaml'));
    git(shop, 'checkout', '--', 'shop.yaml');
    writtenLongAgo();
    expect(readFileSync(join(shop, 'shop.yaml'), 'utf8')).toBe('kind: shop\r\n');
    expect(told(['shop.yaml'])).toEqual({ ids: [git(shop, 'rev-parse', 'HEAD:shop.yaml')], read: [] });
  });

  // Written, noted and written again within one tick of the file system's clock, nothing but the content is different.
  it('of one that is written again as soon as git has noted it', () => {
    const ids: unknown[] = [];
    const rounds = Array.from({ length: some(60, 20) }, (_, round) => round);
    for (const round of rounds) {
      put(shop, 'shop.yaml', `kind: shop # ${10 + round}\n`);
      git(shop, 'update-index', 'shop.yaml');
      put(shop, 'shop.yaml', `kind: shop # ${90 - round}\n`);
      put(parent, `written in round ${round}`, `kind: shop # ${90 - round}\n`);
      ids.push(...told(['shop.yaml']).ids);
    }
    expect(ids).toEqual(
      asGitSays(
        rounds.map((round) => `written in round ${round}`),
        parent,
      ),
    );
  });
});

describe('what git noted', () => {
  it('is believed of files that are older than the list alone', () => {
    const index = join(shop, '.git/index');
    utimesSync(index, age, age);
    expect(told()).toEqual({ ids: asGitSays(), read: PATHS });
    utimesSync(index, age, age + 0.001);
    expect(told()).toEqual({ ids: asGitSays(), read: [] });
  });

  it.each([
    ['version 3', () => git(shop, 'update-index', '--index-version', '3')],
    [
      'a list with a file that is to be added',
      () => {
        put(shop, 'a.yaml', '');
        git(shop, 'add', '-N', 'a.yaml');
      },
    ],
    [
      'a list of names of every length',
      () => {
        for (let n = 1; n < 20; n++) put(shop, `${'x'.repeat(n)}.yaml`, '');
        git(shop, 'add', '.');
      },
    ],
  ])('is read in %s', (_what, change) => {
    change();
    writtenLongAgo();
    expect(told()).toEqual({ ids: asGitSays(), read: [] });
  });

  it.each([
    ['another version', () => git(shop, 'update-index', '--index-version', '4')],
    ['a list that is not there', () => rmSync(join(shop, '.git/index'))],
    [
      'a list that is a link',
      () => {
        git(shop, 'checkout-index', '-a');
        rmSync(join(shop, '.git/index'));
        symlinkSync('/dev/zero', join(shop, '.git/index'));
      },
    ],
    ['a file of something else', () => writeFileSync(join(shop, '.git/index'), 'no index of files at all\n')],
  ])('is left at %s, and the files are read', (_what, change) => {
    const ids = asGitSays();
    change();
    expect(told()).toEqual({ ids, read: PATHS });
  });

  it('is found in a repository that uses SHA-256', () => {
    const other = join(parent, 'sha256');
    git(parent, 'init', '-q', '--object-format=sha256', other);
    git(other, 'config', 'user.name', 'A. Machinist');
    git(other, 'config', 'user.email', 'machinist@example.invalid');
    for (const name of ['a.yaml', 'b.yaml']) put(other, name, `kind: ${name}\n`);
    commit(other, 'First');
    for (const name of ['a.yaml', 'b.yaml']) utimesSync(join(other, name), 1e9, 1e9);
    git(other, 'update-index', '--refresh');
    expect(told(['a.yaml', 'b.yaml'], other)).toEqual({
      ids: asGitSays(['a.yaml', 'b.yaml'], other),
      read: [],
    });
  });

  it('is none in a linked working tree, and of a bare repository', () => {
    git(shop, 'worktree', 'add', '-q', '--detach', join(parent, 'second'), 'HEAD');
    expect(notedFiles(place(join(parent, 'second')), 20).size).toBe(0);
    git(parent, 'clone', '-q', '--bare', shop, 'bare.git');
    expect(notedFiles(place(join(parent, 'bare.git')), 20).size).toBe(0);
  });

  it('ends well whatever has happened to the list', () => {
    const index = readFileSync(join(shop, '.git/index'));
    const change = fc.record({ at: fc.nat(index.length - 1), byte: fc.nat(255) });
    fc.assert(
      fc.property(fc.array(change, { maxLength: 5 }), fc.nat(index.length), (changes, length) => {
        const harmed = Buffer.from(index.subarray(0, length));
        for (const { at, byte } of changes) if (at < length) harmed[at] = byte;
        writeFileSync(join(shop, '.git/index'), harmed);
        expect(notedFiles(place(), 20).size).toBeLessThanOrEqual(index.length);
      }),
      runs(3000),
    );
  });
});
