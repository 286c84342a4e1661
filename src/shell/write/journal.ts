import { join } from 'node:path';
import { readUpTo } from '../discover/safeRead.ts';
import { done, failed, type Outcome, systemCode, systemWords } from '../problem.ts';
import { closing, quietly, removeLeftovers, removeQuietly } from './exclusive.ts';
import { type FileLayer, nodeFiles } from './fileLayer.ts';
import { takeLock } from './lock.ts';
import { checkTarget, type Destination, type WriteReason } from './writer.ts';

/** A file to which lines are added one at a time, each on the disk before the call returns. */
export interface Journal {
  /** What stood in it when it was opened; empty for a new one. */
  readonly text: string;
  /** Only `ok` means that the line is safe. After a failure nothing more is taken. */
  readonly append: (line: string) => Outcome<void, 'disk'>;
  /** Gives it up; it stays, to be taken up again. */
  readonly close: () => void;
  /** Its lines stand somewhere else now. */
  readonly remove: () => void;
}

export type JournalReason = WriteReason | 'locked';

/** Opens a journal for this process alone; makes it where there is none. */
export function openJournal(destination: Destination): Outcome<Journal, JournalReason> {
  const { files, self, path: name } = destination;
  try {
    const target = checkTarget(destination);
    if (!target.ok) return target;
    const { path, mode } = target.value;
    const lock = takeLock(files, self, path, PATIENCE_MS);
    if (!lock.ok) return lock;
    removeLeftovers(files, self, path);
    try {
      return done(opened(files, path, mode === undefined, lock.value.release));
    } catch (error) {
      lock.value.release();
      throw error;
    }
  } catch (error) {
    return failed('disk', `${name} cannot be written: ${systemWords(error)}`, 'nothing was changed');
  }
}

/** Somebody at the keyboard does not wait longer to be told that another entry is open. */
const PATIENCE_MS = 200;

function opened(files: FileLayer, path: string, isNew: boolean, release: () => void): Journal {
  const handle = isNew ? files.createNew(path, 0o666) : files.openToAppend(path);
  const text = begun(files, handle, path, isNew);
  // What a power cut tore stays a line of its own, so that the next one is whole.
  let before = text === '' || text.endsWith('\n') ? '' : '\n';
  let broken = false;
  const close = (): void => {
    quietly(() => files.close(handle));
    release();
  };
  return {
    text,
    append: (line) => {
      if (broken) return failed('disk', 'the disk failed before', 'see above');
      try {
        writeLine(files, handle, before + line);
        before = '';
        return done(undefined);
      } catch (error) {
        broken = true;
        return failed(
          'disk',
          `not saved: ${systemWords(error)}`,
          'mend that, then go on: what was taken before is safe',
        );
      }
    },
    close,
    remove: () => {
      removeQuietly(files, path);
      close();
    },
  };
}

/** What stands in it; it is closed where that cannot be told. */
function begun(files: FileLayer, handle: number, path: string, isNew: boolean): string {
  try {
    if (isNew) syncFolderOf(files, path);
    return Buffer.from(readUpTo(files, handle, files.inspectOpen(handle).size)).toString('utf8');
  } catch (error) {
    quietly(() => files.close(handle));
    throw error;
  }
}

function writeLine(files: FileLayer, handle: number, line: string): void {
  const bytes = Buffer.from(line);
  for (let offset = 0; offset < bytes.length; ) {
    const count = files.write(handle, bytes, offset);
    if (count <= 0) throw Object.assign(new Error('the write made no progress'), { code: 'EIO' });
    offset += count;
  }
  files.sync(handle);
}

function syncFolderOf(files: FileLayer, path: string): void {
  try {
    const folder = files.openFolder(path.replace(/[\\/][^\\/]*$/, ''));
    closing(files, folder, () => files.sync(folder));
  } catch (error) {
    if (!['EINVAL', 'EPERM', 'EISDIR', 'ENOTSUP'].includes(systemCode(error))) throw error;
  }
}

/** Names of the journals in a folder of the shop that were not removed: an entry was cut off, or goes on elsewhere. */
export function unfinishedEntries(root: string, folder: string): readonly string[] {
  try {
    return nodeFiles.list(join(root, folder)).flatMap((name) => /^\.(.+)\.part$/.exec(name)?.[1] ?? []);
  } catch {
    return [];
  }
}
