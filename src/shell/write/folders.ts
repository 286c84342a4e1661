import { lstatSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { checkPathBelow, type PathReason } from '../discover/pathBelow.ts';
import { done, failed, type Outcome, systemCode, systemWords } from '../problem.ts';

/** Makes a folder below the root, and those it lies in; passes through no link. `folder` is relative, with `/`. */
export function makeFolder(
  root: string,
  folder: string,
): Outcome<void, PathReason | 'link' | 'not-a-folder' | 'disk'> {
  if (folder === '' || folder === '.') return done(undefined);
  const allowed = checkPathBelow(folder);
  if (!allowed.ok) return allowed;
  const parts = folder.split('/');
  for (const [index] of parts.entries()) {
    const made = makeOne(root, parts.slice(0, index + 1).join('/'));
    if (!made.ok) return made;
  }
  return done(undefined);
}

/** Makes the folder that a call names, and those above it; whether it was not there. */
export function makeRoot(absolute: string): Outcome<boolean, 'disk'> {
  try {
    return done(mkdirSync(absolute, { recursive: true }) !== undefined);
  } catch (error) {
    return notMade(absolute, error);
  }
}

function makeOne(root: string, folder: string): Outcome<void, 'link' | 'not-a-folder' | 'disk'> {
  const path = join(root, folder);
  try {
    mkdirSync(path);
    return done(undefined);
  } catch (error) {
    if (systemCode(error) !== 'EEXIST') return notMade(folder, error);
  }
  try {
    return whatIsThere(path, folder);
  } catch (error) {
    return notMade(folder, error);
  }
}

const notMade = (folder: string, error: unknown) =>
  failed('disk', `the folder ${folder} was not made: ${systemWords(error)}`, 'nothing was changed');

/** Throws where the system cannot say. */
function whatIsThere(path: string, folder: string): Outcome<void, 'link' | 'not-a-folder'> {
  const found = lstatSync(path);
  if (found.isDirectory()) return done(undefined);
  return found.isSymbolicLink()
    ? failed('link', `${folder} is a link`, 'put the folder itself there; links are not written through')
    : failed('not-a-folder', `${folder} is a file, and a folder is wanted there`, 'move it out of the way');
}
