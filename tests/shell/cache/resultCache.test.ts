import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ResultCache } from '../../../src/shell/cache/resultCache.ts';
import { type Store, workTree } from '../../../src/shell/discover/store.ts';
import { put } from '../gitShop.ts';

let [folder, shop] = ['', ''];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tenths-results-'));
  shop = mkdtempSync(join(tmpdir(), 'tenths-asked-'));
  put(shop, 'a/engine.yaml', 'one');
  put(shop, 'shared.yaml', 'shared');
});

afterEach(() => {
  for (const each of [folder, shop]) rmSync(each, { recursive: true, force: true });
});

const textOf = (store: Store, path: string): string => {
  const read = store.read(path);
  return read.ok ? Buffer.from(read.value).toString('utf8') : read.problem.reason;
};

/** What a run works out, and whether it had to. */
function run(of: (store: Store) => unknown, { build = 'b1', about = 'text' } = {}) {
  let isNew = false;
  const cache = new ResultCache({ folder, build });
  const result = cache.recall(
    { store: workTree(shop, shop), folder: 'a', about },
    (store) => {
      isNew = true;
      return of(store);
    },
    (each) => each,
  );
  return { result, isNew };
}

const both = (store: Store) => [textOf(store, 'a/engine.yaml'), textOf(store, 'shared.yaml')];

describe('results that are kept', () => {
  it('are taken for as long as all that they stand on is the same', () => {
    expect(run(both)).toEqual({ result: ['one', 'shared'], isNew: true });
    expect(run(both)).toEqual({ result: ['one', 'shared'], isNew: false });
    expect(run(both, { build: 'b2' }).isNew).toBe(true);
    expect(run(both, { about: 'json' }).isNew).toBe(true);
  });

  const asked: readonly (readonly [string, (store: Store) => unknown, () => void])[] = [
    ['a document', both, () => put(shop, 'a/engine.yaml', 'two')],
    ['a document that serves others', both, () => put(shop, 'shared.yaml', 'two')],
    ['a document that was not there', (of) => textOf(of, 'a/b.yaml'), () => put(shop, 'a/b.yaml', '')],
    ['what is in a folder', (of) => of.listIn('a'), () => put(shop, 'a/b.yaml', '')],
    ['what is below a folder', (of) => of.list(['a']), () => put(shop, 'a/c/b.yaml', '')],
    ['what else is in a folder', (of) => of.entriesIn('a'), () => put(shop, 'a/notes', '')],
    ['what else is below it', (of) => of.entries(['a']), () => put(shop, 'a/c/notes', '')],
    ['whether documents are in it', (of) => of.holdsDocuments('a/c'), () => put(shop, 'a/c/b.yaml', '')],
    ['where a link leads', (of) => of.behind('link').says, () => link('b')],
  ];

  const link = (target: string): void => {
    rmSync(join(shop, 'link'), { force: true });
    symlinkSync(target, join(shop, 'link'));
  };

  it.each(asked)('are worked out anew after %s has changed', (_, of, change) => {
    const before = run(of).result;
    expect(run(of)).toEqual({ result: before, isNew: false });
    change();
    const after = run(of);
    expect(after.isNew).toBe(true);
    expect(after.result).not.toEqual(before);
  });

  it('are not kept where a document changed as it was read, or where what has no answer to note was asked', () => {
    const torn = (store: Store): unknown => {
      const before = textOf(store, 'shared.yaml');
      put(shop, 'shared.yaml', 'two');
      return [before, textOf(store, 'shared.yaml')];
    };
    expect(run(torn)).toEqual({ result: ['shared', 'two'], isNew: true });
    expect(run(both).isNew).toBe(true);
    for (const _ of [1, 2]) expect(run((store) => store.problems(), { about: 'problems' }).isNew).toBe(true);
  });
});
