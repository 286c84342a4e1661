import { chmodSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commit, configure, git, put, tryGit } from '../shell/gitShop.ts';
import { PUMP, readings } from './benchShop.ts';
import { call } from './call.ts';
import { withBenchShop } from './gitHere.ts';

const here = withBenchShop();

describe('a check of a commit', () => {
  it('says what a check on disk says, and which commit it was', async () => {
    const now = await call(here.shop, ['check']);
    const then = await call(here.shop, ['check', '--at', 'HEAD']);
    const oid = git(here.shop, 'rev-parse', 'HEAD');
    expect(then.out).toBe(`as it stood at HEAD, commit ${oid.slice(0, 10)}\n\n${now.out}`);
    expect(then.exit).toBe(now.exit);
  });

  it('does not look at the working tree', async () => {
    const before = await call(here.shop, ['check', '--at', 'HEAD~2']);
    rmSync(join(here.shop, 'engines'), { recursive: true });
    put(here.shop, 'shop.yaml', 'kind: [broken');
    const after = await call(here.shop, ['check', '--at', 'HEAD~2']);
    expect(after).toEqual(before);
    expect(after.out).toContain('Pump é no. 2');
    expect(after.out).not.toContain('rebuild');
  });

  it('names the commit in JSON', async () => {
    const { out } = await call(here.shop, ['check', '--at', 'main~1', '--format', 'json']);
    const commitOfMain = git(here.shop, 'rev-parse', 'main~1');
    expect(JSON.parse(out)).toMatchObject({ at: { revision: 'main~1', commit: commitOfMain }, since: null });
  });

  it('works from a folder below, in another working tree, and in a bare repository', async () => {
    const all = await call(here.shop, ['check', '--at', 'HEAD~1', PUMP]);
    const below = await call(join(here.shop, PUMP, 'sessions'), ['check', '--at', 'HEAD~1']);
    const names = (text: string): string =>
      text.replaceAll(/(\.\.\/)+[^ :]*|engines\/[^:]*?(?=:\d|\n)/g, 'PATH');
    const tables = (text: string): string =>
      names(text)
        .split('\n')
        .filter((line) => line.startsWith('  ') && !line.includes('PATH') && !line.includes('.yaml'))
        .join('\n');
    expect(tables(below.out)).toBe(tables(all.out));
    git(here.shop, 'worktree', 'add', '-q', '--detach', join(here.parent, 'second tree'), 'HEAD~2');
    const other = await call(join(here.parent, 'second tree'), ['check', '--at', 'main~1', PUMP]);
    expect(tables(other.out)).toBe(tables(all.out));
    git(here.parent, 'clone', '-q', '--bare', here.shop, 'bare ü.git');
    const bare = await call(join(here.parent, 'bare ü.git'), ['check', '--at', 'main~1', PUMP]);
    expect(tables(bare.out)).toBe(tables(all.out));
    expect((await call(join(here.parent, 'bare ü.git/refs'), ['check', '--at', 'main'])).out).toContain(
      '2 engines',
    );
  });

  it('prints the tightening card of the document as it stood, and says so', async () => {
    const passes = (to: number): string =>
      `kind: torque\njoint: main caps\nfasteners: { count: 2 }\npasses: [{ to: ${to} lbf ft }]\nsource: Invented.\n`;
    put(here.shop, `${PUMP}/torque/main-caps.yaml`, passes(110));
    commit(here.shop, 'main caps');
    put(here.shop, `${PUMP}/torque/main-caps.yaml`, passes(85));
    const then = await call(here.shop, ['torque', 'main-caps', PUMP, '--at', 'HEAD']);
    expect(then.out).toContain('110');
    expect(then.out).toMatch(/as it stood at HEAD,\s+commit [0-9a-f]{10}/);
    const now = await call(here.shop, ['torque', 'main-caps', PUMP]);
    expect(now.out).toContain('85');
    expect(now.out).not.toContain('as it stood');
  });

  it('explains a value and follows a trend as they stood', async () => {
    const explained = await call(here.shop, [
      'explain',
      PUMP,
      'main_bearing_clearance',
      '2',
      '--at',
      'HEAD~2',
    ]);
    expect(explained.out).toContain('as it stood at HEAD~2, commit');
    expect(explained.out).toContain('0.0056');
    const trend = await call(here.shop, [
      'trend',
      'main_bearing_clearance',
      'engines/mill',
      '--at',
      'HEAD~1',
    ]);
    expect(trend.out).toContain('1 reading');
  });
});

