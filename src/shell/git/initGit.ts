import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { done, failed, type Outcome } from '../problem.ts';
import type { Environment } from '../world.ts';

/** Makes a folder a git repository; one inside a larger one stays part of it, and nothing is done. */
export function initGit(folder: string, environment: Environment): Outcome<'made' | 'there'> {
  if (isInRepository(folder)) return done('there');
  const { status, error, stderr } = spawnSync('git', ['init', '--quiet'], {
    cwd: folder,
    env: environment,
    encoding: 'utf8',
  });
  if (status === 0) return done('made');
  return failed('git', `git init did not run: ${error?.message ?? stderr.trim()}`, 'run it by hand');
}

const isInRepository = (folder: string): boolean =>
  existsSync(join(folder, '.git')) || (dirname(folder) !== folder && isInRepository(dirname(folder)));
