import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { resolveRevision } from '../../../src/shell/git/git.ts';
import { openRepository } from '../../../src/shell/git/openRepository.ts';
import type { GitPlace } from '../../../src/shell/git/process.ts';
import { done } from '../../../src/shell/problem.ts';
import { git, headOf, makeShop, temporaryFolder } from '../gitShop.ts';

// Nothing here changes it.
let parent = '';
let shop = '';
let place: GitPlace;

beforeAll(() => {
  parent = temporaryFolder();
  shop = makeShop(parent);
  git(shop, 'branch', 'überholt');
  git(shop, 'tag', 'v1.0+a');
  const opened = openRepository(shop, process.env);
  if (!opened.ok) throw new Error(opened.problem.message);
  place = opened.value;
});

afterAll(() => rmSync(parent, { recursive: true }));

describe('what is given as a revision', () => {
  it.each([
    '--output=made',
    '--output=made HEAD',
    '-o made',
    '-Omade',
    '--help',
    '--all',
    '--git-dir=.',
    '--upload-pack=touch made',
    '--exec=touch made',
    '--end-of-options',
    '--',
    '-',
    '',
    ' ',
    'HEAD --output=made',
    'HEAD\n--output=made',
    'HEAD\0',
    '$(touch made)',
    '`touch made`',
    ';touch made',
    '|touch made',
    'HEAD:../../etc/passwd',
    'HEAD:/etc/passwd',
    ':/Teardown',
    '^HEAD',
    '../../etc/passwd',
    'x'.repeat(300),
    '%s%n',
    'HEAD\u001b[31m',
  ])('%j is refused by its form', (revision) => {
    const before = readdirSync(shop);
    expect(resolveRevision(place, revision)).toMatchObject({
      problem: { reason: 'revision', message: /is not the form of a revision/ },
    });
    expect(readdirSync(shop)).toEqual(before);
    expect(existsSync(join(process.cwd(), 'made'))).toBe(false);
  });

  it.each([
    'HEAD..HEAD~1',
    'HEAD^{tree}',
    'HEAD^@',
    'nowhere',
    'refs/heads/../main',
    '0'.repeat(40),
    'HEAD@{9}',
  ])('%s is no commit', (revision) => {
    expect(resolveRevision(place, revision)).toMatchObject({ ok: false });
  });

  it.each(['HEAD', '@', '@~0', 'main', 'HEAD^{commit}', 'refs/heads/main', 'überholt', 'v1.0+a', 'HEAD@{0}'])(
    '%s may name a commit',
    (revision) => {
      expect(resolveRevision(place, revision)).toEqual(done(headOf(shop)));
    },
  );
});
