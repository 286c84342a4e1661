import { existsSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { besides, makeFile, notesIn, startAppender } from './appender.js';

const HOUR_MS = 3_600_000;

/** What says nothing of a lock is its age: a dead holder's is taken over at once, a living one's never. */
export async function staleLocks(part) {
  for (let run = 0; run < part.times(15); run++) {
    for (const off of [-HOUR_MS, HOUR_MS]) {
      await takeOverFromTheDead(part, join(part.folder, `dead-${run}-${off}`), off);
      await waitForTheLiving(part, join(part.folder, `living-${run}-${off}`), off);
    }
  }
}

const lockIn = (folder) => join(folder, 'a.yaml.lock');

function setClock(path, off) {
  const time = new Date(Date.now() + off);
  utimesSync(path, time, time);
}

/** Stops an appender at a moment when it holds the lock; gives what stands in it. */
async function caughtHolding(folder) {
  for (;;) {
    const { child, ended } = startAppender(folder, 'first', 1000);
    while (child.exitCode === null) {
      if (!existsSync(lockIn(folder))) {
        await pause(1);
        continue;
      }
      child.kill('SIGSTOP');
      await pause(2);
      if (existsSync(lockIn(folder))) return { child, ended };
      child.kill('SIGCONT');
    }
  }
}

async function takeOverFromTheDead(part, folder, off) {
  makeFile(folder);
  const { child, ended } = await caughtHolding(folder);
  const lock = readFileSync(lockIn(folder));
  child.kill('SIGKILL');
  const { saved } = await ended;
  if (!existsSync(lockIn(folder))) writeFileSync(lockIn(folder), lock);
  setClock(lockIn(folder), off);
  const second = await startAppender(folder, 'second', 1).ended;
  part.tried++;
  part.met++;
  const notes = notesIn(folder) ?? [];
  if (second.code !== 0) part.wrong.push(`dead, clock ${off}: ${second.complaint}`);
  if (![...saved, ...second.saved].every((note) => notes.includes(note)))
    part.wrong.push(`dead, clock ${off}: an acknowledged reading is lost`);
  if (besides(folder).length > 0) part.wrong.push(`dead, clock ${off}: left ${besides(folder)}`);
  rmSync(folder, { recursive: true });
}

async function waitForTheLiving(part, folder, off) {
  makeFile(folder);
  const first = await caughtHolding(folder);
  setClock(lockIn(folder), off);
  const second = startAppender(folder, 'second', 1);
  await pause(400);
  part.tried++;
  part.met++;
  if (notesIn(folder)?.includes('second-1')) part.wrong.push(`living, clock ${off}: two held the lock`);
  first.child.kill('SIGCONT');
  const { saved } = await second.ended;
  first.child.kill('SIGTERM');
  const all = [...saved, ...(await first.ended).saved];
  const notes = notesIn(folder) ?? [];
  if (!all.every((note) => notes.includes(note)) || saved.length !== 1)
    part.wrong.push(`living, clock ${off}: an acknowledged reading is lost`);
  rmSync(folder, { recursive: true });
}
