import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commit, git } from '../shell/gitShop.ts';
import { PUMP, readings } from './benchShop.ts';
import { call } from './call.ts';
import { withBenchShop } from './gitHere.ts';

const here = withBenchShop();

/** Written by its bytes, which need not be UTF-8. */
const putBytes = (name: readonly (string | number)[], text: string): void =>
  writeFileSync(
    Buffer.concat([
      Buffer.from(`${here.shop}/${PUMP}/sessions/`),
      ...name.map((part) => (typeof part === 'string' ? Buffer.from(part) : Buffer.from([part]))),
    ]),
    text,
  );

const diagnosticsOf = async (...words: readonly string[]) => {
  const { out, exit } = await call(here.shop, ['check', PUMP, '--format', 'json', ...words]);
  const { diagnostics, engines } = JSON.parse(out) as {
    diagnostics: { code: string; message: string }[];
    engines: { judged: boolean }[];
  };
  return { exit, diagnostics, judged: engines.map(({ judged }) => judged) };
};

describe('a name that not every system can hold is refused on disk and in a commit, in the same words', () => {
  it.each([
    ['a colon', ['a:b.yaml'], 'holds a backslash or a colon'],
    ['a backslash', ['a\\b.yaml'], 'holds a backslash or a colon'],
    ['a line end', ['a\nb.yaml'], 'holds a control character'],
    ['an escape', ['a\u001b[31mb.yaml'], 'holds a control character'],
    ['a byte that is not UTF-8', ['a', 0xff, '.yaml'], 'is not in UTF-8'],
  ])('%s', async (_, name, why) => {
    putBytes(name, readings('service', '2026-05-05', '1: 0.0031'));
    commit(here.shop, 'An odd name');
    const [disk, then] = [await diagnosticsOf(), await diagnosticsOf('--at', 'HEAD')];
    expect(disk).toMatchObject({ exit: 2, judged: [false], diagnostics: [{ code: 'document/unreadable' }] });
    expect(disk.diagnostics[0]?.message).toContain(why);
    expect(then).toEqual(disk);
  });

  it('two names of a commit that look alike when they are decoded are not taken for one', async () => {
    putBytes(['a', 0xff, '.yaml'], readings('service', '2026-05-05', '1: 0.0099'));
    putBytes(['a', 0xfe, '.yaml'], readings('service', '2026-05-06', '1: 0.0031'));
    commit(here.shop, 'Twins');
    expect(await diagnosticsOf('--at', 'HEAD')).toMatchObject({ exit: 2, judged: [false] });
    const { out, exit } = await call(here.shop, ['diff', 'HEAD~1', 'HEAD']);
    expect([exit, out]).toEqual([2, `${PUMP}: not compared, since a document has a problem in HEAD\n`]);
  });

  it('a shop may lie in a folder of such a name, since its documents are named from there', async () => {
    mkdirSync(join(here.shop, 'a:b'));
    for (const name of ['shop.yaml', 'instruments.yaml', 'limits', 'engines']) {
      renameSync(join(here.shop, name), join(here.shop, 'a:b', name));
    }
    commit(here.shop, 'Below');
    const below = join(here.shop, 'a:b');
    const [disk, then] = [await call(below, ['check']), await call(below, ['check', '--at', 'HEAD'])];
    expect(disk.out).toContain('2 engines, 4 sessions');
    expect(then.out.split('\n').slice(2).join('\n')).toBe(disk.out);
  });
});

describe('in a bare repository, where no file lies on disk', () => {
  it.each([
    [['check', '--since', 'main~1'], 'read a commit with --at'],
    [['diff', 'main~1'], 'name two commits'],
  ])('%j is refused, with what can be asked', async (words, help) => {
    git(here.parent, 'clone', '-q', '--bare', here.shop, 'bare.git');
    const { out, err, exit } = await call(join(here.parent, 'bare.git'), words);
    expect([exit, out]).toEqual([2, '']);
    expect(err).toContain('is a bare repository, without a working tree');
    expect(err).toContain(help);
  });

  it('two commits are compared', async () => {
    git(here.parent, 'clone', '-q', '--bare', here.shop, 'bare.git');
    const bare = join(here.parent, 'bare.git');
    const since = await call(bare, ['check', '--at', 'main', '--since', 'main~1']);
    expect(since.out).toContain('1 engine, 2 sessions');
    expect((await call(bare, ['diff', 'main~1', 'main'])).out).toContain('Mill');
  });
});
