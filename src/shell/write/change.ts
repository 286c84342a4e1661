import { done, failed, type Outcome, systemWords } from '../problem.ts';
import { takeLock } from './lock.ts';
import { checkTarget, type Destination, readTarget, type WriteReason, writeFile } from './writer.ts';

export type ChangeReason = WriteReason | 'locked';

/** From the bytes that stand in the file (undefined: no file) to those that shall; may refuse. May be called again. */
export type Edit<Reason extends string> = (before: Uint8Array | undefined) => Outcome<Uint8Array, Reason>;

const ATTEMPTS = 5;

/** For one holder: none takes so long to write, but on a disk that stalls. */
const PATIENCE_MS = 10_000;

/**
 * Changes one file under its lock: reads, edits, and swaps only if the file still holds what was read. An editor that
 * knows nothing of locks may save in between; then the edit is made again on its text. Returns the bytes now in the file.
 */
export function changeFile<Reason extends string>(
  destination: Destination,
  edit: Edit<Reason>,
  patienceMs = PATIENCE_MS,
): Outcome<Uint8Array, Reason | ChangeReason> {
  for (let attempt = 1; ; attempt++) {
    const result = changeOnce(destination, edit, patienceMs);
    if (result.ok || result.problem.reason !== 'changed' || attempt === ATTEMPTS) return result;
  }
}

function changeOnce<Reason extends string>(
  destination: Destination,
  edit: Edit<Reason>,
  patienceMs: number,
): Outcome<Uint8Array, Reason | ChangeReason> {
  const { files, self, path } = destination;
  try {
    // Before the lock: that too must not be made outside the root.
    const target = checkTarget(destination);
    if (!target.ok) return target;
    const lock = takeLock(files, self, target.value.path, patienceMs);
    if (!lock.ok) return lock;
    try {
      return editAndWrite(destination, edit, lock.value.isHeld);
    } finally {
      lock.value.release();
    }
  } catch (error) {
    return failed('disk', `${path} was not written: ${systemWords(error)}`, 'nothing was changed');
  }
}

function editAndWrite<Reason extends string>(
  destination: Destination,
  edit: Edit<Reason>,
  isHeld: () => boolean,
): Outcome<Uint8Array, Reason | ChangeReason> {
  const before = readTarget(destination);
  if (!before.ok) return before;
  const after = edit(before.value);
  if (!after.ok) return after;
  const written = writeFile(destination, after.value, before.value ?? 'absent', isHeld);
  return written.ok ? done(after.value) : written;
}
