import { chmodSync, cpSync, lchownSync, mkdirSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { once } from '../../../src/checks/once.ts';
import { MOST_BYTES } from '../../../src/documents/yaml/bytes.ts';
import { type Blob, readBlobs } from '../../../src/shell/git/blobs.ts';
import {
  commitsTouching,
  listTree,
  resolveRevision,
  resolveTogether,
  type TreeEntry,
} from '../../../src/shell/git/git.ts';
import { blobIds } from '../../../src/shell/git/objectId.ts';
import { openRepository } from '../../../src/shell/git/openRepository.ts';
import type { GitPlace } from '../../../src/shell/git/process.ts';
import type { Outcome } from '../../../src/shell/problem.ts';
import {
  commit,
  configure,
  git,
  headOf,
  madeOnce,
  makeShop,
  put,
  SHOP_NAME,
  temporaryFolder,
  tryGit,
} from '../gitShop.ts';

let parent = '';
let shop = '';

let pattern = '';

beforeAll(() => {
  pattern = temporaryFolder();
  makeShop(pattern);
});

afterAll(() => rmSync(pattern, { recursive: true }));

// Copying is faster than making each anew.
beforeEach(() => {
  parent = temporaryFolder();
  cpSync(pattern, parent, { recursive: true });
  shop = join(parent, SHOP_NAME);
});

afterEach(() => rmSync(parent, { recursive: true }));

function value<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`${outcome.problem.message}; ${outcome.problem.help}`);
  return outcome.value;
}

const open = (folder: string): GitPlace => value(openRepository(folder, process.env));

const idsOf = (entries: readonly TreeEntry[]): readonly string[] => entries.map(({ oid }) => oid);

const textOf = (blob: Blob | undefined): string | undefined =>
  typeof blob === 'object' ? Buffer.from(blob).toString() : blob;

const textsAt = (folder: string, revision: string, below = ''): Record<string, string | undefined> => {
  const place = open(folder);
  const entries = value(listTree(place, value(resolveRevision(place, revision)), below)).filter(
    ({ kind }) => kind === 'file',
  );
  const contents = value(readBlobs(place, idsOf(entries), MOST_BYTES));
  return Object.fromEntries(entries.map(({ path, oid }) => [path, textOf(contents.get(oid))]));
};

const AT_FIRST = {
  'engines/pump é/engine.yaml': 'kind: engine\n',
  'engines/pump é/sessions/teardown.yaml': 'kind: session\n',
  'shop.yaml': 'kind: shop\n',
};
const AT_LAST = {
  'engines/pump é/engine.yaml': 'kind: engine\n',
  'engines/pump é/sessions/rebuild.yaml': 'kind: session\r\nby: RK\r\n',
  'engines/pump é/sessions/teardown.yaml': 'kind: session\n',
  'shop.yaml': 'kind: shop\n',
};

