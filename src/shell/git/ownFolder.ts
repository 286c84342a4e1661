import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { done, failed, type Outcome } from '../problem.ts';
import type { Environment } from '../world.ts';

export interface OwnFolder {
  readonly path: string;
  /** As git says it, from the folder that was asked about: `.git`. */
  readonly shown: string;
}

/** Where git keeps what is its own of the repository around a folder, whose hooks it takes from there and nowhere else. */
export function folderOfHooks(folder: string, environment: Environment): Outcome<OwnFolder> {
  const ask = (...words: readonly string[]) =>
    spawnSync('git', words, { cwd: folder, env: environment, encoding: 'utf8' });
  const stated = ask('config', '--get', 'core.hooksPath');
  if (stated.status === 0) {
    const help =
      'put `tenths check --staged` into the pre-commit hook there, and let it pass where that ends with 0 or 1';
    return failed('git', `git takes its hooks from ${stated.stdout.trim()}, as core.hooksPath says`, help);
  }
  const { status, stdout, stderr, error } = ask('rev-parse', '--git-common-dir');
  const shown = (stdout ?? '').replace(/\n$/, '');
  return status === 0
    ? done({ path: resolve(folder, shown), shown })
    : failed('git', `there is no repository: ${error?.message ?? stderr.trim()}`, 'git init, then once more');
}
