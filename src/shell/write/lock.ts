import { basename } from 'node:path';
import { readUpTo } from '../discover/safeRead.ts';
import { done, failed, type Outcome, systemCode } from '../problem.ts';
import type { ThisProcess } from '../process/thisProcess.ts';
import { publishNew, quietly, removeQuietly, stage, temporaryPath } from './exclusive.ts';
import type { FileLayer } from './fileLayer.ts';
import { type LockQueue, lockQueue } from './lockQueue.ts';

export interface Lock {
  /** False once somebody has removed or replaced the lock. */
  readonly isHeld: () => boolean;
  readonly release: () => void;
}

interface Holder {
  readonly pid: number;
  readonly host: string;
  readonly boot: string;
  readonly nonce: string;
}

// A lock with our own number that is not among these is not ours: we failed to remove it, or its holder had our number.
const heldHere = new Set<string>();

/**
 * Takes `<path>.lock`, waiting in turn. Patience is for one holder: it begins anew whenever the lock changes hands or the
 * queue moves. A lock is taken over only when its holder ran on this machine and is gone; a lock's age says nothing, since
 * clocks are set. Throws the system's error when the disk fails.
 */
export function takeLock(
  files: FileLayer,
  self: ThisProcess,
  path: string,
  patienceMs: number,
): Outcome<Lock, 'locked'> {
  const lockPath = `${path}.lock`;
  const queue = lockQueue(files, self, lockPath);
  try {
    return waitAndTake({ files, self, lockPath, queue }, patienceMs);
  } finally {
    queue.leave();
  }
}

interface Waiting {
  readonly files: FileLayer;
  readonly self: ThisProcess;
  readonly lockPath: string;
  readonly queue: LockQueue;
}

function waitAndTake(waiting: Waiting, patienceMs: number): Outcome<Lock, 'locked'> {
  const { files, self, lockPath, queue } = waiting;
  const mine: Holder = { pid: self.pid, host: self.host, boot: self.boot, nonce: self.nonce() };
  const unmoved = sinceLastMove(self);
  for (;;) {
    const holder = readHolder(files, lockPath);
    const ahead = queue.ahead();
    const elapsedMs = unmoved(`${typeof holder === 'object' ? holder.nonce : holder} ${ahead[0]}`);
    if (holder === 'none' && (ahead.length === 0 || elapsedMs >= IDLE_MS)) {
      // Staged and synced like any other file: after a power cut an empty lock would tell nothing about its holder.
      const temporary = stage(files, self, lockPath, encode(mine));
      if (publishNew(files, temporary, lockPath)) return done(held(files, lockPath, mine));
    } else if (typeof holder === 'object' && isGone(self, holder)) {
      takeOver(files, self, lockPath, holder);
      continue;
    }
    if (elapsedMs >= patienceMs) return locked(lockPath, holder);
    queue.join();
    // The next looks often. Not always the same time, or two that collide would collide again.
    self.sleepMs((1 + ahead.length) * (2 + Math.random() * 3));
  }
}

/** A lock that nobody has taken for so long is not wanted by whoever is next: stopped, or a name left by another machine. */
const IDLE_MS = 150;

/** How long the holder and the next in the queue have been the same. */
function sinceLastMove(self: ThisProcess): (state: string) => number {
  let known: string | undefined;
  let since = self.elapsedMs();
  return (state) => {
    const now = self.elapsedMs();
    if (known !== undefined && state !== known) since = now;
    known = state;
    return now - since;
  };
}

function held(files: FileLayer, lockPath: string, mine: Holder): Lock {
  heldHere.add(mine.nonce);
  const isHeld = () => {
    const holder = readHolder(files, lockPath);
    return typeof holder === 'object' && holder.nonce === mine.nonce;
  };
  // A lock that cannot be removed must not turn a write that succeeded into a failure.
  const release = () => {
    heldHere.delete(mine.nonce);
    quietly(() => {
      if (isHeld()) files.remove(lockPath);
    });
  };
  return { isHeld, release };
}

function isGone(self: ThisProcess, holder: Holder): boolean {
  if (holder.host !== self.host) return false;
  if (holder.boot !== self.boot) return true;
  return holder.pid === self.pid ? !heldHere.has(holder.nonce) : !self.isAlive(holder.pid);
}

/**
 * Several may find the same dead holder, and the first of them may hold a new lock already when the second gets here.
 * So the lock is moved aside, looked at, and put back if it is not the dead one's.
 */
function takeOver(files: FileLayer, self: ThisProcess, lockPath: string, dead: Holder): void {
  const aside = temporaryPath(self, lockPath);
  try {
    files.rename(lockPath, aside);
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return;
    throw error;
  }
  const moved = readHolder(files, aside);
  if (typeof moved === 'object' && moved.nonce !== dead.nonce) publishNew(files, aside, lockPath);
  else removeQuietly(files, aside);
}

function readHolder(files: FileLayer, lockPath: string): Holder | 'none' | 'unknown' {
  try {
    const handle = files.openToRead(lockPath);
    try {
      return decode(readUpTo(files, handle, 4096));
    } finally {
      files.close(handle);
    }
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return 'none';
    if (systemCode(error) === 'ELOOP') return 'unknown';
    throw error;
  }
}

const encode = (holder: Holder): Uint8Array => Buffer.from(`${JSON.stringify(holder)}\n`);

function decode(bytes: Uint8Array): Holder | 'unknown' {
  try {
    const found: unknown = JSON.parse(Buffer.from(bytes).toString('utf8'));
    return isHolder(found) ? found : 'unknown';
  } catch {
    return 'unknown';
  }
}

function isHolder(found: unknown): found is Holder {
  if (typeof found !== 'object' || found === null) return false;
  const { pid, host, boot, nonce } = found as Record<string, unknown>;
  // kill() reads 0 and negative numbers as whole groups of processes.
  if (!Number.isSafeInteger(pid) || Number(pid) < 1) return false;
  return [host, boot, nonce].every((text) => typeof text === 'string');
}

function locked(lockPath: string, holder: Holder | 'none' | 'unknown'): Outcome<never, 'locked'> {
  const who = typeof holder === 'string' ? 'another program' : `process ${holder.pid} on ${holder.host}`;
  return failed(
    'locked',
    `${who} is writing ${basename(lockPath, '.lock')}`,
    `wait for it to finish; if it is no longer running, delete ${lockPath}`,
  );
}
