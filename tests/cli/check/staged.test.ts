import { execFileSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runLine } from '../../program.ts';
import { commit, git, put } from '../../shell/gitShop.ts';
import { FAMILY, PUMP, readings } from '../benchShop.ts';
import { call } from '../call.ts';
import { withBenchShop } from '../gitHere.ts';

const here = withBenchShop();
const MILL = 'engines/mill';
const REBUILD = `${PUMP}/sessions/rebuild.yaml`;
const WELL = readings('rebuild', '2026-03-14', '1: 0.0030, 2: 0.0031');
const OUT = readings('rebuild', '2026-03-14', '1: 0.0090, 2: 0.0031');
const BROKEN = 'kind: session\nstage: rebuild\ndate: 2026-03-14\nreadings: 3\n';

const staged = (...words: readonly string[]) => call(here.shop, ['check', '--staged', ...words]);
const add = (): void => void git(here.shop, 'add', '--all');

describe('a check of what is staged', () => {
  it('says nothing where nothing is staged, and where all that is staged is well', async () => {
    expect(await staged()).toEqual({ out: '', err: '', exit: 0 });
    put(here.shop, REBUILD, WELL);
    add();
    expect(await staged()).toEqual({ out: '', err: '', exit: 0 });
  });

  it('judges what is staged, and not what lies in the folder', async () => {
    put(here.shop, REBUILD, OUT);
    expect(await staged()).toEqual({ out: '', err: '', exit: 0 });
    add();
    put(here.shop, REBUILD, WELL);
    const { out, exit } = await staged();
    expect(exit).toBe(1);
    expect(out.split('\n').slice(0, 3)).toEqual([
      'as staged for the next commit; only engines with a staged change',
      '',
      expect.stringMatching(/: 1 out: main bearing clearance 1/),
    ]);
  });

  it('ends with 2 for a document that cannot be trusted, and shows it first', async () => {
    put(here.shop, REBUILD, BROKEN);
    add();
    const { out, exit } = await staged();
    expect(exit).toBe(2);
    expect(out.split('\n')[2]).toMatch(/rebuild\.yaml:4:11: error document\/type/);
  });

  it.each([
    ['a session of one engine', REBUILD, OUT, [PUMP]],
    ['limits that one engine extends', 'limits/family.yaml', FAMILY.replace('0.0050', '0.0051'), [PUMP]],
    ['the shop', 'shop.yaml', 'kind: shop\nunits: { length: in }\ndecision_rule: guarded\n', [MILL, PUMP]],
    ['a file that is none of ours', 'notes.md', 'none\n', []],
  ])('looks at the engines that it bears on: %s', async (_, path, text, engines) => {
    put(here.shop, path, text);
    add();
    const { out } = await staged('--format', 'json');
    const report = JSON.parse(out) as { staged: boolean; engines: { path: string }[] };
    expect(report.staged).toBe(true);
    expect(report.engines.map((each) => each.path)).toEqual(engines);
  });

  it('of a removed session judges what is left', async () => {
    rmSync(join(here.shop, REBUILD));
    add();
    expect((await staged('--format', 'json')).out).toContain(`"path":"${PUMP}"`);
  });

  it.each<[title: string, deleted: string, exit: 0 | 2, said: string]>([
    ['an engine', `${PUMP}/engine.yaml`, 2, 'documents of its folder have no engine'],
    ['the shop', 'shop.yaml', 2, '2 engines have none of the units, rules and grids that it may state'],
    ['the limits of an engine', `${MILL}/limits.yaml`, 0, 'no limits any more'],
    ['the register', 'instruments.yaml', 0, 'taken with instruments that no register has any more'],
  ])('says what %s that is deleted leaves without it', async (_, deleted, exit, said) => {
    rmSync(join(here.shop, deleted));
    add();
    const found = await staged('--format', 'json');
    expect(found.exit).toBe(exit);
    const { findings } = JSON.parse(found.out) as { findings: { code: string; message: string }[] };
    expect(findings).toMatchObject([
      { code: 'file/deleted', message: expect.stringContaining(`${deleted} is deleted: `) },
    ]);
    expect(findings[0]?.message).toContain(said);
    expect((await call(here.shop, ['check', '--since', 'HEAD'])).exit).toBe(exit);
    // Where nothing is left that stood on it there is nothing to say.
    for (const folder of [PUMP, MILL]) rmSync(join(here.shop, folder), { recursive: true });
    add();
    expect((await staged()).out).toBe('');
  });

  it('before the first commit looks at everything', async () => {
    rmSync(join(here.shop, '.git'), { recursive: true });
    git(here.shop, 'init', '--quiet');
    put(here.shop, REBUILD, BROKEN);
    add();
    expect((await staged()).exit).toBe(2);
  });

  it('refuses what is not merged yet', async () => {
    git(here.shop, 'checkout', '--quiet', '-b', 'other');
    put(here.shop, REBUILD, OUT);
    commit(here.shop, 'other');
    git(here.shop, 'checkout', '--quiet', '-');
    put(here.shop, REBUILD, readings('rebuild', '2026-03-14', '1: 0.0031'));
    commit(here.shop, 'here');
    expect(() => git(here.shop, 'merge', 'other')).toThrow();
    const { err, exit } = await staged();
    expect({ err, exit }).toEqual({
      err: expect.stringMatching(/rebuild\.yaml` is not merged yet\n +resolve it, then git add it/),
      exit: 2,
    });
  });

  it('within a hook looks at the files that are committed alone', async () => {
    put(here.shop, '.git/hooks/pre-commit', '#!/bin/sh\ntenths check --staged\n[ $? -le 1 ]\n');
    execFileSync('chmod', ['+x', '.git/hooks/pre-commit'], { cwd: here.shop });
    put(here.shop, REBUILD, BROKEN);
    add();
    put(here.shop, `${MILL}/notes.md`, 'clean\n');
    git(here.shop, 'add', `${MILL}/notes.md`);
    const part = await runLine(`git commit --quiet -m part ${MILL}/notes.md`, { cwd: here.shop });
    expect(part).toEqual({ stdout: '', stderr: '', exitCode: 0 });
    const whole = await runLine('git commit --quiet -m whole', { cwd: here.shop });
    expect(whole.exitCode).toBe(1);
    expect(whole.stderr + whole.stdout).toContain('error document/type');
  });

  it.each(['--at HEAD', '--since HEAD', '--session rebuild', '--all'])(
    'refuses %s beside it',
    async (more) => {
      const { err, exit } = await staged(...more.split(' '));
      expect({ err, exit }).toEqual({ err: expect.stringContaining('--staged'), exit: 2 });
    },
  );
});
