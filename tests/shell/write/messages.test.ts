import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { done, failed } from '../../../src/shell/problem.ts';
import { type ThisProcess, thisProcess } from '../../../src/shell/process/thisProcess.ts';
import { changeFile } from '../../../src/shell/write/change.ts';
import { type FileLayer, nodeFiles } from '../../../src/shell/write/fileLayer.ts';
import { readTarget, writeFile } from '../../../src/shell/write/writer.ts';
import { failingFiles, failingWith, faultless } from '../failingFiles.ts';
import { countedFiles } from '../openHandles.ts';

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'messages '));
  mkdirSync(join(root, 'folder'));
  writeFileSync(join(root, 'a.yaml'), 'old');
  symlinkSync('a.yaml', join(root, 'link'));
  symlinkSync('folder', join(root, 'linked'));
});
afterEach(() => rmSync(root, { recursive: true }));

const bytes = (text: string): Uint8Array => Buffer.from(text);
const destination = (path: string, files: FileLayer = nodeFiles, self: ThisProcess = thisProcess) => ({
  files,
  self,
  root,
  path,
});
const refused = (reason: string, message: string, help: string) => ({
  ok: false,
  problem: { reason, message, help },
});
const names = (): string[] => readdirSync(root).sort();
const ALL = ['a.yaml', 'folder', 'link', 'linked'];

describe('why a file is not written, and what to do', () => {
  const link = (path: string) =>
    refused(
      'link',
      `${path} is a link, or lies behind one`,
      'put the file itself there; links are not written through',
    );

  it.each([
    ['link', 'anything', link('link')],
    ['linked/b.yaml', 'absent', link('linked/b.yaml')],
    [
      'folder',
      'anything',
      refused('not-a-file', 'folder is not a regular file', 'only regular files are replaced'),
    ],
    [
      'b.yaml',
      bytes('old'),
      refused('missing', 'b.yaml is no longer there', 'nothing was written; look for the file and try again'),
    ],
    [
      'a.yaml',
      'absent',
      refused('exists', 'a.yaml is there already', 'nothing was overwritten; choose another name'),
    ],
    [
      'a.yaml',
      bytes('other'),
      refused(
        'changed',
        'a.yaml was changed by another program',
        'nothing was written; read it again and repeat',
      ),
    ],
    [
      'none/b.yaml',
      'absent',
      refused('disk', 'none/b.yaml was not written: no such file or folder (ENOENT)', 'nothing was changed'),
    ],
    [
      '../b.yaml',
      'absent',
      refused('outside', 'the path `../b.yaml` leads out of the shop', 'name a file inside the shop folder'),
    ],
  ] as const)('%s, where %o is expected', (path, expected, wanted) => {
    expect(writeFile(destination(path), bytes('new'), expected)).toEqual(wanted);
    expect([names(), readFileSync(join(root, 'a.yaml'), 'utf8')]).toEqual([ALL, 'old']);
  });

  it('a file that stands is seen before anything is made for a new one', () => {
    const { files, calls } = failingFiles(faultless);
    writeFile(destination('a.yaml', files), bytes('new'), 'absent');
    expect(calls()).not.toContain('createNew');
  });

  it('a file is not replaced by one who may not any more, and nothing of it stays', () => {
    const call = () => writeFile(destination('a.yaml'), bytes('new'), bytes('old'), () => false);
    expect(call()).toMatchObject({ ok: false, problem: { reason: 'changed' } });
    expect([names(), readFileSync(join(root, 'a.yaml'), 'utf8')]).toEqual([ALL, 'old']);
  });

  it('a file that is written, but not confirmed, is told as that', () => {
    const files = { ...nodeFiles, openFolder: failingWith('EIO') };
    expect(writeFile(destination('a.yaml', files), bytes('new'), bytes('old'))).toEqual(
      refused(
        'unconfirmed',
        'a.yaml is written, but the disk did not confirm it: the disk reported an error (EIO)',
        'check the disk before switching off',
      ),
    );
  });
});