describe('the documents at a revision', () => {
  it('are those of the commit, byte for byte, whatever the working tree holds', () => {
    put(shop, 'shop.yaml', 'changed since');
    expect(textsAt(shop, 'HEAD')).toEqual(AT_LAST);
    expect(textsAt(shop, 'main~1')).toEqual(AT_FIRST);
  });

  it('of one folder are those below it', () => {
    expect(Object.keys(textsAt(shop, 'HEAD', 'engines/pump é/sessions'))).toHaveLength(2);
    expect(textsAt(shop, 'HEAD', 'engines/pump')).toEqual({});
    expect(textsAt(shop, 'HEAD', 'engines/*')).toEqual({});
  });

  it('are the same from a folder below, another working tree, and a bare repository', () => {
    git(shop, 'worktree', 'add', '-q', '--detach', join(parent, 'second tree'), 'HEAD~1');
    git(parent, 'clone', '-q', '--bare', shop, 'bare ü.git');
    expect(textsAt(join(shop, 'engines/pump é'), 'HEAD')).toEqual(AT_LAST);
    expect(textsAt(join(parent, 'second tree/engines'), 'HEAD')).toEqual(AT_FIRST);
    expect(textsAt(join(parent, 'bare ü.git'), 'main')).toEqual(AT_LAST);
    expect(textsAt(join(parent, 'bare ü.git/refs'), 'main')).toEqual(AT_LAST);
  });

  it('are told apart from links and other repositories', () => {
    symlinkSync('/etc/passwd', join(shop, 'link.yaml'));
    mkdirSync(join(shop, 'module'));
    git(shop, 'update-index', '--add', '--cacheinfo', `160000,${headOf(shop)},module`);
    commit(shop, 'Links');
    expect(textsAt(shop, 'HEAD')).toEqual(AT_LAST);
    const kinds = value(listTree(open(shop), headOf(shop))).map(({ path, kind }) => [path, kind]);
    expect(kinds).toContainEqual(['link.yaml', 'link']);
    expect(kinds).toContainEqual(['module', 'repository']);
  });

  it('are those that were committed, not those that a replacement names', () => {
    const oid = git(shop, 'rev-parse', 'HEAD:shop.yaml');
    put(parent, 'other', 'replaced');
    git(shop, 'replace', oid, git(shop, 'hash-object', '-w', join(parent, 'other')));
    expect(git(shop, 'cat-file', '-p', oid)).toBe('replaced');
    expect(textsAt(shop, 'HEAD')).toEqual(AT_LAST);
  });

  it('are found in a repository that uses SHA-256', () => {
    const other = join(parent, 'sha256');
    mkdirSync(other);
    git(other, 'init', '-q', '--object-format=sha256');
    git(other, 'config', 'user.name', 'A. Machinist');
    git(other, 'config', 'user.email', 'machinist@example.invalid');
    put(other, 'shop.yaml', 'kind: shop\n');
    const oid = commit(other, 'First');
    expect(oid).toHaveLength(64);
    expect(textsAt(other, 'HEAD')).toEqual({ 'shop.yaml': 'kind: shop\n' });
    expect(blobIds(oid)(Buffer.from('kind: shop\n'))).toBe(git(other, 'rev-parse', 'HEAD:shop.yaml'));
  });

  it('are read in one process, two hundred of them, and an empty one too', () => {
    for (let n = 0; n < 200; n++) put(shop, `engines/e${n}/engine.yaml`, n === 7 ? '' : `name: ${n} µ\n`);
    commit(shop, 'Many');
    const texts = textsAt(shop, 'HEAD');
    expect(Object.keys(texts)).toHaveLength(204);
    expect(texts['engines/e7/engine.yaml']).toBe('');
    expect(texts['engines/e199/engine.yaml']).toBe('name: 199 µ\n');
  });

  it('are told apart from one that is not there', () => {
    const place = open(shop);
    const entries = value(listTree(place, value(resolveRevision(place, 'HEAD'))));
    expect(entries[1]).toMatchObject({ kind: 'file', path: 'engines/pump é/sessions/rebuild.yaml' });
    const missing = '0'.repeat(40);
    const read = value(readBlobs(place, [missing, ...idsOf(entries)], MOST_BYTES));
    expect(read.get(missing)).toBe('absent');
    expect([...read.values()].map(textOf)).toContain('kind: session\r\nby: RK\r\n');
  });

  it('are held up to a size, however large the others are', () => {
    put(shop, 'large', 'x'.repeat(2_000_000));
    put(shop, 'small', 'x'.repeat(1000));
    commit(shop, 'Large');
    const place = open(shop);
    const [large = '', small = ''] = ['large', 'small'].map((name) => git(shop, 'rev-parse', `HEAD:${name}`));
    const sizes = (oids: readonly string[], mostBytes: number) =>
      [...value(readBlobs(place, oids, mostBytes))].map(([oid, blob]) => [
        oid,
        typeof blob === 'object' ? blob.length : blob,
      ]);
    // All of it fits within what is allowed for the two, or does not.
    for (const mostBytes of [1_500_000, 1000]) {
      expect(new Map(sizes([large, small], mostBytes) as [string, unknown][])).toEqual(
        new Map<string, unknown>([
          [large, 'too big'],
          [small, 1000],
        ]),
      );
    }
    expect(sizes([large, small], 999).map(([, size]) => size)).toEqual(['too big', 'too big']);
    expect(sizes([large], 2_000_000)).toEqual([[large, 2_000_000]]);
  });
});

