import { existsSync, realpathSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { done, failed, type Outcome, systemWords } from '../problem.ts';
import type { Environment } from '../world.ts';
import type { GitPlace, GitReason } from './process.ts';

/**
 * The repository that holds a folder. Found by looking for `.git`, without starting git. A folder that looks like a bare
 * repository but lies in another one's tree is only files: it may come with a pull request and name programs to run.
 */
export function openRepository(folder: string, environment: Environment): Outcome<GitPlace, GitReason> {
  try {
    const start = realpathSync(folder);
    const top = nearest(start, (at) => existsSync(join(at, '.git')));
    if (top !== undefined) return done({ folder: top, bare: false, environment });
    const bare = nearest(start, looksBare);
    if (bare !== undefined) return done({ folder: bare, bare: true, environment });
  } catch (error) {
    return failed('no-repository', `${folder} cannot be opened: ${systemWords(error)}`, 'check the path');
  }
  return failed(
    'no-repository',
    `${folder} is in no git repository`,
    'run git init, or leave out the revision',
  );
}

function nearest(start: string, fits: (folder: string) => boolean): string | undefined {
  if (fits(start)) return start;
  return dirname(start) === start ? undefined : nearest(dirname(start), fits);
}

const looksBare = (folder: string): boolean =>
  existsSync(join(folder, 'HEAD')) &&
  ['objects', 'refs'].every((name) => statSync(join(folder, name), { throwIfNoEntry: false })?.isDirectory());
