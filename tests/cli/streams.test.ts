import { existsSync } from 'node:fs';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { callHere } from '../inProcess.ts';
import { runHere } from '../line.ts';
import { quoted, type Ran, runLine } from '../program.ts';
import { atTheBench } from './bench.ts';

const COLOUR = /\u001b\[\d+m/;

/** `A=1 B=` as an environment. */
const environmentOf = (text: string): Record<string, string> =>
  Object.fromEntries(
    text.split(' ').map((each) => [each.slice(0, each.indexOf('=')), each.slice(each.indexOf('=') + 1)]),
  );

interface Asked {
  readonly words?: string;
  readonly environment?: string;
  readonly columns?: number;
  readonly files?: Parameters<typeof atTheBench>[0];
}

/** What `check` prints on a terminal. */
const onTerminal = ({
  words = '',
  environment = 'TERM=xterm',
  columns = 80,
  files = {},
}: Asked): Promise<Ran> =>
  atTheBench(files, (cwd) =>
    callHere(`check ${words}`.trim().split(' '), { cwd, columns, env: environmentOf(environment) }),
  );

/** The same by the built program, on a terminal that `script` makes. */
const onRealTerminal = ({ words = '', environment = 'TERM=xterm', columns = 80 }: Asked): Promise<Ran> =>
  atTheBench({}, (cwd) => {
    const line = `stty cols ${columns}; ${environment} tenths check ${words}`;
    return runLine(`script -qec ${quoted(line)} /dev/null < /dev/null`, { cwd });
  });

/** Where `script` is not there, or takes other words, nothing can make a terminal. */
const terminalIt = it.runIf(existsSync('/usr/bin/script') && process.platform === 'linux');

/** Lines as a terminal shows them, without colours. */
const shown = ({ stdout }: Ran): readonly string[] =>
  stdout.replaceAll('\r', '').replaceAll(new RegExp(COLOUR, 'g'), '').trimEnd().split('\n');

describe('colours', () => {
  it.each([
    ['', false],
    ['NO_COLOR=1', false],
    ['NO_COLOR= ', false],
    ['TERM=dumb', false],
    ['TERM=xterm-256color', false],
    ['FORCE_COLOR=1', true],
    ['FORCE_COLOR=0', false],
    ['FORCE_COLOR=1 TERM=dumb', true],
    ['NO_COLOR=1 FORCE_COLOR=1', false],
  ])('in a pipe with %j: %s', async (environment, expected) => {
    const { stdout } = await atTheBench({}, (cwd) => runHere(`${environment} tenths check`, { cwd }));
    expect(COLOUR.test(stdout)).toBe(expected);
  });

  it.each([
    ['TERM=xterm-256color', true],
    ['TERM=xterm-256color NO_COLOR=1', false],
    ['TERM=xterm-256color NO_COLOR= ', true],
    ['TERM=dumb', false],
    ['TERM=dumb FORCE_COLOR=1', true],
    ['NO_COLOR=1 FORCE_COLOR=1', false],
  ])('on a terminal with %j: %s', async (environment, expected) => {
    const { stdout } = await onTerminal({ environment });
    expect(COLOUR.test(stdout)).toBe(expected);
  });

  terminalIt.each([
    ['TERM=xterm-256color', true],
    ['TERM=dumb', false],
  ])('on a real terminal with %j: %s', async (environment, expected) => {
    const { stdout } = await onRealTerminal({ environment });
    expect(COLOUR.test(stdout)).toBe(expected);
  });

  it('say nothing that the words do not say', async () => {
    const plain = await onTerminal({ environment: 'NO_COLOR=1' });
    const coloured = await onTerminal({ environment: 'TERM=xterm FORCE_COLOR=1' });
    expect(coloured.stdout).not.toBe(plain.stdout);
    expect(shown(coloured)).toEqual(shown(plain));
  });

  it('never stand in JSON', async () => {
    const { stdout } = await atTheBench({}, (cwd) =>
      runHere('FORCE_COLOR=1 tenths check --format json', { cwd }),
    );
    expect(stdout).not.toContain('\u001b');
    expect(JSON.parse(stdout).summary).toMatchObject({ engines: 2, sessions: 2, errors: 1 });
  });
});

describe('a window', () => {
  it.each([60, 80, 120])('of %i columns holds every line', async (columns) => {
    const lines = shown(await onTerminal({ words: '--detail', columns }));
    expect(lines.filter((line) => stringWidth(line) > columns)).toEqual([]);
    expect(lines.join('\n')).toContain('3 centre');
  });

  terminalIt.each([60, 0])('of %i columns that is a real one gets the same lines', async (columns) => {
    const real = shown(await onRealTerminal({ words: '--detail', columns }));
    expect(real).toEqual(shown(await onTerminal({ words: '--detail', columns })));
  });

  it.each([60, 90])('of %i columns holds what is wrong with a document', async (columns) => {
    const limits = 'kind: limits\nsource: Invented.\nlimits:\n    a: 1\n   b: 2\n';
    const ran = await onTerminal({ files: { 'worn/limits.yaml': limits }, columns });
    expect(shown(ran).filter((line) => stringWidth(line) > columns)).toEqual([]);
    expect(shown(ran).join(' ').replaceAll(/ +/g, ' ')).toContain(
      'document/yaml: the indentation does not fit the lines above',
    );
  });

  it('that says it has no width at all gets lines all the same', async () => {
    const lines = shown(await onTerminal({ columns: 0 }));
    expect(lines.join('\n')).toMatch(/^2 engines, 2 sessions: /m);
    expect(Math.max(...lines.map((line) => stringWidth(line)))).toBeGreaterThan(40);
  });

  it.each([
    ['LANG=C', false],
    ['LC_ALL=de_DE.ISO-8859-1', false],
    ['LANG=C.UTF-8', true],
    ['LC_ALL=C LANG=C.UTF-8', false],
  ])('of a locale draws with characters that it has: %s', async (environment, lines) => {
    const { stdout } = await atTheBench({}, (cwd) =>
      runHere(`${environment} tenths check sound --detail`, { cwd }),
    );
    expect(stdout.includes('─')).toBe(lines);
    expect(stdout.includes('|--')).toBe(!lines);
  });
});

describe('a stream that cannot be written', () => {
  it('whose reader has gone ends the run quietly, with the exit code of the check', async () => {
    await atTheBench({}, async (cwd) => {
      const line = '{ tenths check; echo "exit $?" >&2; } | head -1';
      const { stdout, stderr } = await runLine(line, { cwd });
      expect(stdout).toMatch(/^Worn pump: .*\n$/);
      expect(stderr).toBe('exit 1\n');
    });
  });

  it.each(['tenths check', 'tenths check --format json', 'tenths --version', 'tenths --help'])(
    'since a disk is full is reported in words, exit 2: %s',
    async (line) => {
      const ran = await atTheBench({}, (cwd) => runLine(`${line} > /dev/full`, { cwd }));
      expect(ran).toEqual({
        stdout: '',
        stderr: 'tenths: the output cannot be written: the disk is full (ENOSPC)\n',
        exitCode: 2,
      });
    },
  );

  it('where trouble would be told changes no exit code', async () => {
    const ran = await atTheBench({}, (cwd) => runLine('tenths check nowhere 2> /dev/full', { cwd }));
    expect(ran).toEqual({ stdout: '', stderr: '', exitCode: 2 });
  });
});