describe('the id of a file', () => {
  it.each(['', 'kind: shop\n', 'µ\r\n\0'])('%j is the one git gives it', (text) => {
    put(parent, 'file', text);
    const like = headOf(shop);
    expect(blobIds(like)(Buffer.from(text))).toBe(git(parent, 'hash-object', '--no-filters', 'file'));
  });
});

describe('the commits that touched a path', () => {
  const subjects = (...paths: string[]) => {
    const place = open(shop);
    return value(commitsTouching(place, value(resolveRevision(place, 'HEAD')), paths)).map(
      ({ subject }) => subject,
    );
  };

  it('come newest first', () => {
    expect(subjects()).toEqual(['Rebuild of the pump', 'Teardown']);
    expect(subjects('engines/pump é')).toEqual(['Rebuild of the pump', 'Teardown']);
    expect(subjects('engines/pump é/sessions/rebuild.yaml')).toEqual(['Rebuild of the pump']);
    expect(subjects('engines/pump é/sessions/rebuild.yaml', 'shop.yaml')).toHaveLength(2);
    expect(subjects('none.yaml', 'engines/*', '--all')).toEqual([]);
  });

  it('carry their id and time', () => {
    const place = open(shop);
    const oid = value(resolveRevision(place, 'HEAD'));
    const [newest] = value(commitsTouching(place, oid, []));
    expect(newest).toEqual({
      oid,
      time: Number(git(shop, 'log', '-1', '--format=%ct')),
      subject: 'Rebuild of the pump',
    });
  });

  it('are not asked for outside', () => {
    expect(commitsTouching(open(shop), 'a'.repeat(40), ['../x'])).toMatchObject({
      problem: { reason: 'outside' },
    });
    expect(listTree(open(shop), 'a'.repeat(40), '--output=x')).toMatchObject({ ok: false });
    expect(() => listTree(open(shop), '--output=x')).toThrow('not an object id');
    // A name that git cannot resolve would end its process and leave whoever asked waiting.
    for (const name of ['HEAD:../../etc/passwd', 'HEAD:shop.yaml', '--output=x']) {
      expect(() => readBlobs(open(shop), [name], 1)).toThrow('not an object id');
    }
  });
});

describe('revisions that are asked for together', () => {
  const together = (...names: string[]) => Object.fromEntries(resolveTogether(open(shop), names));

  it('are the commits that each of them names', () => {
    git(shop, 'tag', '-a', '-m', 'Rebuild', 'v1');
    const [head, first] = ['HEAD', 'HEAD~1'].map((name) => git(shop, 'rev-parse', name));
    expect(together('HEAD', 'main~1', 'v1')).toEqual({ HEAD: head, 'main~1': first, v1: head });
  });

  it.each([
    'HEAD~9',
    'nowhere',
    '@{u}',
    'HEAD^{tree}',
    'HEAD@{9}',
    '--output=x',
    'HEAD\nHEAD',
    'HEAD HEAD',
    '',
  ])('leave out %j, or all beside it, to be asked for by itself', (name) => {
    const head = headOf(shop);
    const found = together('HEAD', name);
    expect(Object.keys(found)).not.toContain(name);
    expect([undefined, head]).toContain(found.HEAD);
    expect(resolveRevision(open(shop), name).ok).toBe(false);
  });
});

