import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { workerPool } from '../../../src/shell/process/workerPool.ts';

const folder = mkdtempSync(join(tmpdir(), 'tenths-workerPool-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A member that takes up to as many milliseconds as the call says, and answers with the task and its number. */
const MEMBER = `
  import { parentPort, workerData } from 'node:worker_threads';
  let count = 0;
  parentPort.on('message', ({ index, task }) => {
    if (task === 'trouble') throw new RangeError('no such engine');
    if (task === 'end') process.exit(3);
    setTimeout(() => parentPort.postMessage({ index, result: task + ' ' + workerData.say }), (index * 7) % workerData.most);
  });
`;

function member(): string {
  const file = join(folder, 'member.mjs');
  writeFileSync(file, MEMBER);
  return file;
}

async function resultsOf(tasks: readonly string[]): Promise<readonly string[]> {
  const results: string[] = [];
  for await (const each of workerPool<unknown, string, string>(
    member(),
    { say: 'checked', most: 12 },
    tasks,
  )) {
    results.push(each);
  }
  return results;
}

describe('a run that is shared among threads', () => {
  it('gives every result once, in the order of the tasks, whichever is ready first', async () => {
    const tasks = Array.from({ length: 150 }, (_, index) => `engine ${index}`);
    expect(await resultsOf(tasks)).toEqual(tasks.map((task) => `${task} checked`));
  });

  it('has nothing to do where there are no tasks', async () => {
    expect(await resultsOf([])).toEqual([]);
  });

  it('fails with what went wrong in a thread', async () => {
    await expect(resultsOf(['engine 1', 'trouble', 'engine 2'])).rejects.toThrow('no such engine');
  });

  it('does not wait for a thread that has ended', async () => {
    await expect(resultsOf(['engine 1', 'end', 'engine 2'])).rejects.toThrow('a thread ended with 3');
  });
});
