import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const MEMORY = '/dev/shm';

/** What all tests that run at once may need, many times over. */
const ENOUGH_BYTES = 1024 ** 3;

/** Thousands of small shops are made and taken away: in memory where it has room and runs programs, and on a disk in the long run. */
export const quickestRoom = (isLong: boolean): string =>
  !isLong && hasRoom(MEMORY) && runsPrograms(MEMORY) ? MEMORY : tmpdir();

function hasRoom(folder: string): boolean {
  try {
    const { bavail, bsize } = statfsSync(folder);
    return bavail * bsize >= ENOUGH_BYTES;
  } catch {
    return false;
  }
}

/** Many a container forbids it there. */
function runsPrograms(folder: string): boolean {
  try {
    const own = mkdtempSync(join(folder, 'tenths-runs-'));
    const program = join(own, 'program');
    writeFileSync(program, '#!/bin/sh\nexit 0\n', { mode: 0o755 });
    const { status } = spawnSync(program);
    rmSync(own, { recursive: true });
    return status === 0;
  } catch {
    return false;
  }
}
