import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { builtProgram, keepingCompiled, quoted } from '../../program.ts';
import { benchFolder } from '../calling.ts';
import { ENGINE, INSTRUMENTS, SHOP } from '../fourCylinder.ts';
import { hasTerminal, pause, Terminal } from '../terminal.ts';

const bench = benchFolder();

const SESSION =
  'kind: session\nstage: teardown\ndate: 2026-02-03\nfitted: { crankshaft: { mark: K4471 }, rods: { at: { 1: { mark: R7 } } } }\nreadings: []\n';

const shop = (): void =>
  bench.put({
    'shop.yaml': SHOP,
    'instruments.yaml': INSTRUMENTS,
    'parts/K5120.yaml': 'kind: part\npart: crankshaft\nmark: K5120\n',
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
    ['a command', ['rec'], ['recall', 'record']],
    ['a command of a command', ['new', ''], ['engine', 'session', 'torque', '--help']],
    ['an engine', ['record', ''], ['crane', 'pump']],
    ['the beginning of an engine', ['new', 'session', 'pu'], ['pump']],
    ['an engine behind an option with a value', ['record', '--by', 'RK', 'c'], ['crane']],
    ['a session', ['record', '--session', '2026'], ['2026-02-03-teardown']],
    ['a session by its stage', ['check', '--session', 'reb'], ['rebuild']],
    ['a characteristic', ['new', 'session', '--measure', 'rod_shell_t'], ['rod_shell_thickness']],
    ['a choice', ['check', '--rule', ''], ['simple', 'guarded']],
    ['a format', ['check', '--format', 's'], ['sarif']],
    ['an option', ['record', '--st'], ['--stage']],
    ['an instrument', ['recall', 'mic'], ['mic-2-3', 'mic-3-4']],
    ['a mark', ['part', 'K'], ['K4471', 'K5120']],
    ['a mark of one of several', ['trend', 'crankpin_diameter', '--part', 'R'], ['R7']],
    ['a shell', ['completion', ''], ['bash', 'zsh', 'fish']],
    ['a position', ['trend', 'main_journal_diameter', 'pump', '--position', ''], ['1', '2', '3', '4', '5']],
    ['a position behind its engine', ['explain', 'engines/pump', 'cylinder_bore', ''], ['1', '2', '3', '4']],
    ['a position of two names', ['trend', 'ring_end_gap', '--position', '3 t'], ['3 top']],
    ['no position of what has one', ['trend', 'crankshaft_end_play', '--position', 'e'], []],
    ['no position of an unknown thing', ['trend', 'nonsense', '--position', '1'], []],
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

const SHELLS = ['bash', 'zsh', 'fish'] as const;

/** Starts a shell that has read its script, and nothing else of the machine's, with `tenths` before everything. */
function startShell(shell: (typeof SHELLS)[number], script: string): Terminal {
  const folder = bench.folder();
  const [home, programs] = [join(folder, 'home'), join(folder, 'programs')];
  const settings = {
    bash: { '.bashrc': `PS1='ready> '\n${script}` },
    zsh: {
      '.zfunc/_tenths': script,
      '.zshrc': "PROMPT='ready> '\nfpath+=~/.zfunc\nautoload -Uz compinit\ncompinit -u\n",
    },
    fish: {
      '.config/fish/completions/tenths.fish': script,
      '.config/fish/config.fish': "function fish_prompt; printf 'ready> '; end\n",
    },
  }[shell];
  bench.put(Object.fromEntries(Object.entries(settings).map(([name, text]) => [`home/${name}`, text])));
  // The real program completes; what would be carried out is only written down.
  bench.put({
    'programs/tenths': `#!/bin/sh
XDG_CACHE_HOME=${quoted(keepingCompiled().XDG_CACHE_HOME)}; export XDG_CACHE_HOME
[ "$1" = complete ] && exec ${quoted(process.execPath)} ${quoted(builtProgram())} "$@"
printf '<%s>' "$@" >> ${quoted(join(folder, 'called'))}; echo >> ${quoted(join(folder, 'called'))}
`,
  });
  chmodSync(join(programs, 'tenths'), 0o755);
  const environment = { HOME: home, ZDOTDIR: home, PATH: `${programs}:${process.env.PATH}`, LANG: 'C.UTF-8' };
  return new Terminal(
    join(folder, 'shop'),
    ['-i'],
    { ...environment, XDG_CACHE_HOME: '', XDG_CONFIG_HOME: '' },
    [shell],
  );
}

const called = async (count: number): Promise<readonly string[]> => {
  const path = join(bench.folder(), 'called');
  for (let waited = 0; waited < 2000; waited++) {
    const lines = existsSync(path) ? readFileSync(path, 'utf8').split('\n').slice(0, -1) : [];
    if (lines.length >= count) return lines;
    await pause(50);
  }
  return existsSync(path) ? readFileSync(path, 'utf8').split('\n') : [];
};

const isThere = (shell: string): boolean => spawnSync(shell, ['--version']).error === undefined;

describe('at a prompt of', () => {
  for (const shell of SHELLS) {
    const missing = !hasTerminal
      ? ' (skipped: there is no script of util-linux to make a terminal)'
      : isThere(shell)
        ? ''
        : ` (skipped: ${shell} is not installed)`;
    it.skipIf(missing !== '')(
      `${shell} Tab completes engines with spaces and letters beyond ASCII${missing}`,
      async () => {
        bench.put({
          'shop/shop.yaml': SHOP,
          'shop/engines/pump é no 2/engine.yaml': ENGINE,
          'shop/engines/pump é no 2/sessions/2026-02-03-teardown.yaml': SESSION,
          'shop/engines/crane: old/engine.yaml': ENGINE,
        });
        const { out } = await bench.call('completion', shell);
        const terminal = startShell(shell, out);
        try {
          await terminal.see('ready> ');
          const typed: readonly (readonly [keys: string, words: string])[] = [
            ['tenths record pu\t', '<record><pump é no 2>'],
            ['tenths record pump\\ \t', '<record><pump é no 2>'],
            ["tenths check 'pu\t", '<check><pump é no 2>'],
            ['tenths new session cr\t', '<new><session><crane: old>'],
            [
              'tenths record "pump é no 2" --session 20\t',
              '<record><pump é no 2><--session><2026-02-03-teardown>',
            ],
            ['tenths check --al\t', '<check><--all>'],
            ['tenths check sho\t', '<check><shop.yaml>'],
          ];
          for (const [index, [keys]] of typed.entries()) {
            terminal.send(`${keys}\r`);
            expect((await called(index + 1)).length).toBe(index + 1);
          }
          expect(await called(typed.length)).toEqual(typed.map(([, words]) => words));
        } finally {
          terminal.kill();
        }
      },
    );
  }

  it('any other shell there is nothing', async () => {
    const { exitCode, err } = await bench.call('completion', 'tcsh');
    expect(exitCode).toBe(2);
    expect(err).toContain('Allowed choices are bash, zsh, fish');
  });
});
