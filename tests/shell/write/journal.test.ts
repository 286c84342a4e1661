import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { thisProcess } from '../../../src/shell/process/thisProcess.ts';
import { temporaryPath } from '../../../src/shell/write/exclusive.ts';
import { type FileLayer, nodeFiles } from '../../../src/shell/write/fileLayer.ts';
import { openJournal, unfinishedEntries } from '../../../src/shell/write/journal.ts';
import { failingFiles, failingWith, faultless } from '../failingFiles.ts';
import { countedFiles } from '../openHandles.ts';

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

  it('says why a line is not safe, and takes none after it', () => {
    let full = false;
    const files: FileLayer = {
      ...nodeFiles,
      // A few bytes at a time, as a disk that fills does.
      write: (handle, bytes, offset) =>
        full ? 0 : nodeFiles.write(handle, bytes.subarray(0, offset + 2), offset),
    };
    const opened = open(files);
    if (!opened.ok) throw new Error(opened.problem.message);
    const { append, close } = opened.value;
    expect(append('one\n')).toEqual({ ok: true, value: undefined });
    full = true;
    const problem = (message: string, help: string) => ({
      ok: false,
      problem: { reason: 'disk', message, help },
    });
    const how = 'mend that, then go on: what was taken before is safe';
    expect(append('two\n')).toEqual(problem('not saved: the disk reported an error (EIO)', how));
    full = false;
    expect(append('three\n')).toEqual(problem('the disk failed before', 'see above'));
    close();
    expect(held()).toBe('one\n');
  });

  it('leaves no handle open, whether it is given up, removed or was never begun', () => {
    const { files, handles } = countedFiles();
    takeThree(files);
    const again = open(files);
    if (again.ok) again.value.remove();
    open({ ...files, inspectOpen: failingWith('EIO'), openFolder: failingWith('EINVAL') });
    expect(readdirSync(folder)).toEqual(['.a.part']);
    expect(handles().open).toBe(0);
  });

  it('is waited for a fifth of a second', () => {
    const first = open();
    let now = 0;
    const sleepMs = () => {
      now += 1;
    };
    const self = { ...thisProcess, pid: 2_000_001, isAlive: () => true, elapsedMs: () => now, sleepMs };
    expect(openJournal({ files: nodeFiles, self, root: folder, path: '.a.part' })).toMatchObject({
      problem: { reason: 'locked' },
    });
    expect(now).toBe(200);
    if (first.ok) first.value.close();
  });

  it('that was not removed is named as unfinished', () => {
    for (const name of ['.b.part', '.teardown.yaml.part', 'c.part', '.d.part.lock', '.part', '.e.partly'])
      writeFileSync(join(folder, name), '');
    expect([...unfinishedEntries(tmpdir(), basename(folder))].sort()).toEqual(['b', 'teardown.yaml']);
    expect(unfinishedEntries(folder, 'none')).toEqual([]);
  });

  it('is not begun where the disk fails to sync the folder', () => {
    expect(open({ ...nodeFiles, openFolder: failingWith('EIO') })).toMatchObject({
      problem: {
        reason: 'disk',
        message: '.a.part cannot be written: the disk reported an error (EIO)',
        help: 'nothing was changed',
      },
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
