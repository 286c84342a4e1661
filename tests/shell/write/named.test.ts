import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { makeExportFolder, writeExported } from '../../../src/shell/write/exported.ts';
import { folderAndName, pathFrom, writeOwnFile } from '../../../src/shell/write/ownFile.ts';
import { replaceFile } from '../../../src/shell/write/replaceFile.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'named '));
  mkdirSync(join(folder, 'inner'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const at = (name: string): string => join(folder, name);
const bytes = (text: string): Uint8Array => Buffer.from(text);
const read = (name: string): string => readFileSync(at(name), 'utf8');
const refused = (reason: string, message: string, help: string) => ({
  ok: false,
  problem: { reason, message, help },
});

/** It may stand in a folder, but the longer temporary name beside it may not. */
const LONG = 'x'.repeat(250);
const tooLong = refused(
  'disk',
  `${LONG} was not written: the name is too long (ENAMETOOLONG)`,
  'nothing was changed',
);

describe('a file that is made from documents', () => {
  const write = (named: string, text: string) =>
    writeExported({ named, workingDirectory: folder }, bytes(text));

  it('is written where its name leads from the working directory, and left alone where it holds the same', () => {
    expect(write('inner/a.csv', 'one')).toEqual({ ok: true, value: 'written' });
    const before = statSync(at('inner/a.csv')).ino;
    expect(write('inner/a.csv', 'one')).toEqual({ ok: true, value: 'unchanged' });
    expect(statSync(at('inner/a.csv')).ino).toBe(before);
    expect(write(at('inner/a.csv'), 'two')).toEqual({ ok: true, value: 'written' });
    expect(read('inner/a.csv')).toBe('two');
    expect(write('inner/empty', '')).toEqual({ ok: true, value: 'written' });
  });

  it('is refused where it cannot be written, with the reason', () => {
    symlinkSync('inner', at('link'));
    expect(write('link', 'one')).toMatchObject({ ok: false, problem: { reason: 'link' } });
    expect(write(LONG, 'one')).toEqual(tooLong);
  });

  it('may lie in a folder beside it, which is made with the one around it', () => {
    const make = (named: string, inner: string) =>
      makeExportFolder({ named, workingDirectory: folder }, inner);
    expect(make('inner/out', 'engines')).toEqual({ ok: true, value: undefined });
    expect(readdirSync(at('inner/out'))).toEqual(['engines']);
    writeFileSync(at('file'), '');
    expect(make('file', 'engines')).toMatchObject({ problem: { reason: 'not-a-folder' } });
  });
});

describe('a file that the program makes whole each time', () => {
  const write = (name: string, text: string) =>
    writeOwnFile(at(name), bytes(text), (before) => Buffer.from(before).toString().startsWith('sheet'));

  it('is written new, and over one that begins as such a file does', () => {
    expect(write('a.html', 'sheet 1')).toEqual({ ok: true, value: undefined });
    expect(write('a.html', 'sheet 2')).toEqual({ ok: true, value: undefined });
    expect(read('a.html')).toBe('sheet 2');
  });

  it('is refused over any other, without a folder, through a link and where it cannot be written', () => {
    writeFileSync(at('mine'), 'mine');
    symlinkSync('mine', at('link'));
    expect(write('mine', 'sheet')).toEqual(
      refused(
        'exists',
        `${at('mine')} is there already and is no sheet`,
        'choose another name, or remove it',
      ),
    );
    for (const name of ['none/a', 'mine/a'])
      expect(write(name, 'sheet')).toEqual(
        refused('missing', `there is no folder ${at(name.slice(0, 4))}`, 'make it first'),
      );
    expect(write('link', 'sheet')).toMatchObject({ ok: false, problem: { reason: 'link' } });
    expect(write(LONG, 'sheet')).toEqual(tooLong);
    expect(read('mine')).toBe('mine');
  });
});

it('a file that a call has named is replaced whatever it holds', () => {
  for (const text of ['one', 'two']) {
    expect(replaceFile(at('log'), text)).toEqual({ ok: true, value: undefined });
    expect(read('log')).toBe(text);
  }
  expect(replaceFile(at(LONG), 'one')).toEqual(tooLong);
});

it('a path of a call stands from the folder it was made in', () => {
  expect([pathFrom('/shop', 'a/b.html'), pathFrom('/shop', '/tmp/b.html')]).toEqual([
    '/shop/a/b.html',
    '/tmp/b.html',
  ]);
  expect(folderAndName('/shop/a/b.html')).toEqual({ folder: '/shop/a', name: 'b.html' });
});
