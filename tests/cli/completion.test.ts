import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { benchFolder } from './calling.ts';
import { ENGINE, SHOP } from './fourCylinder.ts';
import { isBuilt, PROGRAM } from './terminal.ts';

const bench = benchFolder();

const SESSION = 'kind: session\nstage: teardown\ndate: 2026-02-03\nreadings: []\n';

const shop = (): void =>
  bench.put({
    'shop.yaml': SHOP,
    'engines/pump/engine.yaml': ENGINE,
    'engines/pump/sessions/2026-02-03-teardown.yaml': SESSION,
    'engines/crane/engine.yaml': `${'# a long comment\n'.repeat(50)}${ENGINE}`,
  });

const offered = async (...words: readonly string[]): Promise<readonly string[]> => {
  const { out, exitCode } = await bench.call('complete', '--', ...words);
  expect(exitCode).toBe(0);
  return out.split('\n').flatMap((line) => (line === '' ? [] : [line.split('\t')[0] ?? '']));
};

describe('a word that is being typed', () => {
  it.each([
    ['a command', ['re'], ['record']],
    ['a command of a command', ['new', ''], ['engine', 'session', 'torque', '--help']],
    ['an engine', ['record', ''], ['crane', 'pump']],
    ['the beginning of an engine', ['new', 'session', 'pu'], ['pump']],
    ['an engine behind an option with a value', ['record', '--by', 'RK', 'c'], ['crane']],
    ['a session', ['record', '--session', '2026'], ['2026-02-03-teardown']],
    ['a session by its stage', ['check', '--session', 'reb'], ['rebuild']],
    [
      'a characteristic',
      ['new', 'session', '--measure', 'rod_s'],
      ['rod_shell_thickness', 'rod_side_clearance'],
    ],
    ['a choice', ['check', '--rule', ''], ['simple', 'guarded']],
    ['an option', ['record', '--st'], ['--stage']],
    ['a shell', ['completion', ''], ['bash', 'zsh', 'fish']],
    ['what nothing fits', ['check', '--rule', 'x'], []],
    ['a word of no command', ['nonsense', ''], []],
  ])('may be %s', async (_, words, expected) => {
    shop();
    const found = await offered(...words);
    expect(found).toEqual(expect.arrayContaining(expected));
    if (words.at(-1) !== '') expect(found).toEqual(expected);
  });

  it('is never the command that shells ask', async () => {
    expect(await offered('compl')).toEqual(['completion']);
  });

  it('is completed outside of any shop as well', async () => {
    expect(await offered('record', '')).toEqual([]);
  });
});

describe('what a shell reads', () => {
  it.skipIf(!isBuilt)('makes bash complete an engine', async () => {
    shop();
    mkdirSync(join(bench.folder(), 'bin'));
    const program = join(bench.folder(), 'bin', 'tenths');
    writeFileSync(program, `#!/bin/sh\nexec '${process.execPath}' '${PROGRAM}' "$@"\n`);
    chmodSync(program, 0o755);
    const { out } = await bench.call('completion', 'bash');
    const asking = `${out}
COMP_WORDS=(tenths check p); COMP_CWORD=2; _tenths; printf '%s\\n' "\${COMPREPLY[@]}"`;
    const { stdout, stderr } = spawnSync('bash', ['--norc', '-c', asking], {
      cwd: bench.folder(),
      encoding: 'utf8',
      env: { ...process.env, PATH: `${join(bench.folder(), 'bin')}:${process.env.PATH}` },
    });
    expect({ stdout, stderr }).toEqual({ stdout: 'pump\n', stderr: '' });
  });

  it.each(['zsh', 'fish'])('names %s and where it goes', async (shell) => {
    const { out, exitCode } = await bench.call('completion', shell);
    expect(exitCode).toBe(0);
    expect(out).toContain(`tenths completion ${shell} > ~/`);
    expect(out).toContain('tenths complete -- ');
    const checked = spawnSync(shell, ['-n'], { input: out, encoding: 'utf8' });
    // Where the shell is not installed its grammar is not tried.
    if (checked.error === undefined) expect(checked.stderr).toBe('');
  });

  it('is refused for a shell that is not known', async () => {
    const called = await bench.call('completion', 'tcsh');
    expect(called.exitCode).toBe(2);
    expect(called.err).toContain('Allowed choices are bash, zsh, fish');
  });
});