describe('a revision that cannot be had', () => {
  it('is said not to be there', () => {
    expect(resolveRevision(open(shop), 'HEAD~9')).toMatchObject({
      problem: { reason: 'revision', message: 'there is no commit HEAD~9' },
    });
  });

  it('is said to be cut off in a shallow clone, with the remedy', () => {
    git(parent, 'clone', '-q', '--depth', '1', `file://${shop}`, 'shallow');
    expect(textsAt(join(parent, 'shallow'), 'HEAD')).toEqual(AT_LAST);
    expect(resolveRevision(open(join(parent, 'shallow')), 'HEAD~1')).toMatchObject({
      problem: { reason: 'shallow', message: /shallow clone/, help: /git fetch --unshallow/ },
    });
  });

  it('because there is no repository is said so', () => {
    expect(openRepository(parent, process.env)).toMatchObject({
      problem: { message: /is in no git repository/ },
    });
    expect(openRepository(join(parent, 'none'), process.env)).toMatchObject({
      problem: { message: /no such file or folder/ },
    });
  });

  it('because the repository is broken is not looked for in the one around it', () => {
    mkdirSync(join(shop, 'inner/.git'), { recursive: true });
    expect(resolveRevision(open(join(shop, 'inner')), 'HEAD')).toMatchObject({
      problem: { message: /git says: not a git repository/ },
    });
  });

  it('because git is not installed is said so', () => {
    const path = process.env.PATH;
    vi.stubEnv('PATH', parent);
    const refused = resolveRevision(open(shop), 'HEAD');
    vi.stubEnv('PATH', path);
    expect(refused).toMatchObject({ problem: { reason: 'git-missing' } });
  });

  it.runIf(process.getuid?.() === 0)(
    'because another user owns the repository is passed on, with the command',
    () => {
      for (const path of ['', '.git']) lchownSync(join(shop, path), 12345, 12345);
      const refused = resolveRevision(open(shop), 'HEAD');
      expect(refused).toMatchObject({ problem: { message: /^git says: detected dubious ownership/ } });
      expect(refused).toMatchObject({ problem: { help: /git config --global --add safe\.directory/ } });
    },
  );

  it.runIf(process.getuid?.() === 0)('is had where the user said that this repository is safe', () => {
    for (const path of ['', '.git']) lchownSync(join(shop, path), 12345, 12345);
    put(parent, 'settings', `[safe]\n\tdirectory = ${shop}\n`);
    vi.stubEnv('GIT_CONFIG_GLOBAL', join(parent, 'settings'));
    const found = resolveRevision(open(shop), 'HEAD');
    vi.stubEnv('GIT_CONFIG_GLOBAL', '/dev/null');
    expect(found).toMatchObject({ ok: true });
  });
});

/** Anything that runs leaves its name in the folder of markers. */
function trap(name: string): string {
  mkdirSync(join(parent, 'markers'), { recursive: true });
  put(parent, `traps/${name}`, `#!/bin/sh\n: > '${parent}/markers/${name}'\n`);
  chmodSync(join(parent, 'traps', name), 0o755);
  // Some settings go through a shell, which would stop at the space.
  return `'${join(parent, 'traps', name)}'`;
}

const markers = (): string[] => readdirSync(join(parent, 'markers'));

/** Most settings go through a shell; these are run as they stand, or say that they want a shell. */
function asSetting(key: string, program: string): string {
  if (key === 'credential.helper') return `!${program}`;
  return key === 'core.gitProxy' || key === 'gpg.program' ? program.replaceAll("'", '') : program;
}

/** Everything that is ever asked of git. */
function askEverything(folder: string): void {
  const place = open(folder);
  const oid = value(resolveRevision(place, 'HEAD'));
  const entries = value(listTree(place, oid));
  value(readBlobs(place, idsOf(entries), MOST_BYTES));
  value(readBlobs(place, idsOf(entries), 1));
  value(listTree(place, oid, 'engines'));
  resolveTogether(place, ['HEAD', 'HEAD~1']);
  value(commitsTouching(place, oid, []));
  value(commitsTouching(place, oid, ['shop.yaml']));
  resolveRevision(place, 'nowhere');
}

const TRIGGER_BY_STATUS = ['status'];

