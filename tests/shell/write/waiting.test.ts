import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type ThisProcess, thisProcess } from '../../../src/shell/process/thisProcess.ts';
import { type FileLayer, nodeFiles } from '../../../src/shell/write/fileLayer.ts';
import { takeLock } from '../../../src/shell/write/lock.ts';
import { failingWith } from '../failingFiles.ts';
import { countedFiles } from '../openHandles.ts';

let folder = '';
let file = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'waiting '));
  file = join(folder, 'a.yaml');
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true });
});

const GONE = 2_000_001;
const holder = { pid: GONE, host: thisProcess.host, boot: thisProcess.boot, nonce: 'n1' };
const left = (content: unknown): void =>
  writeFileSync(`${file}.lock`, typeof content === 'string' ? content : JSON.stringify(content));
const names = (): string[] => readdirSync(folder).sort();

/** By a clock of its own, on which each nap takes a millisecond; what it was to take is kept. */
function sleeper(isAlive: (pid: number) => boolean = () => true) {
  const naps: number[] = [];
  const self: ThisProcess = {
    ...thisProcess,
    isAlive,
    elapsedMs: () => naps.length,
    sleepMs: (ms) => {
      naps.push(ms);
    },
  };
  return { self, naps };
}

describe('one who waits for a lock', () => {
  it.each([
    ['often where it is the next', [], 3.5],
    ['seldom where two are before it', [1, 2], 10.5],
  ])('looks %s', (_, before, wanted) => {
    vi.spyOn(Math, 'random').mockReturnValue(0.5);
    left(holder);
    for (const number of before)
      writeFileSync(join(folder, `.a.yaml.lock.${number}.elsewhere.8.0123456789ab.tmp`), '');
    const { self, naps } = sleeper();
    expect(takeLock(nodeFiles, self, file, 1).ok).toBe(false);
    expect(naps).toEqual([wanted]);
  });

  it('gives up as soon as its patience is over, with who holds it and what to delete', () => {
    left(holder);
    const { self, naps } = sleeper();
    expect(takeLock(nodeFiles, self, file, 7)).toEqual({
      ok: false,
      problem: {
        reason: 'locked',
        message: `process ${GONE} on ${thisProcess.host} is writing a.yaml`,
        help: `wait for it to finish; if it is no longer running, delete ${file}.lock`,
      },
    });
    expect([naps.length, names()]).toEqual([7, ['a.yaml.lock']]);
  });

  it('passes those who do not take a free lock for 150 ms', () => {
    writeFileSync(join(folder, '.a.yaml.lock.1.elsewhere.8.0123456789ab.tmp'), '');
    const { self, naps } = sleeper();
    const lock = takeLock(nodeFiles, self, file, 1000);
    expect([lock.ok, naps.length]).toEqual([true, 150]);
  });
});

describe('the lock of one who is gone', () => {
  const { self } = sleeper((pid) => pid !== GONE);

  it.each<[string, unknown, boolean]>([
    ['as it was written', holder, true],
    ['of a number that is none', { ...holder, pid: 1.5 }, false],
    ['of the number zero, which is a group', { ...holder, pid: 0 }, false],
    ['without a machine', { ...holder, host: undefined }, false],
    ['without a start of the machine', { ...holder, boot: 3 }, false],
    ['without a word of its own', { ...holder, nonce: undefined }, false],
    ['that is no record', 'null', false],
    ['that is a number', '7', false],
    ['that is no JSON', '{', false],
  ])('%s: whether it is taken over', (_, content, wanted) => {
    left(content);
    const lock = takeLock(nodeFiles, self, file, 0);
    expect(lock.ok).toBe(wanted);
    if (!lock.ok)
      expect(lock.problem.message).toMatch(/^(another program|process 2000001 on .*) is writing a\.yaml$/);
    expect(names()).toEqual(['a.yaml.lock']);
  });

  it('that somebody else took away first is simply free', () => {
    left(holder);
    const rename = (from: string, to: string) => {
      rmSync(`${file}.lock`, { force: true });
      nodeFiles.rename(from, to);
    };
    expect(takeLock({ ...nodeFiles, rename }, self, file, 0).ok).toBe(true);
  });

  it('that cannot be moved for another reason is an error of the disk', () => {
    left(holder);
    expect(() => takeLock({ ...nodeFiles, rename: failingWith('EIO') }, self, file, 0)).toThrow(
      'EIO injected',
    );
    expect(names()).toEqual(['a.yaml.lock']);
  });

  it('leaves no handle open when it is taken over and let go', () => {
    left(holder);
    const { files, handles } = countedFiles();
    const lock = takeLock(files, self, file, 0);
    if (!lock.ok) throw new Error(lock.problem.message);
    expect(lock.value.isHeld()).toBe(true);
    lock.value.release();
    expect([names(), handles().open]).toEqual([[], 0]);
  });
});

describe('a lock', () => {
  const { self } = sleeper();

  it('is a line of JSON that tells of its holder', () => {
    const lock = takeLock(nodeFiles, self, file, 0);
    const text = readFileSync(`${file}.lock`, 'utf8');
    expect(text.endsWith('}\n')).toBe(true);
    expect(JSON.parse(text)).toEqual({
      pid: process.pid,
      host: self.host,
      boot: self.boot,
      nonce: expect.stringMatching(/^[0-9a-f]{32}$/),
    });
    if (lock.ok) lock.value.release();
  });

  it('that is a link is another program’s, and is not followed', () => {
    symlinkSync('elsewhere', `${file}.lock`);
    expect(takeLock(nodeFiles, self, file, 0)).toMatchObject({
      problem: { message: 'another program is writing a.yaml' },
    });
  });

  it('that cannot be read is an error of the disk', () => {
    left(holder);
    expect(() => takeLock({ ...nodeFiles, openToRead: failingWith('EACCES') }, self, file, 0)).toThrow(
      'EACCES injected',
    );
  });

  it('is not removed by one who lost it, and one that cannot be removed fails nobody', () => {
    const files: FileLayer = { ...nodeFiles, remove: failingWith('EACCES') };
    const lock = takeLock(nodeFiles, self, file, 0);
    if (!lock.ok) throw new Error(lock.problem.message);
    left(holder);
    expect(lock.value.isHeld()).toBe(false);
    lock.value.release();
    expect(names()).toEqual(['a.yaml.lock']);
    rmSync(`${file}.lock`);
    const other = takeLock(files, self, join(folder, 'b.yaml'), 0);
    if (other.ok) expect(other.value.release).not.toThrow();
  });
});