describe('what stands in a file', () => {
  it('is read whole, and none where there is no file', () => {
    const { files, handles } = countedFiles();
    expect(readTarget(destination('a.yaml', files))).toMatchObject({
      ok: true,
      value: Uint8Array.from(bytes('old')),
    });
    expect(readTarget(destination('b.yaml', files))).toEqual({ ok: true, value: undefined });
    expect(readTarget(destination('link', files))).toMatchObject({ problem: { reason: 'link' } });
    expect(handles()).toEqual({ opened: 1, open: 0 });
  });

  it('is read to its end though it grew meanwhile, by as much as shows that it did', () => {
    const files: FileLayer = {
      ...nodeFiles,
      inspectOpen: (handle) => ({ ...nodeFiles.inspectOpen(handle), size: 1 }),
    };
    expect(readTarget(destination('a.yaml', files))).toMatchObject({
      ok: true,
      value: Uint8Array.from(bytes('ol')),
    });
  });
});

describe('a change', () => {
  it('gives back the bytes that stand there now, and leaves no handle open', () => {
    const { files, handles } = countedFiles();
    const result = changeFile(destination('a.yaml', files), (before) =>
      done(bytes(`${Buffer.from(before ?? [])}er`)),
    );
    expect(result.ok && Buffer.from(result.value).toString()).toBe('older');
    expect([names(), readFileSync(join(root, 'a.yaml'), 'utf8'), handles().open]).toEqual([ALL, 'older', 0]);
  });

  it('may make a file, and may refuse', () => {
    expect(changeFile(destination('b.yaml'), (before) => done(bytes(String(before))))).toMatchObject({
      ok: true,
    });
    expect(readFileSync(join(root, 'b.yaml'), 'utf8')).toBe('undefined');
    expect(changeFile(destination('a.yaml'), () => failed('mine', 'no', 'ask'))).toEqual(
      refused('mine', 'no', 'ask'),
    );
    expect(names()).toEqual([...ALL, 'b.yaml'].sort());
  });

  it('is tried five times where an editor saves in between each time', () => {
    let edits = 0;
    const result = changeFile(destination('a.yaml'), () => {
      writeFileSync(join(root, 'a.yaml'), `theirs ${++edits}`);
      return done(bytes('ours'));
    });
    expect(result).toMatchObject({ problem: { reason: 'changed' } });
    expect(edits).toBe(5);
  });

  it('sees an edit that an editor saves while the lock is looked at once more', () => {
    const looking = () => {
      writeFileSync(join(root, 'a.yaml'), 'theirs');
      return true;
    };
    expect(writeFile(destination('a.yaml'), bytes('ours'), bytes('old'), looking)).toMatchObject({
      problem: { reason: 'changed' },
    });
    expect(readFileSync(join(root, 'a.yaml'), 'utf8')).toBe('theirs');
  });

  it('is refused after ten seconds where another holds the lock', () => {
    let now = 0;
    const self: ThisProcess = {
      ...thisProcess,
      isAlive: () => true,
      elapsedMs: () => now,
      sleepMs: () => {
        now += 100;
      },
    };
    const { host, boot } = thisProcess;
    writeFileSync(join(root, 'a.yaml.lock'), JSON.stringify({ pid: 2_000_001, host, boot, nonce: 'n' }));
    expect(changeFile(destination('a.yaml', nodeFiles, self), () => done(bytes('new')))).toEqual(
      refused(
        'locked',
        `process 2000001 on ${host} is writing a.yaml`,
        `wait for it to finish; if it is no longer running, delete ${root}/a.yaml.lock`,
      ),
    );
    expect([now, names()]).toEqual([10_000, [...ALL, 'a.yaml.lock'].sort()]);
  });

  it('that the disk does not take is told with the reason', () => {
    const files = { ...nodeFiles, createNew: failingWith('ENOSPC') };
    expect(changeFile(destination('a.yaml', files), () => done(bytes('new')))).toEqual(
      refused('disk', 'a.yaml was not written: the disk is full (ENOSPC)', 'nothing was changed'),
    );
  });
});
