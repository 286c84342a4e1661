import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type ThisProcess, thisProcess } from '../../../src/shell/process/thisProcess.ts';
import { type FileLayer, nodeFiles } from '../../../src/shell/write/fileLayer.ts';
import { takeLock } from '../../../src/shell/write/lock.ts';

let folder = '';
let file = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lock '));
  file = join(folder, 'a.yaml');
  writeFileSync(file, '');
});

afterEach(() => rmSync(folder, { recursive: true }));

/** Another process on this machine, as the lock sees one. */
const process2: ThisProcess = { ...thisProcess, pid: 2_000_001, isAlive: (pid) => pid === 2_000_001 };

const take = (self: ThisProcess, patienceMs = 0, files: FileLayer = nodeFiles) =>
  takeLock(files, self, file, patienceMs);

function taken(self: ThisProcess) {
  const lock = take(self);
  if (!lock.ok) throw new Error(lock.problem.message);
  return lock.value;
}

const holder = () => ({
  pid: 2_000_001,
  host: thisProcess.host,
  boot: thisProcess.boot,
  nonce: 'n1',
});

const left = (content: object | string) =>
  writeFileSync(`${file}.lock`, typeof content === 'string' ? content : JSON.stringify(content));

const leftFor = (minutes: number) => {
  const time = new Date(Date.now() + minutes * 60_000);
  utimesSync(`${file}.lock`, time, time);
};

describe('a lock', () => {
  it('tells who holds it, and goes when it is released', () => {
    const lock = taken(thisProcess);
    expect(JSON.parse(readFileSync(`${file}.lock`, 'utf8'))).toMatchObject({
      pid: process.pid,
      host: thisProcess.host,
    });
    expect(lock.isHeld()).toBe(true);
    lock.release();
    expect(lock.isHeld()).toBe(false);
    expect(readdirSync(folder)).toEqual(['a.yaml']);
  });

  it('keeps out the same process and others, with the number and the file to delete', () => {
    const lock = taken(thisProcess);
    for (const self of [thisProcess, { ...process2, isAlive: () => true }]) {
      const second = take(self);
      expect(second).toMatchObject({ ok: false, problem: { reason: 'locked' } });
      if (second.ok) throw new Error('two holders');
      expect(second.problem.message).toContain(`process ${process.pid} on ${thisProcess.host}`);
      expect(second.problem.help).toContain(`delete ${file}.lock`);
    }
    expect(lock.isHeld()).toBe(true);
    lock.release();
  });

  it('is waited for as long as patience lasts, by a clock that cannot be set', () => {
    left(holder());
    let now = 0;
    const self: ThisProcess = {
      ...thisProcess,
      isAlive: () => true,
      elapsedMs: () => now,
      sleepMs: (ms) => {
        now += ms;
        if (now > 200) rmSync(`${file}.lock`, { force: true });
      },
    };
    expect(take(self, 150).ok).toBe(false);
    expect(take(self, 1000).ok).toBe(true);
  });
});

describe('the lock of a holder that is gone', () => {
  const gone: ThisProcess = { ...thisProcess, isAlive: () => false };
  const alive: ThisProcess = { ...thisProcess, isAlive: () => true };

  it.each([
    ['is taken over on this machine', gone, holder(), true],
    ['is taken over after this machine was started anew', alive, { ...holder(), boot: 'earlier' }, true],
    ['is taken over when its number was ours', alive, { ...holder(), pid: process.pid }, true],
    ['is kept while its process lives', alive, holder(), false],
    ['is kept when it is from another machine', gone, { ...holder(), host: 'elsewhere' }, false],
    ['is kept when it is empty', gone, '', false],
    ['is kept when it is no record of ours', gone, '{"pid": 1}', false],
    ['is kept when its number stands for every process', gone, { ...holder(), pid: -1 }, false],
  ])('%s', (_, self, content, wanted) => {
    left(content);
    expect(take(self).ok).toBe(wanted);
    expect(readdirSync(folder).sort()).toEqual(['a.yaml', 'a.yaml.lock']);
  });

  it.each([
    ['an hour behind', -60],
    ['an hour ahead', 60],
  ])('is judged alike when its clock is %s', (_, minutes) => {
    left(holder());
    leftFor(minutes);
    expect(take(alive).ok).toBe(false);
    expect(take(gone).ok).toBe(true);
  });

  it('is put back when somebody else took it over in the meantime', () => {
    left(holder());
    const files: FileLayer = {
      ...nodeFiles,
      rename: (from, to) => {
        if (from.endsWith('.lock') && from !== to) left({ ...holder(), nonce: 'n2', pid: 2_000_002 });
        nodeFiles.rename(from, to);
      },
    };
    const self: ThisProcess = { ...thisProcess, isAlive: (pid) => pid === 2_000_002 };
    expect(take(self, 0, files).ok).toBe(false);
    expect(JSON.parse(readFileSync(`${file}.lock`, 'utf8')).nonce).toBe('n2');
    expect(readdirSync(folder).sort()).toEqual(['a.yaml', 'a.yaml.lock']);
  });
});

describe('several processes that write at once', () => {
  const bundleFolder = mkdtempSync(join(tmpdir(), 'appender '));
  const bundle = join(bundleFolder, 'appender.cjs');

  beforeAll(async () => {
    const entry = join(import.meta.dirname, 'appender.ts');
    await build({ entryPoints: [entry], outfile: bundle, bundle: true, platform: 'node', format: 'cjs' });
  });

  afterAll(() => rmSync(bundleFolder, { recursive: true }));

  const run = (name: string, count: number): Promise<string> =>
    new Promise((ended) => {
      const child = spawn(process.execPath, [bundle, folder, 'a.yaml', name, String(count)]);
      let said = '';
      child.stderr.on('data', (text) => {
        said += text;
      });
      child.on('close', (code) => ended(`${said}exit ${code}`));
    });

  it('lose none of 6 × 20 readings, and leave nothing beside the file', async () => {
    writeFileSync(file, 'kind: session\nreadings: []\n');
    const ends = await Promise.all(['a', 'b', 'c', 'd', 'e', 'f'].map((name) => run(name, 20)));
    expect(new Set(ends)).toEqual(new Set(['exit 0']));
    const notes = readFileSync(file, 'utf8').match(/note: [a-f]-\d+$/gm) ?? [];
    expect(new Set(notes).size).toBe(120);
    expect(notes).toHaveLength(120);
    expect(readdirSync(folder)).toEqual(['a.yaml']);
  }, 20_000);
});
