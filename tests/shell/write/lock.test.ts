import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type ThisProcess, thisProcess } from '../../../src/shell/process/thisProcess.ts';
import { type FileLayer, nodeFiles } from '../../../src/shell/write/fileLayer.ts';
import { takeLock } from '../../../src/shell/write/lock.ts';
import { some } from '../../propertyRuns.ts';

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

  it('that says nothing of its holder is told as another program’s', () => {
    left('');
    const lock = take(thisProcess);
    expect(lock).toMatchObject({ problem: { message: 'another program is writing a.yaml' } });
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

describe('a lock that several wait for', () => {
  /** One that waits with a clock of its own; what happens while it sleeps is reported, first nap first. */
  const waiter = (pid: number, naps: readonly (() => void)[]): ThisProcess => {
    let now = 0;
    let nap = 0;
    return {
      ...thisProcess,
      pid,
      isAlive: () => true,
      elapsedMs: () => now,
      sleepMs: (ms) => {
        now += ms;
        naps[nap++]?.();
      },
    };
  };
  const nothing = (): void => undefined;
  const passer = (pid: number): ThisProcess => ({ ...thisProcess, pid, isAlive: () => true });

  it('is not had by one who comes between its release and the turn of the next', () => {
    const holding = taken(passer(11));
    const between: boolean[] = [];
    const first = takeLock(
      nodeFiles,
      waiter(12, [
        () => {
          holding.release();
          between.push(take(passer(13)).ok);
        },
      ]),
      file,
      1000,
    );
    expect([first.ok, between]).toEqual([true, [false]]);
  });

  it('is had in the order of coming, whoever wakes first', () => {
    const holding = taken(passer(11));
    const order: number[] = [];
    const had = (pid: number, lock: ReturnType<typeof take>): void => {
      if (lock.ok) order.push(pid);
      if (lock.ok) lock.value.release();
    };
    // The third wakes twice while the second sleeps, and only then the second wakes.
    let third: ReturnType<typeof take> | undefined;
    const second = takeLock(
      nodeFiles,
      waiter(12, [
        () => {
          third = takeLock(nodeFiles, waiter(13, [holding.release, nothing]), file, 60);
        },
      ]),
      file,
      1000,
    );
    had(12, second);
    expect(third?.ok).toBe(false);
    had(13, take(passer(13)));
    expect(order).toEqual([12, 13]);
  });

  it('is waited for as long as it changes hands', () => {
    const hands = Array.from({ length: 40 }, (_, hand) => () => left({ ...holder(), nonce: `hand ${hand}` }));
    left(holder());
    const patient = takeLock(nodeFiles, waiter(12, [...hands, () => rmSync(`${file}.lock`)]), file, 60);
    expect(patient.ok).toBe(true);
    left(holder());
    expect(takeLock(nodeFiles, waiter(12, [...hands.slice(0, 3)]), file, 60).ok).toBe(false);
  });

  it.each([
    ['was killed', { isAlive: (pid: number) => pid !== 2_000_009 }, thisProcess.host, 0],
    ['does not move', { isAlive: () => true }, thisProcess.host, 200],
    ['is on another machine', { isAlive: () => false }, 'elsewhere', 200],
  ])('is not kept from others by one in the queue who %s', (_, alive, host, patience) => {
    const name = `.a.yaml.lock.1.${host}.2000009.0123456789ab.tmp`;
    writeFileSync(join(folder, name), '');
    const lock = takeLock(nodeFiles, { ...waiter(12, []), ...alive }, file, patience);
    expect(lock.ok).toBe(true);
  });

  it('leaves no name in the queue where patience ends', () => {
    left(holder());
    expect(takeLock(nodeFiles, waiter(12, []), file, 60).ok).toBe(false);
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

  const names = [...'abcdefgh'].slice(0, some(8, 4));
  const each = some(50, 10);

  it(`lose none of ${names.length} × ${each} readings, give up none, and leave nothing beside the file`, async () => {
    writeFileSync(file, 'kind: session\nreadings: []\n');
    const ends = await Promise.all(names.map((name) => run(name, each)));
    expect(new Set(ends)).toEqual(new Set(['exit 0']));
    const notes = readFileSync(file, 'utf8').match(/note: [a-h]-\d+$/gm) ?? [];
    expect(new Set(notes).size).toBe(names.length * each);
    expect(notes).toHaveLength(names.length * each);
    expect(readdirSync(folder)).toEqual(['a.yaml']);
  });
});
