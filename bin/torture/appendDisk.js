import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { appending, besides, judgeAppend, makeFile, START } from './appender.js';
import { onDisk, PAGE } from './disk.js';

// Two pages: with the new text beside it and the lock, the smaller disks are full.
const PADDED = START + `# ${'x'.repeat(98)}\n`.repeat(75);

/** Disks on which the new file just does not fit. */
export function appendDisk(part) {
  const folder = join(part.folder, 'disk');
  for (const pages of [3, 4, 5, 6, 7, 8]) {
    onDisk(part, folder, `size=${pages * PAGE}`, () => {
      makeFile(folder, PADDED);
      const [command, ...words] = appending(folder, 'x', 1);
      const ended = spawnSync(command, words, { encoding: 'utf8' });
      part.tried++;
      part.met += ended.status === 0 ? 0 : 1;
      judgeAppend(part, folder, ended, PADDED);
      if (besides(folder).length > 0) part.wrong.push(`left ${besides(folder)}`);
    });
  }
}