/** A setting that names a program, and a plain git command that does run it: so the trap is known to work. */
const SETTINGS: readonly (readonly [string, readonly string[] | undefined])[] = [
  ['core.fsmonitor', TRIGGER_BY_STATUS],
  ['diff.external', ['diff', 'HEAD~1']],
  ['diff.yaml.textconv', ['log', '-p']],
  ['diff.yaml.command', ['diff', 'HEAD~1']],
  ['filter.yaml.clean', ['hash-object', 'shop.yaml']],
  ['filter.yaml.smudge', ['checkout', '-f', 'HEAD~1', '--', '.']],
  ['filter.yaml.process', ['hash-object', 'shop.yaml']],
  ['merge.yaml.driver', undefined],
  ['core.sshCommand', ['ls-remote', 'ssh://nowhere.invalid/x']],
  ['core.gitProxy', ['ls-remote', 'git://nowhere.invalid/x']],
  ['core.askPass', undefined],
  ['core.alternateRefsCommand', undefined],
  ['credential.helper', ['credential', 'fill']],
  ['gpg.program', ['log', '--show-signature']],
  ['core.editor', ['commit', '--amend']],
  ['core.pager', undefined],
  ['pager.log', undefined],
  ['pager.ls-tree', undefined],
  ['sequence.editor', ['rebase', '-i', '--autostash', 'HEAD~1']],
  ['uploadpack.packObjectsHook', undefined],
  ['interactive.diffFilter', undefined],
];

describe('a repository whose settings name programs', () => {
  const copySigned = madeOnce((made) => {
    cpSync(shop, made, { recursive: true });
    put(made, '.gitattributes', '*.yaml diff=yaml filter=yaml merge=yaml text eol=lf\n');
    commit(made, 'Attributes');
    signHead(made);
  });

  beforeEach(() => copySigned(shop));

  /** What ran while everything was asked of a repository that has all of those settings: asked once for them all. */
  const ranOfAll = once(() => {
    const every = SETTINGS.map(([key]) => [key, asSetting(key, trap(key))]);
    configure(join(shop, '.git'), { 'log.showSignature': 'true', ...Object.fromEntries(every) });
    askEverything(shop);
    const ran = markers();
    copySigned(shop);
    return ran;
  });

  it.each(SETTINGS)('runs none of them: %s', (key, trigger) => {
    expect(ranOfAll()).toEqual([]);
    configure(join(shop, '.git'), { 'log.showSignature': 'true', [key]: asSetting(key, trap('program')) });
    put(shop, 'shop.yaml', 'kind: shop\n# changed\n');
    if (trigger) tryGit(shop, ...trigger);
    expect(markers()).toEqual(trigger ? ['program'] : []);
  });

  it('runs no hooks', () => {
    git(shop, 'config', 'core.hooksPath', join(parent, 'traps'));
    for (const hook of ['post-index-change', 'reference-transaction', 'pre-commit', 'fsmonitor-watchman'])
      trap(hook);
    askEverything(shop);
    expect(markers()).toEqual([]);
    tryGit(shop, 'commit', '-q', '--allow-empty', '-m', 'x');
    expect(markers()).toContain('pre-commit');
  });

  it('runs no other command under the name of one of ours', () => {
    const names = ['rev-parse', 'ls-tree', 'cat-file', 'log', 'own'];
    configure(
      join(shop, '.git'),
      Object.fromEntries(names.map((name) => [`alias.${name}`, `!${trap(`alias-${name}`)}`])),
    );
    askEverything(shop);
    expect(markers()).toEqual([]);
    tryGit(shop, 'own');
    expect(markers()).toEqual(['alias-own']);
  });

  it('runs nothing from settings that they include', () => {
    put(parent, 'included', `[core]\n\tfsmonitor = "${trap('included')}"\n`);
    git(shop, 'config', 'include.path', join(parent, 'included'));
    askEverything(shop);
    expect(markers()).toEqual([]);
    tryGit(shop, ...TRIGGER_BY_STATUS);
    expect(markers()).toEqual(['included']);
  });

  it('fetches nothing that is missing', () => {
    put(shop, 'shop.yaml', 'kind: shop\n# not packed\n');
    commit(shop, 'Not packed');
    const oid = git(shop, 'rev-parse', 'HEAD:shop.yaml');
    const settings = {
      'core.repositoryFormatVersion': '1',
      'extensions.partialClone': 'origin',
      'remote.origin.promisor': 'true',
      'remote.origin.url': `ext::sh ${trap('fetched').replaceAll("'", '').replaceAll(' ', '% ')}`,
      'protocol.ext.allow': 'always',
      'protocol.allow': 'always',
    };
    configure(join(shop, '.git'), settings);
    rmSync(join(shop, '.git/objects', oid.slice(0, 2), oid.slice(2)));
    const place = open(shop);
    const entries = value(listTree(place, value(resolveRevision(place, 'HEAD'))));
    expect(value(readBlobs(place, idsOf(entries), MOST_BYTES)).get(oid)).toBe('absent');
    expect(markers()).toEqual([]);
    tryGit(shop, 'cat-file', '-p', oid);
    expect(markers()).toEqual(['fetched']);
  });

  it('or that puts other objects in place of those of its history, is read as it was committed', () => {
    const oid = git(shop, 'rev-parse', 'HEAD:shop.yaml');
    const other = git(shop, 'rev-parse', 'HEAD:engines/pump é/engine.yaml');
    git(shop, 'replace', oid, other);
    expect(git(shop, 'cat-file', '-p', oid)).toBe('kind: engine');
    expect(textsAt(shop, 'HEAD')['shop.yaml']).toBe('kind: shop\n');
  });

  it('and that lies bare in the tree of another is only files', () => {
    const inner = join(shop, 'engines/evil');
    git(shop, 'clone', '-q', '--bare', '.', inner);
    git(inner, 'config', 'core.bare', 'false');
    git(inner, 'config', 'core.worktree', '.');
    git(inner, 'config', 'core.fsmonitor', trap('embedded'));
    const head = commit(shop, 'Evil');
    expect(open(inner)).toMatchObject({ folder: shop, bare: false });
    askEverything(inner);
    expect(value(resolveRevision(open(inner), 'HEAD'))).toBe(head);
    // Even when that folder is taken for the place to ask.
    expect(resolveRevision({ ...open(shop), folder: inner }, 'HEAD')).toMatchObject({
      problem: { message: /cannot use bare repository/ },
    });
    expect(markers()).toEqual([]);
    tryGit(inner, ...TRIGGER_BY_STATUS);
    expect(markers()).toEqual(['embedded']);
  });
});

