import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { thisProcess } from '../../../src/shell/process/thisProcess.ts';
import { temporaryPath } from '../../../src/shell/write/exclusive.ts';
import { type FileLayer, nodeFiles } from '../../../src/shell/write/fileLayer.ts';
import { openJournal } from '../../../src/shell/write/journal.ts';
import { failingFiles, failingWith, faultless } from '../failingFiles.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'journal '));
});
afterEach(() => rmSync(folder, { recursive: true }));

const open = (files: FileLayer = nodeFiles) =>
  openJournal({ files, self: thisProcess, root: folder, path: '.a.part' });
const held = (): string => readFileSync(join(folder, '.a.part'), 'utf8');

/** Three lines; those that were acknowledged. */
function takeThree(files: FileLayer): readonly string[] {
  const opened = open(files);
  if (!opened.ok) return [];
  const safe = ['one\n', 'two\n', 'three\n'].filter((line) => opened.value.append(line).ok);
  opened.value.close();
  return safe;
}

describe('a journal', () => {
  it('keeps its lines, is taken up again, and goes when its lines stand elsewhere', () => {
    expect(takeThree(nodeFiles)).toHaveLength(3);
    const again = open();
    expect(again).toMatchObject({ ok: true, value: { text: 'one\ntwo\nthree\n' } });
    if (again.ok) again.value.remove();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('puts a torn line on a line of its own', () => {
    writeFileSync(join(folder, '.a.part'), 'one\ntw');
    const opened = open();
    if (opened.ok) expect(opened.value.append('three\n').ok).toBe(true);
    expect(held()).toBe('one\ntw\nthree\n');
    if (opened.ok) opened.value.close();
  });

  it('belongs to one process at a time', () => {
    const first = open();
    expect(open()).toMatchObject({ ok: false, problem: { reason: 'locked' } });
    if (first.ok) first.value.close();
    expect(open().ok).toBe(true);
  });

  it('leaves nothing of a process that was killed while it waited for its turn', () => {
    const gone = 2_000_001;
    const left = temporaryPath({ ...thisProcess, pid: gone }, join(folder, '.a.part.lock'));
    writeFileSync(left, '');
    const opened = openJournal({
      files: nodeFiles,
      self: { ...thisProcess, isAlive: (pid) => pid !== gone },
      root: folder,
      path: '.a.part',
    });
    if (opened.ok) opened.value.remove();
    expect(readdirSync(folder)).toEqual([]);
  });

  it('is not written through a link', () => {
    writeFileSync(join(folder, 'elsewhere'), 'mine\n');
    symlinkSync(join(folder, 'elsewhere'), join(folder, '.a.part'));
    expect(open()).toMatchObject({ ok: false, problem: { reason: 'link' } });
    expect(readFileSync(join(folder, 'elsewhere'), 'utf8')).toBe('mine\n');
  });

  it.each(['EINVAL', 'EPERM', 'EISDIR', 'ENOTSUP'])('is begun where folders are not synced: %s', (code) => {
    expect(takeThree({ ...nodeFiles, openFolder: failingWith(code) })).toHaveLength(3);
  });

  it('is not begun where the disk fails to sync the folder', () => {
    expect(open({ ...nodeFiles, openFolder: failingWith('EIO') })).toMatchObject({
      problem: { reason: 'disk', message: expect.stringContaining('.a.part cannot be written') },
    });
  });

  it.each(['ENOSPC', 'EIO', 'EMFILE'])(
    'never calls a line safe that is not there, whichever call fails with %s',
    (code) => {
      const { files, calls } = failingFiles(faultless);
      takeThree(files);
      const count = calls().length;
      expect(count).toBeGreaterThan(15);
      for (const keeps of [false, true]) {
        for (let at = 1; at <= count; at++) {
          rmSync(join(folder, '.a.part'), { force: true });
          rmSync(join(folder, '.a.part.lock'), { force: true });
          const safe = takeThree(failingFiles({ at, code, keeps }).files);
          const found = readdirSync(folder).includes('.a.part') ? held() : '';
          expect(found.startsWith(safe.join('')), `call ${at}, ${keeps}: ${safe} of ${found}`).toBe(true);
        }
      }
    },
  );
});