describe('a revision that cannot be had ends the call with 2 and a word of help', () => {
  it.each([
    [['check', '--at', 'nowhere'], 'there is no commit nowhere'],
    [['check', '--at', '--output=made'], 'is not the form of a revision'],
    [['check', '--since', 'HEAD~40'], 'there is no commit HEAD~40'],
    [['check', `${PUMP}/sessions/rebuild.yaml`, '--at', 'HEAD~2'], 'is not in HEAD~2'],
    [['explain', 'engines/none', 'cylinder_bore', '1', '--at', 'HEAD'], 'unknown engine engines/none'],
    [['diff', 'nowhere', 'HEAD'], 'there is no commit nowhere'],
  ])('%j', async (words, message) => {
    const { out, err, exit } = await call(here.shop, words);
    expect(exit).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(message);
    expect(readdirSync(here.shop)).not.toContain('made');
  });

  it('in a shallow clone says how to get the rest', async () => {
    git(here.parent, 'clone', '-q', '--depth', '1', `file://${here.shop}`, 'shallow');
    for (const words of [
      ['check', '--since', 'HEAD~1'],
      ['check', '--at', 'HEAD~1'],
      ['diff', 'HEAD~1', 'HEAD'],
    ]) {
      const { err, exit } = await call(join(here.parent, 'shallow'), words);
      expect(exit).toBe(2);
      expect(err).toMatch(/shallow clone[\s\S]*git fetch --unshallow/);
    }
  });

  it('outside a repository says so', async () => {
    mkdirSync(join(here.parent, 'plain'));
    const { err, exit } = await call(join(here.parent, 'plain'), ['check', '--at', 'HEAD']);
    expect(exit).toBe(2);
    expect(err).toContain('is in no git repository');
  });
});

describe('a repository whose settings name programs', () => {
  it('has none of them run by any command that reads commits', async () => {
    const markers = join(here.parent, 'markers');
    mkdirSync(markers);
    const program = (name: string): string => {
      put(here.parent, `traps/${name}`, `#!/bin/sh\n: > '${markers}/${name}'\n`);
      chmodSync(join(here.parent, 'traps', name), 0o755);
      return `'${join(here.parent, 'traps', name)}'`;
    };
    put(here.shop, '.gitattributes', '*.yaml diff=yaml filter=yaml text eol=lf\n');
    put(here.shop, 'engines/mill/second.yaml', readings('service', '2026-04-05', '1: 0.0032'));
    commit(here.shop, 'Attributes');
    const settings = [
      'core.fsmonitor',
      'diff.external',
      'diff.yaml.textconv',
      'filter.yaml.clean',
      'filter.yaml.smudge',
      'filter.yaml.process',
      'core.sshCommand',
      'core.pager',
      'core.editor',
      'gpg.program',
      'core.alternateRefsCommand',
    ];
    configure(join(here.shop, '.git'), {
      ...Object.fromEntries(settings.map((key) => [key, program(key)])),
      'core.hooksPath': join(here.parent, 'traps'),
      'alias.ls-tree': `!${program('alias')}`,
    });
    program('post-index-change');
    put(here.shop, 'shop.yaml', 'kind: shop\nunits: { length: in }\n# changed\n');
    for (const words of [
      ['check', '--at', 'HEAD'],
      ['check', '--since', 'HEAD~1'],
      ['diff', 'HEAD~2'],
      ['diff', 'HEAD~2', 'HEAD', 'engines/mill'],
      ['explain', 'engines/mill', 'main_bearing_clearance', '1', '--at', 'HEAD~1'],
      ['trend', 'main_bearing_clearance', 'engines/mill', '--at', 'HEAD~1'],
      ['trend', 'main_bearing_clearance', 'engines/mill', '--history'],
    ]) {
      expect((await call(here.shop, words)).exit).toBeLessThan(2);
    }
    expect(readdirSync(markers)).toEqual([]);
    tryGit(here.shop, 'status');
    expect(readdirSync(markers)).toContain('core.fsmonitor');
  });
});
