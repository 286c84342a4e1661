import {
  chmodSync,
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { done } from '../../../src/shell/problem.ts';
import { thisProcess } from '../../../src/shell/process/thisProcess.ts';
import { changeFile } from '../../../src/shell/write/change.ts';
import { type FileLayer, nodeFiles } from '../../../src/shell/write/fileLayer.ts';
import { type Destination, writeFile } from '../../../src/shell/write/writer.ts';
import { failingFiles, failingWith, faultless } from '../failingFiles.ts';

const OLD = 'old: text of some length\n';
const NEW = `new: "${'µ'.repeat(30_000)}"\n`;

let outside = '';
let root = '';

beforeEach(() => {
  outside = mkdtempSync(join(tmpdir(), 'write '));
  root = join(outside, 'shop');
  mkdirSync(join(root, 'sessions'), { recursive: true });
  writeFileSync(join(root, 'sessions/a.yaml'), OLD);
  writeFileSync(join(outside, 'secret.yaml'), OLD);
});

afterEach(() => rmSync(outside, { recursive: true }));

const destination = (path: string, files: FileLayer = nodeFiles): Destination => ({
  files,
  self: thisProcess,
  root,
  path,
});

const bytes = (text: string): Uint8Array => Buffer.from(text);

/** Expected is given as the text that must stand there, or as a word. */
const write = (path: string, expected: string, files?: FileLayer) => {
  const word = expected === 'absent' || expected === 'anything';
  return writeFile(destination(path, files), bytes(NEW), word ? expected : bytes(expected));
};

const read = (path: string): string => readFileSync(join(root, path), 'utf8');

const others = (): string[] => readdirSync(join(root, 'sessions')).filter((name) => name !== 'a.yaml');

describe('a file that is written', () => {
  it('holds the new bytes and keeps its mode, and nothing stays beside it', () => {
    chmodSync(join(root, 'sessions/a.yaml'), 0o640);
    expect(write('sessions/a.yaml', OLD)).toEqual({ ok: true });
    expect(read('sessions/a.yaml')).toEqual(NEW);
    expect(statSync(join(root, 'sessions/a.yaml')).mode & 0o777).toBe(0o640);
    expect(others()).toEqual([]);
  });

  it('may be new, and is then as open as the umask says', () => {
    expect(write('sessions/b.yaml', 'absent').ok).toBe(true);
    expect(statSync(join(root, 'sessions/b.yaml')).mode & 0o777).toBe(0o666 & ~process.umask());
    expect(others()).toEqual(['b.yaml']);
  });

  it('may be replaced whatever it holds when that is asked for', () => {
    expect(write('sessions/a.yaml', 'anything').ok).toBe(true);
    expect(read('sessions/a.yaml')).toEqual(NEW);
  });

  it('is not touched when it is not the text that was read', () => {
    expect(write('sessions/a.yaml', 'other')).toMatchObject({ problem: { reason: 'changed' } });
    expect(read('sessions/a.yaml')).toEqual(OLD);
    expect(others()).toEqual([]);
  });

  it('is not made again when it was removed meanwhile', () => {
    expect(write('sessions/b.yaml', OLD)).toMatchObject({ problem: { reason: 'missing' } });
  });

  it('is not overwritten when it should be new, even if it appears at the last moment', () => {
    expect(write('sessions/a.yaml', 'absent')).toMatchObject({ problem: { reason: 'exists' } });
    const late: FileLayer = {
      ...nodeFiles,
      link: (from, to) => {
        writeFileSync(to, OLD);
        nodeFiles.link(from, to);
      },
    };
    expect(write('sessions/b.yaml', 'absent', late)).toMatchObject({ problem: { reason: 'exists' } });
    expect(read('sessions/b.yaml')).toEqual(OLD);
  });

  it('is kept as there already though it may not be written', () => {
    const files = { ...nodeFiles, requireWritable: failingWith('EACCES') };
    expect(write('sessions/a.yaml', 'absent', files)).toMatchObject({ problem: { reason: 'exists' } });
    expect(write('sessions/a.yaml', OLD, files)).toMatchObject({ problem: { reason: 'disk' } });
  });

  it.each(['EPERM', 'ENOSYS', 'ENOTSUP', 'EOPNOTSUPP', 'EMLINK'])(
    'can be new where the file system has no links: %s',
    (code) => {
      const files = { ...nodeFiles, link: failingWith(code) };
      expect(write('sessions/b.yaml', 'absent', files).ok).toBe(true);
      expect(read('sessions/b.yaml')).toEqual(NEW);
      expect(write('sessions/b.yaml', 'absent', files)).toMatchObject({ problem: { reason: 'exists' } });
      expect(others()).toEqual(['b.yaml']);
    },
  );

  it.each(['EINVAL', 'EPERM', 'EISDIR', 'ENOTSUP'])('is safe where folders are not synced: %s', (code) => {
    expect(write('sessions/a.yaml', OLD, { ...nodeFiles, openFolder: failingWith(code) }).ok).toBe(true);
  });
});

describe('a write is refused', () => {
  it.each([
    ['through a link out of the shop', 'link.yaml', 'link'],
    ['through a link that stays inside', 'inside.yaml', 'link'],
    ['through a link to nowhere', 'nowhere.yaml', 'link'],
    ['below a folder that is a link', 'up/secret.yaml', 'link'],
    ['outside by two dots', '../secret.yaml', 'outside'],
    ['at an absolute path', '/tmp/secret.yaml', 'path'],
    ['in the git folder', '.git/config', 'path'],
    ['over a folder', 'sessions', 'not-a-file'],
    ['below a folder that is not there', 'none/a.yaml', 'disk'],
  ])('%s, and no lock or other file is made', (_, path, reason) => {
    symlinkSync('../secret.yaml', join(root, 'link.yaml'));
    symlinkSync('sessions/a.yaml', join(root, 'inside.yaml'));
    symlinkSync('../nowhere', join(root, 'nowhere.yaml'));
    symlinkSync('..', join(root, 'up'));
    const change = changeFile(destination(path), () => done(bytes(NEW)));
    expect(change).toMatchObject({ ok: false, problem: { reason } });
    expect(write(path, 'anything')).toMatchObject({ ok: false, problem: { reason } });
    expect(readFileSync(join(outside, 'secret.yaml'), 'utf8')).toEqual(OLD);
    expect(readdirSync(outside).sort()).toEqual(['secret.yaml', 'shop']);
    expect(readdirSync(root).sort()).toEqual(['inside.yaml', 'link.yaml', 'nowhere.yaml', 'sessions', 'up']);
    expect(read('sessions/a.yaml')).toEqual(OLD);
  });

  it.skipIf(process.getuid?.() === 0)('to a file that is marked read-only', () => {
    chmodSync(join(root, 'sessions/a.yaml'), 0o444);
    expect(write('sessions/a.yaml', OLD)).toMatchObject({ problem: { message: /permission denied/ } });
  });
});

/** Runs `work` with the first, second, third … call failing, until a run gets through without meeting its fault. */
function failEachCall(code: string, keeps: boolean, work: (files: FileLayer) => void): number {
  for (let at = 1; ; at++) {
    const { files, calls } = failingFiles({ at, code, keeps });
    work(files);
    if (calls().length < at) return at - 1;
  }
}

const FAULTS = ['ENOSPC', 'EIO', 'EACCES', 'EMFILE', 'EROFS', 'EPERM', 'ENOENT', 'EEXIST', 'EINVAL'].flatMap(
  (code) => [false, true].map((keeps) => [code, keeps] as const),
);

describe('when a file call fails', () => {
  it.each(FAULTS)('with %s (and goes on failing: %s) the old or the new file is whole', (code, keeps) => {
    const runs = failEachCall(code, keeps, (files) => {
      writeFileSync(join(root, 'sessions/a.yaml'), OLD);
      const result = changeFile(destination('sessions/a.yaml', files), () => done(bytes(NEW)), 0);
      const found = read('sessions/a.yaml');
      if (result.ok) expect(found).toEqual(NEW);
      else expect(found).toEqual(result.problem.reason === 'unconfirmed' ? NEW : OLD);
      clearLeftovers();
    });
    expect(runs).toBeGreaterThan(30);
  });

  it.each(FAULTS)('with %s (and goes on failing: %s) a new file is whole or not there', (code, keeps) => {
    failEachCall(code, keeps, (files) => {
      const result = writeFile(destination('sessions/b.yaml', files), bytes(NEW), 'absent');
      const found = existsSync(join(root, 'sessions/b.yaml')) ? read('sessions/b.yaml') : undefined;
      if (result.ok || found !== undefined) expect(found).toEqual(NEW);
      rmSync(join(root, 'sessions/b.yaml'), { force: true });
      clearLeftovers();
    });
  });

  it('once, nothing stays beside the file unless it was the tidying itself that failed', () => {
    const left = new Set<string>();
    for (let at = 1; at < 60; at++) {
      const { files, calls } = failingFiles({ at, code: 'EIO', keeps: false });
      changeFile(destination('sessions/a.yaml', files), () => done(bytes(NEW)), 0);
      if (others().length > 0) left.add(calls()[at - 1] ?? '');
      writeFileSync(join(root, 'sessions/a.yaml'), OLD);
      clearLeftovers();
    }
    // Removing fails, or the lock cannot be read any more to see whether it is ours.
    expect([...left].sort()).toEqual(['close', 'openToRead', 'read', 'remove']);
  });

  it('once while the lock is let go, the next write gets the lock all the same', () => {
    let removals = 0;
    const remove = (path: string) => {
      if (path.endsWith('.lock') && ++removals === 1) throw Object.assign(new Error(), { code: 'EIO' });
      nodeFiles.remove(path);
    };
    const change = () =>
      changeFile(destination('sessions/a.yaml', { ...nodeFiles, remove }), () => done(bytes(NEW)), 0);
    expect(change().ok).toBe(true);
    expect(others()).toEqual(['a.yaml.lock']);
    expect(change().ok).toBe(true);
    expect(others()).toEqual([]);
  });

  it('with a bug of ours, the bug is thrown and not taken for a full disk', () => {
    const sync = () => {
      throw new TypeError('a bug');
    };
    expect(() => write('sessions/a.yaml', OLD, { ...nodeFiles, sync })).toThrow('a bug');
    expect(read('sessions/a.yaml')).toEqual(OLD);
  });

  it('while the folder is synced, the new file stands but success is not reported', () => {
    const openFolder = () => {
      throw Object.assign(new Error(), { code: 'EIO' });
    };
    const result = write('sessions/a.yaml', OLD, { ...nodeFiles, openFolder });
    expect(result).toMatchObject({ problem: { reason: 'unconfirmed' } });
    expect(read('sessions/a.yaml')).toEqual(NEW);
  });
});

describe('a disk that takes fewer bytes than offered', () => {
  it('gets the rest in further writes', () => {
    const files: FileLayer = {
      ...nodeFiles,
      write: (handle, bytes, offset) => nodeFiles.write(handle, bytes.subarray(0, offset + 7_001), offset),
    };
    expect(write('sessions/a.yaml', OLD, files).ok).toBe(true);
    expect(read('sessions/a.yaml')).toEqual(NEW);
  });

  it.each([
    ['takes nothing and says so', () => 0],
    ['takes nothing and claims everything', (_: number, bytes: Uint8Array) => bytes.length],
    [
      'drops the last byte and claims it',
      (handle: number, bytes: Uint8Array) => nodeFiles.write(handle, bytes.subarray(0, -1), 0) + 1,
    ],
  ])('and %s is found out before the old file is replaced', (_, lie) => {
    const result = write('sessions/a.yaml', OLD, { ...nodeFiles, write: lie });
    expect(result).toMatchObject({ problem: { reason: 'disk', message: /EIO/ } });
    expect(read('sessions/a.yaml')).toEqual(OLD);
    expect(others()).toEqual([]);
  });
});

describe('what a killed writer left', () => {
  const temporary = (name: string, host: string, pid: number) => `.${name}.${host}.${pid}.0123456789ab.tmp`;
  // The largest possible number of a process on Linux is 2^22.
  const GONE = 5_000_000;

  it('is removed by the next write of that file, and nothing else is', () => {
    const { host, pid } = thisProcess;
    const kept = [
      temporary('a.yaml', host, pid),
      temporary('a.yaml', 'elsewhere', GONE),
      temporary('b.yaml', host, GONE),
      '.a.yaml.tmp',
    ];
    const removed = [temporary('a.yaml', host, GONE), temporary('a.yaml.lock', host, GONE)];
    for (const name of [...kept, ...removed]) writeFileSync(join(root, 'sessions', name), '');
    expect(write('sessions/a.yaml', OLD).ok).toBe(true);
    expect(others().sort()).toEqual(kept.sort());
  });

  it('between giving a new file its name and dropping the temporary one does no harm', () => {
    const name = temporary('a.yaml', thisProcess.host, GONE);
    linkSync(join(root, 'sessions/a.yaml'), join(root, 'sessions', name));
    expect(write('sessions/a.yaml', OLD).ok).toBe(true);
    expect(others()).toEqual([]);
  });
});

describe('an edit in another program', () => {
  it('made while we edit is kept: our change is made again on its text', () => {
    let edits = 0;
    const result = changeFile(destination('sessions/a.yaml'), (before) => {
      if (++edits === 1) writeFileSync(join(root, 'sessions/a.yaml'), 'theirs\n');
      return done(Buffer.concat([before ?? Buffer.alloc(0), Buffer.from('ours\n')]));
    });
    expect(result.ok).toBe(true);
    expect(read('sessions/a.yaml')).toBe('theirs\nours\n');
  });

  it('that never stops ends in a message, not in a lost edit', () => {
    let edits = 0;
    const result = changeFile(destination('sessions/a.yaml'), () => {
      writeFileSync(join(root, 'sessions/a.yaml'), `theirs ${++edits}\n`);
      return done(bytes(NEW));
    });
    expect(result).toMatchObject({ problem: { reason: 'changed' } });
    expect(read('sessions/a.yaml')).toBe(`theirs ${edits}\n`);
    expect(others()).toEqual([]);
  });
});

function clearLeftovers(): void {
  for (const name of others()) rmSync(join(root, 'sessions', name));
}

describe('the order of the calls', () => {
  it('is written, read back, synced, compared, renamed, folder synced', () => {
    const { files, calls } = failingFiles(faultless);
    writeFile(destination('sessions/a.yaml', files), bytes(NEW), bytes(OLD));
    const after = calls().slice(calls().indexOf('createNew'));
    const steps = after.filter((name) => !['close', 'inspectOpen', 'read'].includes(name));
    expect(steps).toEqual([
      'createNew',
      'setMode',
      'write',
      'sync',
      'openToRead',
      'rename',
      'openFolder',
      'sync',
    ]);
    expect(after.indexOf('read')).toBeLessThan(after.indexOf('sync'));
  });
});
