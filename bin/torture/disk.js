import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';

export const PAGE = 4096;

const mount = (...words) => spawnSync('mount', words).status === 0;

/** Does something on a disk of its own; says of the part that it was left out where nothing can be mounted. */
export function onDisk(part, folder, options, act) {
  mkdirSync(folder, { recursive: true });
  if (!mount('-t', 'tmpfs', '-o', options, 'tmpfs', folder)) {
    part.leftOut = 'mounting is not permitted here';
    return;
  }
  try {
    act();
  } finally {
    spawnSync('umount', [folder]);
  }
}

export const remount = (folder, options) => mount('-o', `remount,${options}`, folder);

/** In pages. */
export const usedOn = (folder) =>
  Number(spawnSync('du', ['-s', '-B', `${PAGE}`, folder], { encoding: 'utf8' }).stdout.split('\t')[0]);
