import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type ThisProcess, thisProcess } from '../../../src/shell/process/thisProcess.ts';
import { nodeFiles } from '../../../src/shell/write/fileLayer.ts';
import { lockQueue } from '../../../src/shell/write/lockQueue.ts';
import { countedFiles } from '../openHandles.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'queue '));
});
afterEach(() => rmSync(folder, { recursive: true }));

const GONE = 2_000_001;
const self: ThisProcess = { ...thisProcess, host: 'bench', pid: 7, isAlive: (pid) => pid !== GONE };
const { files, handles } = countedFiles({
  ...nodeFiles,
  // A folder may be listed in any order.
  list: (path) => [...nodeFiles.list(path)].reverse(),
});
const queueOf = (who: ThisProcess = self) => lockQueue(files, who, join(folder, 'a.lock'));
const waiter = (number: number, host: string, pid: number, random = '0123456789ab') =>
  `.a.lock.${number}.${host}.${pid}.${random}.tmp`;
const names = (): string[] => readdirSync(folder).sort();

it('a waiter stands behind all others once, and nothing of it stays when it leaves', () => {
  const [first, second] = [queueOf(), queueOf()];
  first.join();
  first.join();
  second.join();
  expect(names()).toEqual([
    expect.stringMatching(/^\.a\.lock\.1\.bench\.7\.[0-9a-f]{12}\.tmp$/),
    expect.stringMatching(/^\.a\.lock\.2\.bench\.7\.[0-9a-f]{12}\.tmp$/),
  ]);
  expect([first.ahead(), second.ahead(), queueOf().ahead()]).toEqual([[], [names()[0]], names()]);
  first.leave();
  expect([second.ahead(), names()]).toEqual([[], [expect.stringContaining('.a.lock.2.')]]);
  second.leave();
  queueOf().leave();
  expect(names()).toEqual([]);
  expect(handles()).toEqual({ opened: 2, open: 0 });
});

it('those who wait come by their numbers, then by their names; those who are gone and others do not count', () => {
  const waiting = [
    waiter(2, 'bench', 8),
    waiter(10, 'bench', 3),
    waiter(10, 'bench', 4),
    waiter(11, 'elsewhere', GONE),
  ];
  const others = [
    waiter(1, 'bench', GONE),
    // Another process had our number before us.
    waiter(1, 'bench', 7),
    '.b.lock.1.bench.8.0123456789ab.tmp',
    '.a.lock.bench.8.0123456789ab.tmp',
    '.a.lock.1.bench.8.0123456789a.tmp',
    'a.lock',
  ];
  for (const name of [...waiting].reverse().concat(others)) writeFileSync(join(folder, name), '');
  const queue = queueOf();
  expect(queue.ahead()).toEqual(waiting);
  queue.join();
  expect(names().filter((name) => name.startsWith('.a.lock.12.bench.7.'))).toHaveLength(1);
  expect(queue.ahead()).toEqual(waiting);
  queue.leave();
});
