import { readFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { systemCode } from '../problem.ts';
import { elapsedMs } from './clock.ts';
import { crypto } from './lateModules.ts';

/** Who we are among the processes that may hold a lock, and how time passes for us. */
export interface ThisProcess {
  readonly pid: number;
  /** Letters, digits, `_` and `-` only, so that it can stand in a file name. */
  readonly host: string;
  /** Differs after each start of the machine; empty where the system does not tell. */
  readonly boot: string;
  readonly isAlive: (pid: number) => boolean;
  readonly nonce: () => string;
  /** Milliseconds that only grow: a clock that is set cannot shorten or lengthen a wait. */
  readonly elapsedMs: () => number;
  readonly sleepMs: (duration: number) => void;
}

export const thisProcess: ThisProcess = {
  pid: process.pid,
  host: hostname().replace(/[^\w-]/g, '-') || 'unnamed',
  // Asked for where a lock is taken: most calls write nothing.
  get boot() {
    return bootId();
  },
  isAlive,
  nonce: () => crypto().randomBytes(16).toString('hex'),
  elapsedMs,
  sleepMs: (duration) => {
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, duration);
  },
};

// Signal 0 only asks. Not permitted means that it lives, under another user.
function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return systemCode(error) !== 'ESRCH';
  }
}

// After a power cut the same number soon belongs to some other process: without this the old lock would look held.
function bootId(): string {
  try {
    return readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
  } catch {
    return '';
  }
}
