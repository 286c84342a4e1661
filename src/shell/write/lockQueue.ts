import { basename, dirname, join } from 'node:path';
import type { ThisProcess } from '../process/thisProcess.ts';
import { removeQuietly, temporaryPath } from './exclusive.ts';
import type { FileLayer } from './fileLayer.ts';

/**
 * Who waits for a lock, first come first served. A waiter is an empty file beside the lock whose name holds its number. The
 * queue only orders: the lock itself keeps two holders apart, whatever stands here.
 */
export interface LockQueue {
  /** The names of all who come first, the next of them first. */
  readonly ahead: () => readonly string[];
  /** Behind all who wait; a second call changes nothing. */
  readonly join: () => void;
  readonly leave: () => void;
}

interface Waiter {
  readonly name: string;
  readonly number: number;
  readonly host: string;
  readonly pid: number;
}

// A waiter with our number that is not among these was another process, before us.
const waitingHere = new Set<string>();

export function lockQueue(files: FileLayer, self: ThisProcess, lockPath: string): LockQueue {
  let own: string | undefined;
  const waiters = (): readonly Waiter[] =>
    files
      .list(dirname(lockPath))
      .flatMap((name) => waiterOf(name, basename(lockPath)) ?? [])
      .filter((each) => !isGone(self, each))
      .sort((a, b) => a.number - b.number || (a.name < b.name ? -1 : 1));
  return {
    ahead: () => {
      const names = waiters().map(({ name }) => name);
      const at = names.indexOf(own ?? '');
      return at < 0 ? names : names.slice(0, at);
    },
    join: () => {
      if (own !== undefined) return;
      const path = temporaryPath(self, `${lockPath}.${(waiters().at(-1)?.number ?? 0) + 1}`);
      files.close(files.createNew(path, 0o666));
      own = basename(path);
      waitingHere.add(own);
    },
    leave: () => {
      if (own === undefined) return;
      waitingHere.delete(own);
      removeQuietly(files, join(dirname(lockPath), own));
    },
  };
}

/** `.LOCK.NUMBER.HOST.PID.RANDOM.tmp`: what a killed waiter leaves is tidied up like any temporary file. */
function waiterOf(name: string, lock: string): Waiter | undefined {
  const start = `.${lock}.`;
  if (!name.startsWith(start)) return undefined;
  const found = /^(\d+)\.([\w-]+)\.(\d+)\.[0-9a-f]{12}\.tmp$/.exec(name.slice(start.length));
  return found === null
    ? undefined
    : { name, number: Number(found[1]), host: found[2] ?? '', pid: Number(found[3]) };
}

const isGone = (self: ThisProcess, { name, host, pid }: Waiter): boolean =>
  host === self.host && (pid === self.pid ? !waitingHere.has(name) : !self.isAlive(pid));
