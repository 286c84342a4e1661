import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type ThisProcess, thisProcess } from '../../../src/shell/process/thisProcess.ts';
import {
  closing,
  publishNew,
  quietly,
  removeLeftovers,
  stage,
  temporaryPath,
} from '../../../src/shell/write/exclusive.ts';
import { type FileLayer, nodeFiles } from '../../../src/shell/write/fileLayer.ts';
import { failingWith } from '../failingFiles.ts';
import { countedFiles } from '../openHandles.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'exclusive '));
});
afterEach(() => rmSync(folder, { recursive: true }));

const at = (name: string): string => join(folder, name);
const bytes = Buffer.from('some text');
const names = (): string[] => readdirSync(folder).sort();

describe('a temporary name', () => {
  it('is hidden, and tells of which file and which process it is', () => {
    const host = hostname().replace(/[^\w-]/g, '-');
    const name = temporaryPath(thisProcess, '/shop/a.yaml');
    expect(name).toMatch(new RegExp(`^/shop/\\.a\\.yaml\\.${host}\\.${process.pid}\\.[0-9a-f]{12}\\.tmp$`));
    expect(temporaryPath(thisProcess, '/shop/a.yaml')).not.toBe(name);
  });
});

describe('a file that is staged', () => {
  it.each([
    ['the mode that is asked for', 0o604, 0o604],
    ['what the umask leaves', undefined, 0o666 & ~process.umask()],
  ])('holds the bytes under a temporary name, with %s, and is closed', (_, mode, wanted) => {
    const { files, handles } = countedFiles();
    const temporary = stage(files, thisProcess, at('a.yaml'), bytes, mode);
    expect(readFileSync(temporary)).toEqual(bytes);
    expect(statSync(temporary).mode & 0o777).toBe(wanted);
    expect(handles()).toEqual({ opened: 1, open: 0 });
    expect(publishNew(files, temporary, at('a.yaml'))).toBe(true);
    expect(names()).toEqual(['a.yaml']);
  });

  it.each<[string, Partial<FileLayer>, string]>([
    ['the disk takes nothing', { write: () => 0 }, 'the write made no progress'],
    ['the disk goes backwards', { write: () => -1 }, 'the write made no progress'],
    [
      'the disk claims what it did not take',
      { write: (_, all) => all.length },
      'reading back gave other bytes',
    ],
    [
      'the disk holds more than was written',
      { read: (_, into) => into.fill(1).length },
      'reading back gave other bytes',
    ],
    ['it is not synced', { sync: failingWith('ENOSPC') }, 'ENOSPC injected'],
    ['it cannot be closed', { close: failingWith('EIO') }, 'EIO injected'],
  ])('is no more, and the error is told, where %s', (_, faults, message) => {
    const { files, handles } = countedFiles({ ...nodeFiles, ...faults });
    expect(() => stage(files, thisProcess, at('a.yaml'), bytes)).toThrow(message);
    expect([names(), handles()]).toEqual([[], { opened: 1, open: 0 }]);
  });

  it('tells of a full disk by a code, as the system does', () => {
    const call = () => stage({ ...nodeFiles, write: () => 0 }, thisProcess, at('a.yaml'), bytes);
    expect(call).toThrow(expect.objectContaining({ code: 'EIO' }));
  });
});

describe('a staged file', () => {
  const staged = (): string => stage(nodeFiles, thisProcess, at('a.yaml'), bytes);

  it('does not get a name that is taken', () => {
    writeFileSync(at('a.yaml'), 'theirs');
    expect(publishNew(nodeFiles, staged(), at('a.yaml'))).toBe(false);
    expect([names(), readFileSync(at('a.yaml'), 'utf8')]).toEqual([['a.yaml'], 'theirs']);
  });

  it('claims its name first where there are no links, and closes the claim', () => {
    const { files, handles } = countedFiles({ ...nodeFiles, link: failingWith('EPERM') });
    expect(publishNew(files, staged(), at('a.yaml'))).toBe(true);
    expect(readFileSync(at('a.yaml'))).toEqual(bytes);
    expect([names(), handles()]).toEqual([['a.yaml'], { opened: 1, open: 0 }]);
  });

  it.each<[string, Partial<FileLayer>]>([
    ['EIO', { link: failingWith('EIO') }],
    ['ENOSPC', { link: failingWith('EPERM'), rename: failingWith('ENOSPC') }],
  ])('leaves nothing where it cannot get its name: %s', (code, faults) => {
    expect(() => publishNew({ ...nodeFiles, ...faults }, staged(), at('a.yaml'))).toThrow(code);
    expect(names()).toEqual([]);
  });
});

describe('what is left by those who are gone', () => {
  const gone = 2_000_001;
  const self: ThisProcess = { ...thisProcess, host: 'bench-1', isAlive: (pid) => pid !== gone };
  const left = (owner: string, host: string, pid: number, random = '0123456789ab') =>
    `.${owner}.${host}.${pid}.${random}.tmp`;

  it('is removed for one file, its lock and those who waited for that; nothing else is', () => {
    const removed = ['a', 'a.lock', 'a.lock.12'].map((owner) => left(owner, 'bench-1', gone));
    const kept = [
      left('a', 'bench-1', 7),
      left('a', 'bench-2', gone),
      left('b', 'bench-1', gone),
      left('a.lock.x', 'bench-1', gone),
      left('a.b', 'bench-1', gone),
      left('a', 'bench-1', gone, '0123456789a'),
      `${left('a', 'bench-1', gone)}.x`,
      `x${left('a', 'bench-1', gone)}`,
      'a',
    ];
    for (const name of [...removed, ...kept]) writeFileSync(at(name), '');
    removeLeftovers(nodeFiles, self, at('a'));
    expect(names()).toEqual(kept.sort());
  });

  it('stays where the folder cannot be listed or a file not be removed, and nobody fails for that', () => {
    writeFileSync(at(left('a', 'bench-1', gone)), '');
    for (const faults of [{ list: failingWith('EACCES') }, { remove: failingWith('EACCES') }])
      removeLeftovers({ ...nodeFiles, ...faults }, self, at('a'));
    expect(names()).toHaveLength(1);
  });

  it('does not hide a bug of ours', () => {
    const bug = (): never => {
      throw new TypeError('a bug');
    };
    expect(() => quietly(bug)).toThrow('a bug');
    expect(() => quietly(failingWith('EIO'))).not.toThrow();
    const { files, handles } = countedFiles();
    const handle = files.createNew(at('a'), 0o600);
    expect(() => closing(files, handle, bug)).toThrow('a bug');
    expect(handles()).toEqual({ opened: 1, open: 0 });
  });
});
