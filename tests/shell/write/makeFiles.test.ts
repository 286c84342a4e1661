import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { madeFile } from '../../../src/bench/scaffold/madeFile.ts';
import { makeFiles } from '../../../src/shell/write/makeFiles.ts';

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'made '));
});
afterEach(() => rmSync(root, { recursive: true }));

const make = (...files: Parameters<typeof madeFile>[]) =>
  makeFiles(
    root,
    files.map((each) => madeFile(...each)),
  ).map(({ path, what, problem }) => [path, what, problem?.reason]);
const read = (path: string): string => readFileSync(join(root, path), 'utf8');

describe('files that a plan makes', () => {
  it('get the folders that they lie in, and may be run where that is asked for', () => {
    const made = make(
      ['engines/pump/engine.yaml', 'kind: engine\n'],
      ['hook', 'exit 0\n', { executable: true }],
    );
    expect(made).toEqual([
      ['engines/pump/engine.yaml', 'made', undefined],
      ['hook', 'made', undefined],
    ]);
    expect(read('engines/pump/engine.yaml')).toBe('kind: engine\n');
    expect(statSync(join(root, 'hook')).mode & 0o777).toBe(0o755);
    expect(statSync(join(root, 'engines/pump/engine.yaml')).mode & 0o111).toBe(0);
  });

  it('are kept where they stand, with what they hold and how they may be used', () => {
    writeFileSync(join(root, 'hook'), 'mine\n', { mode: 0o644 });
    chmodSync(join(root, 'hook'), 0o644);
    expect(make(['hook', 'exit 0\n', { executable: true }])).toEqual([['hook', 'kept', undefined]]);
    expect(read('hook')).toBe('mine\n');
    expect(statSync(join(root, 'hook')).mode & 0o777).toBe(0o644);
  });

  it('get the lines that they lack where that is asked for, once', () => {
    writeFileSync(join(root, 'ignore'), 'mine\n');
    const call = () => make(['ignore', '# ours\n*.part\nmine\n', { where: 'add lines' }]);
    expect(call()).toEqual([['ignore', 'added to', undefined]]);
    expect(read('ignore')).toBe('mine\n*.part\n');
    expect(call()).toEqual([['ignore', 'kept', undefined]]);
    expect(read('ignore')).toBe('mine\n*.part\n');
  });

  it('that cannot be written again, or are folders, say why as well', () => {
    // It may stand there, but its lock, whose name is longer, may not.
    const long = 'x'.repeat(250);
    writeFileSync(join(root, long), 'mine\n');
    mkdirSync(join(root, 'folder'));
    expect(make([long, 'ours\n', { where: 'add lines' }], ['folder', 'a\n'])).toEqual([
      [long, 'failed', 'disk'],
      ['folder', 'failed', 'not-a-file'],
    ]);
    expect(read(long)).toBe('mine\n');
  });

  it('that cannot be made say why, and the others are made', () => {
    writeFileSync(join(root, 'file'), '');
    symlinkSync(tmpdir(), join(root, 'away'));
    expect(make(['file/a.yaml', 'a\n'], ['away/b.yaml', 'b\n'], ['away', 'c\n'], ['d.yaml', 'd\n'])).toEqual([
      ['file/a.yaml', 'failed', 'not-a-folder'],
      ['away/b.yaml', 'failed', 'link'],
      ['away', 'failed', 'link'],
      ['d.yaml', 'made', undefined],
    ]);
  });
});
