import { mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { makeFolder, makeRoot } from '../../../src/shell/write/folders.ts';

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'folders '));
  writeFileSync(join(root, 'file'), '');
  mkdirSync(join(root, 'there'));
  symlinkSync('there', join(root, 'link'));
});
afterEach(() => rmSync(root, { recursive: true }));

const made = { ok: true, value: undefined };
const refused = (reason: string, message: string, help: string) => ({
  ok: false,
  problem: { reason, message, help },
});
const LONG = 'x'.repeat(300);

it.each(['', '.', 'there', 'there/a/b', 'new', 'new/one'])(
  'a folder %j below the root is made where it is not there',
  (folder) => {
    expect(makeFolder(root, folder)).toEqual(made);
    expect(() => readdirSync(join(root, folder))).not.toThrow();
    expect(makeFolder(root, folder)).toEqual(made);
  },
);

it.each([
  ['link', refused('link', 'link is a link', 'put the folder itself there; links are not written through')],
  ['link/a', refused('link', 'link is a link', 'put the folder itself there; links are not written through')],
  [
    'file/a',
    refused('not-a-folder', 'file is a file, and a folder is wanted there', 'move it out of the way'),
  ],
  [
    `there/${LONG}`,
    refused(
      'disk',
      `the folder there/${LONG} was not made: the name is too long (ENAMETOOLONG)`,
      'nothing was changed',
    ),
  ],
  ['../a', refused('outside', 'the path `../a` leads out of the shop', 'name a file inside the shop folder')],
])('%s is refused, and nothing is made', (folder, wanted) => {
  expect(makeFolder(root, folder)).toEqual(wanted);
  expect(readdirSync(root).sort()).toEqual(['file', 'link', 'there']);
  expect(readdirSync(join(root, 'there'))).toEqual([]);
});

it('a root is made with those above it, and it is told whether it was there', () => {
  expect(makeRoot(join(root, 'a/b'))).toEqual({ ok: true, value: true });
  expect(makeRoot(join(root, 'a/b'))).toEqual({ ok: true, value: false });
  const below = join(root, 'file/a');
  expect(makeRoot(below)).toEqual(
    refused(
      'disk',
      `the folder ${below} was not made: a part of the path is not a folder (ENOTDIR)`,
      'nothing was changed',
    ),
  );
});
