import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkPathBelow, pathFrom } from '../../../src/shell/discover/pathBelow.ts';
import { readBelow } from '../../../src/shell/discover/safeRead.ts';
import { nodeFiles } from '../../../src/shell/write/fileLayer.ts';

const outside = mkdtempSync(join(tmpdir(), 'read '));
const root = join(outside, 'shop é');
const server = createServer();

beforeAll(async () => {
  mkdirSync(join(root, 'engines/pump'), { recursive: true });
  mkdirSync(join(root, '.git'));
  writeFileSync(join(outside, 'secret.yaml'), 'secret');
  writeFileSync(join(root, 'engines/pump/engine.yaml'), 'kind: engine\n');
  writeFileSync(join(root, '.git/config'), 'secret');
  writeFileSync(join(root, 'exact.yaml'), 'x'.repeat(100));
  writeFileSync(join(root, 'empty.yaml'), '');
  writeFileSync(join(root, 'sparse.yaml'), '');
  truncateSync(join(root, 'sparse.yaml'), 20 * 2 ** 30);
  symlinkSync('../secret.yaml', join(root, 'link.yaml'));
  symlinkSync('/proc/self/environ', join(root, 'environ.yaml'));
  symlinkSync('engines/pump/engine.yaml', join(root, 'inside-link.yaml'));
  symlinkSync('circle.yaml', join(root, 'circle.yaml'));
  symlinkSync('/dev/zero', join(root, 'zero.yaml'));
  symlinkSync('..', join(root, 'up'));
  execFileSync('mkfifo', [join(root, 'pipe.yaml')]);
  await new Promise<void>((ready) => server.listen(join(root, 'socket.yaml'), ready));
});

afterAll(() => {
  server.close();
  rmSync(outside, { recursive: true });
});

const reasonFor = (path: string): string => {
  const result = readBelow(root, path, 100);
  return result.ok ? `read ${result.value.length}` : result.problem.reason;
};

describe('a file of the shop', () => {
  it.each([
    ['a plain document', 'engines/pump/engine.yaml', 'read 13'],
    ['a file of exactly the size allowed', 'exact.yaml', 'read 100'],
    ['an empty file', 'empty.yaml', 'read 0'],
    ['a file outside by two dots', '../secret.yaml', 'outside'],
    ['two dots in the middle', 'engines/../../secret.yaml', 'outside'],
    ['an absolute path', '/etc/passwd', 'path'],
    ['a drive letter', 'C:/windows/win.ini', 'path'],
    ['a backslash', '..\\secret.yaml', 'path'],
    ['a NUL', 'engine.yaml\0.txt', 'path'],
    ['a line break', 'engine\n.yaml', 'path'],
    ['an empty path', '', 'path'],
    ['a single dot', '.', 'path'],
    ['a doubled slash', 'engines//pump/engine.yaml', 'path'],
    ['the git folder', '.git/config', 'path'],
    ['the git folder in capitals', '.GIT/config', 'path'],
    ['the git folder with an invisible letter', '.g\u200cit/config', 'path'],
    ['a home folder, which is a name like any other', '~/.ssh/id', 'missing'],
    ['a file that is not there', 'engines/none.yaml', 'missing'],
    ['a file below a file', 'exact.yaml/x.yaml', 'missing'],
    ['a link out of the shop', 'link.yaml', 'link'],
    ['a link to the environment', 'environ.yaml', 'link'],
    ['a link that stays inside', 'inside-link.yaml', 'link'],
    ['a link to itself', 'circle.yaml', 'link'],
    ['a folder that is a link', 'up/secret.yaml', 'link'],
    ['a link to an endless device', 'zero.yaml', 'link'],
    ['a pipe nobody writes to', 'pipe.yaml', 'not-a-file'],
    ['a socket', 'socket.yaml', 'not-a-file'],
    ['a folder', 'engines', 'not-a-file'],
    ['a file of 20 GB', 'sparse.yaml', 'too-big'],
  ])(
    '%s is read or refused for its reason',
    (_, path, wanted) => {
      expect(reasonFor(path)).toBe(wanted);
    },
    2500,
  );

  it('that grows while it is read is held to the size allowed', () => {
    const files = { ...nodeFiles, inspectOpen: () => ({ kind: 'file', mode: 0o644, size: 3 }) as const };
    const grown = readBelow(root, 'exact.yaml', 100, files);
    expect(grown.ok && grown.value.length).toBe(100);
    expect(readBelow(root, 'exact.yaml', 99, files)).toMatchObject({ problem: { reason: 'too-big' } });
  });

  it('is found although the shop folder itself is reached through a link', () => {
    symlinkSync(root, join(outside, 'shop-link'));
    expect(readBelow(join(outside, 'shop-link'), 'empty.yaml', 10).ok).toBe(true);
  });
});

describe('a path written in a document', () => {
  it.each([
    ['engines/pump', '../../limits/family.yaml', 'limits/family.yaml'],
    ['engines/pump', './limits.yaml', 'engines/pump/limits.yaml'],
    ['.', 'limits.yaml', 'limits.yaml'],
    ['engines', 'a//b.yaml', 'engines/a/b.yaml'],
  ])('is seen from the folder of the document: %s, %s', (folder, reference, wanted) => {
    expect(checkPathBelow(pathFrom(`${folder}/limits.yaml`, reference))).toEqual({ ok: true, value: wanted });
  });

  it.each([
    ['engines/pump', '../../../secret.yaml', 'outside'],
    ['.', '..', 'outside'],
    ['engines', '/etc/passwd', 'path'],
    ['engines', '../.git/config', 'path'],
    ['engines', '\u001b[31m', 'path'],
    ['engines', 'c:family.yaml', 'path'],
    ['engines', '..\\family.yaml', 'path'],
  ])('may not leave the shop: %s, %s', (folder, reference, wanted) => {
    expect(checkPathBelow(pathFrom(`${folder}/limits.yaml`, reference))).toMatchObject({
      ok: false,
      problem: { reason: wanted },
    });
  });
});
