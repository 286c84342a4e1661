import {
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { cachePlace } from '../../../src/shell/cache/cachePlace.ts';
import { EntryFiles } from '../../../src/shell/cache/entryFiles.ts';

let root = '';

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'tenths-entries-'));
});

afterEach(() => rmSync(root, { recursive: true, force: true }));

const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map(({ parentPath, name }) => join(parentPath, name));

const bytesIn = (folder: string): number =>
  filesIn(folder).reduce((sum, path) => sum + statSync(path).size, 0);

describe('entries of a cache', () => {
  it('are read as they were written, by whoever opens the folder next', () => {
    new EntryFiles(root).write('a key', 'first\nsecond\nthird: 0.0025 in – ½');
    expect(new EntryFiles(root).read('a key')).toBe('first\nsecond\nthird: 0.0025 in – ½');
    expect(new EntryFiles(root).read('another key')).toBeUndefined();
    expect(filesIn(root).map((path) => statSync(path).mode & 0o077)).toEqual([0]);
  });

  it('are not believed with any one byte flipped, added or cut off', () => {
    const entries = new EntryFiles(root);
    entries.write('a key', 'all is well');
    const [path = ''] = filesIn(root);
    const bytes = readFileSync(path);
    const wrong = [...bytes].flatMap((byte, at) => [
      Buffer.concat([bytes.subarray(0, at), Buffer.of(byte ^ 1), bytes.subarray(at + 1)]),
      bytes.subarray(0, at),
    ]);
    for (const each of [...wrong, Buffer.concat([bytes, Buffer.of(10)])]) {
      writeFileSync(path, each);
      expect(entries.read('a key'), each.toString()).toBeUndefined();
    }
    writeFileSync(path, bytes);
    expect(entries.read('a key')).toBe('all is well');
  });

  it('are not believed in the place of another', () => {
    const entries = new EntryFiles(root);
    entries.write('sound', 'no findings');
    const [sound = ''] = filesIn(root);
    entries.write('worn', '3 errors');
    const worn = filesIn(root).find((path) => path !== sound) ?? '';
    renameSync(sound, worn);
    expect(entries.read('worn')).toBeUndefined();
  });

  it('take no more room than they may, the oldest leave first, and what a killed run left goes too', () => {
    const most = 16 * 64_000;
    const text = 'x'.repeat(900);
    const entries = new EntryFiles(root, most);
    entries.write('0', text);
    const left = join(filesIn(root)[0] ?? '', '../left.part');
    writeFileSync(left, 'x'.repeat(30_000));
    // Many times what fits, by two writers in turn.
    const writers = [entries, new EntryFiles(root, most)];
    for (let at = 1; at < 4000; at++) writers[at % 2]?.write(String(at), text);
    expect(bytesIn(root)).toBeLessThan(most);
    expect(bytesIn(root)).toBeGreaterThan(most / 4);
    expect(entries.read('3999')).toBe(text);
    expect(entries.read('0')).toBeUndefined();
    expect(filesIn(root)).not.toContain(left);
  });

  it('are not kept where one alone would fill the room, or where nothing can be written', () => {
    const entries = new EntryFiles(root, 16 * 1000);
    entries.write('big', 'x'.repeat(900));
    expect(entries.read('big')).toBeUndefined();
    expect(bytesIn(root)).toBe(0);
    const taken = join(root, 'taken');
    writeFileSync(taken, '');
    const nowhere = new EntryFiles(taken);
    nowhere.write('small', 'x');
    expect(nowhere.read('small')).toBeUndefined();
    expect(bytesIn(root)).toBe(0);
  });
});

describe('the place of kept results', () => {
  it('is a folder of the user alone, under the digest of the build', () => {
    const [home, dist] = [join(root, '.'), join(root, '.')];
    expect(cachePlace({ XDG_CACHE_HOME: home }, dist)).toBeUndefined();
    writeFileSync(join(dist, 'build.txt'), 'abc');
    const folder = join(home, 'tenths/results');
    expect(cachePlace({ XDG_CACHE_HOME: home }, dist)).toEqual({ folder, build: `${process.version} abc` });
    expect(statSync(folder).mode & 0o777).toBe(0o700);
  });

  it.each(['tenths', 'tenths/results'])('is none where others may write in %s', (folder) => {
    writeFileSync(join(root, 'build.txt'), 'abc');
    expect(cachePlace({ XDG_CACHE_HOME: root }, root)).toBeDefined();
    chmodSync(join(root, folder), 0o770);
    expect(cachePlace({ XDG_CACHE_HOME: root }, root)).toBeUndefined();
  });
});
