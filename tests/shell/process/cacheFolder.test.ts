import {
  chmodSync,
  existsSync,
  lchownSync,
  mkdirSync,
  mkdtempSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { cacheFolder } from '../../../src/shell/process/cacheFolder.ts';

let home = '';

beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'tenths home '));
});

afterEach(() => rmSync(home, { recursive: true }));

/** A folder of another user: root gives one away, and others have none but those of root. */
function othersFolder(): string {
  if (process.getuid?.() !== 0) return '/usr';
  const folder = join(home, 'theirs');
  mkdirSync(folder);
  lchownSync(folder, 12345, 12345);
  return folder;
}

describe('the folder of what can be made anew', () => {
  it('lies in the home, and is open to its user alone', () => {
    expect(cacheFolder({ HOME: home })).toBe(join(home, '.cache/tenths'));
    expect(statSync(join(home, '.cache/tenths')).mode & 0o777).toBe(0o700);
    expect(cacheFolder({ HOME: home })).toBe(join(home, '.cache/tenths'));
  });

  it('lies where the user wants such folders', () => {
    expect(cacheFolder({ HOME: '/nonexistent', XDG_CACHE_HOME: home })).toBe(join(home, 'tenths'));
  });

  it.each([
    {},
    { HOME: '' },
    { HOME: 'relative' },
    { HOME: '/nonexistent' },
    { XDG_CACHE_HOME: '/nonexistent' },
  ])('is none, and none is made, where %j', (environment) => {
    expect(cacheFolder(environment)).toBeUndefined();
    expect(existsSync('/nonexistent')).toBe(false);
    expect(existsSync('relative')).toBe(false);
  });

  it('is none where a file has its name', () => {
    writeFileSync(join(home, 'tenths'), '');
    expect(cacheFolder({ XDG_CACHE_HOME: home })).toBeUndefined();
  });

  it('is none in a folder of another user, and nothing is made there', () => {
    const theirs = othersFolder();
    expect(cacheFolder({ HOME: theirs })).toBeUndefined();
    expect(cacheFolder({ XDG_CACHE_HOME: theirs })).toBeUndefined();
    expect(existsSync(join(theirs, '.cache'))).toBe(false);
    expect(existsSync(join(theirs, 'tenths'))).toBe(false);
  });

  it('is none by way of a link to a folder of another user', () => {
    symlinkSync(othersFolder(), join(home, '.cache'));
    expect(cacheFolder({ HOME: home })).toBeUndefined();
    expect(existsSync(join(home, '.cache/tenths'))).toBe(false);
  });

  it.each([0o770, 0o707])('is none where others may write in it: mode %o', (mode) => {
    mkdirSync(join(home, 'tenths'));
    chmodSync(join(home, 'tenths'), mode);
    expect(cacheFolder({ XDG_CACHE_HOME: home })).toBeUndefined();
  });
});
