import { rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Store, workTree } from '../../../src/shell/discover/store.ts';
import { BlobContents, type CommitFiles, openCommit } from '../../../src/shell/git/commitFiles.ts';
import { resolveRevision } from '../../../src/shell/git/git.ts';
import { openRepository } from '../../../src/shell/git/openRepository.ts';
import { revisionStore, shopRootInCommit } from '../../../src/shell/git/revisionStore.ts';
import type { Outcome } from '../../../src/shell/problem.ts';
import { PUMP } from '../../cli/benchShop.ts';
import { withBenchShop } from '../../cli/gitHere.ts';
import { commit, git, put } from '../gitShop.ts';

const here = withBenchShop();

const missing: Outcome<never> = {
  ok: false,
  problem: { reason: 'missing', message: 'no such commit', help: '' },
};

function value<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
}

function filesAt(name: string, folder = here.shop): CommitFiles {
  const place = value(openRepository(folder, process.env));
  return value(openCommit(place, { name, commit: value(resolveRevision(place, name)) }, new BlobContents()));
}

const storeAt = (name: string, root = '.'): Store =>
  revisionStore({ files: filesAt(name), root, shown: (path) => path });

const textOf = (store: Store, path: string): string => Buffer.from(value(store.read(path))).toString();

describe('the documents of a commit', () => {
  it('are found as those on disk are, where nothing has changed since', () => {
    const [then, now] = [storeAt('HEAD'), workTree(here.shop, here.shop)];
    expect(then.list(['.'])).toEqual(now.list(['.']));
    expect(then.list(['engines'])).toEqual(now.list(['engines']));
    expect(then.listIn('.')).toEqual(now.listIn('.'));
    expect(then.listIn(PUMP)).toEqual(now.listIn(PUMP));
    for (const path of now.list(['.'])) expect(textOf(then, path)).toBe(textOf(now, path));
  });

  it('have the ids that files of the same bytes have', () => {
    const [then, now] = [storeAt('HEAD'), workTree(here.shop, here.shop)];
    const repository = {
      place: value(openRepository(here.shop, process.env)),
      commit: git(here.shop, 'rev-parse', 'HEAD'),
    };
    expect([...now.ids('.', repository).keys()]).toEqual(now.list(['.']));
    expect(new Map([...then.ids('.', repository)].sort())).toEqual(now.ids('.', repository));
    put(here.shop, 'shop.yaml', 'kind: shop\n');
    expect(now.ids('.', repository).get('shop.yaml')).not.toBe(then.ids('.', repository).get('shop.yaml'));
  });

  it('leave out what is no document on disk either', () => {
    put(here.shop, '.github/ci.yaml', 'on: push\n');
    put(here.shop, 'node_modules/x/a.yaml', 'kind: shop\n');
    put(here.shop, 'engines/.hidden.yaml', 'kind: shop\n');
    put(here.shop, 'readme.txt', 'no document');
    symlinkSync('/etc/passwd', join(here.shop, 'link.yaml'));
    commit(here.shop, 'More');
    expect(storeAt('HEAD').list(['.'])).toEqual(storeAt('HEAD~1').list(['.']));
  });

  it('of a folder are named from that folder', () => {
    const store = storeAt('HEAD', PUMP);
    expect(store.list(['.'])).toEqual([
      'engine.yaml',
      'limits.yaml',
      'sessions/rebuild.yaml',
      'sessions/teardown.yaml',
    ]);
    expect(textOf(store, 'engine.yaml')).toContain('Pump é');
  });

  it('that are too big or not there are said to be, and nothing outside is reached', () => {
    put(here.shop, 'big.yaml', `kind: shop\n${'# padding\n'.repeat(40_000)}`);
    commit(here.shop, 'Big');
    const store = storeAt('HEAD');
    expect(store.read('big.yaml')).toMatchObject({ problem: { reason: 'too-big' } });
    expect(store.read('none.yaml')).toMatchObject({ problem: { reason: 'missing' } });
    expect(storeAt('HEAD', 'engines/mill').read('../../shop.yaml')).toMatchObject({ ok: false });
  });

  it('that are not in this clone are said to be, each by its name', () => {
    put(here.shop, 'shop.yaml', 'kind: shop\n');
    commit(here.shop, 'Not packed');
    const oid = git(here.shop, 'rev-parse', 'HEAD:shop.yaml');
    rmSync(join(here.shop, '.git/objects', oid.slice(0, 2), oid.slice(2)));
    const store = storeAt('HEAD');
    store.list(['.']);
    expect(store.read('shop.yaml')).toMatchObject({
      problem: { message: 'shop.yaml is in that commit, but its content is not in this clone' },
    });
    expect(textOf(store, `${PUMP}/engine.yaml`)).toContain('Pump é');
  });

  it('share with another commit what is the same in both', () => {
    const place = value(openRepository(here.shop, process.env));
    const contents = new BlobContents();
    const open = (name: string): Store => {
      const oid = value(resolveRevision(place, name));
      const files = value(openCommit(place, { name, commit: oid }, contents));
      return revisionStore({ files, root: '.', shown: (path) => path });
    };
    const older = open('HEAD~1');
    older.list(['.']);
    textOf(older, 'shop.yaml');
    const before = contents.size;
    const ids = older.ids('.', { place, commit: '' }).values();
    expect(before).toBe(new Set(ids).size);
    const newer = open('HEAD');
    newer.list(['.']);
    textOf(newer, 'engines/mill/second.yaml');
    expect(contents.size).toBe(before + 1);
  });

  it('come with what another commit that is looked at has in their places', () => {
    put(here.shop, 'shop.yaml', 'kind: shop\n# newer\n');
    commit(here.shop, 'Newer');
    const place = value(openRepository(here.shop, process.env));
    const contents = new BlobContents();
    const [older, newer] = ['HEAD~1', 'HEAD'].map((name) =>
      value(openCommit(place, { name, commit: value(resolveRevision(place, name)) }, contents)),
    );
    value(older?.read('shop.yaml', () => []) ?? missing);
    expect(contents.size).toBe(2);
    expect(Buffer.from(value(newer?.read('shop.yaml', () => []) ?? missing)).toString()).toBe(
      'kind: shop\n# newer\n',
    );
    expect(contents.size).toBe(2);
  });

  it('that a comparison will ask for come with the first that is read, and only those', () => {
    const teardown = `${PUMP}/sessions/teardown.yaml`;
    put(here.shop, teardown, 'kind: session\n');
    git(here.shop, 'rm', '-q', 'engines/mill/second.yaml');
    commit(here.shop, 'Edited, and one that is gone');
    const place = value(openRepository(here.shop, process.env));
    const contents = new BlobContents();
    const [older, newer] = ['HEAD~1', 'HEAD'].map((name) =>
      value(openCommit(place, { name, commit: value(resolveRevision(place, name)) }, contents)),
    );
    if (older === undefined || newer === undefined) throw new Error('no commits');
    older.expectComparison(newer);
    value(older.read('shop.yaml', () => []));
    const both = [older, newer].flatMap((files) =>
      [...files.around(teardown), ...files.around('engines/mill/second.yaml')].flatMap(
        (path) => files.idOf(path) ?? [],
      ),
    );
    expect(contents.size).toBe(new Set(both).size);
    expect(contents.size).toBeGreaterThan(4);
    const known = contents.size;
    for (const files of [older, newer]) value(files.read(teardown, () => []));
    value(older.read('engines/mill/second.yaml', () => []));
    expect(contents.size).toBe(known);
  });
});

describe('the root of a shop in a commit', () => {
  it('is the nearest folder above with a shop document then, whatever lies on disk', () => {
    put(here.shop, `engines/shop.yaml`, 'kind: shop\nunits: { length: mm }\n');
    expect(shopRootInCommit(filesAt('HEAD'), PUMP)).toBe('.');
    commit(here.shop, 'Move the shop');
    expect(shopRootInCommit(filesAt('HEAD'), PUMP)).toBe('engines');
    expect(shopRootInCommit(filesAt('HEAD~1'), PUMP)).toBe('.');
  });
});