/** Gives the last commit a signature, which is only looked at where a setting asks for it. */
function signHead(folder: string): void {
  const [head = '', message = ''] = git(folder, 'cat-file', 'commit', 'HEAD').split(/\n\n(.*)/s);
  const armor = ['-----BEGIN PGP SIGNATURE-----', '', 'iQ==', '-----END PGP SIGNATURE-----'].join('\n ');
  put(parent, 'signed', `${head}\ngpgsig ${armor}\n\n${message}\n`);
  git(folder, 'reset', '-q', git(folder, 'hash-object', '-t', 'commit', '-w', join(parent, 'signed')));
}

describe('the environment of a git hook', () => {
  it('does not lead to another repository, or to a trace in a file', () => {
    const other = makeShop(parent, 'other');
    put(other, 'shop.yaml', 'kind: other\n');
    commit(other, 'Other');
    vi.stubEnv('GIT_DIR', join(other, '.git'));
    vi.stubEnv('GIT_INDEX_FILE', join(parent, 'index'));
    vi.stubEnv('GIT_EXTERNAL_DIFF', trap('diff'));
    vi.stubEnv('GIT_TRACE', join(parent, 'markers/trace'));
    vi.stubEnv('GIT_ALLOW_PROTOCOL', 'ext');
    askEverything(shop);
    expect(open(shop).folder).toBe(shop);
    const oid = value(resolveRevision(open(shop), 'HEAD'));
    for (const name of ['DIR', 'INDEX_FILE', 'EXTERNAL_DIFF', 'TRACE', 'ALLOW_PROTOCOL']) {
      vi.stubEnv(`GIT_${name}`, undefined);
    }
    expect(oid).toBe(headOf(shop));
    expect(markers()).toEqual([]);
  });
});
