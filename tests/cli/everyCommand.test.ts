import { chmodSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { once } from '../../src/checks/once.ts';
import { callHere, type HereOptions } from '../inProcess.ts';
import { builtProgram, quoted, type Ran, runLine } from '../program.ts';
import { isLong } from '../propertyRuns.ts';
import { inCopyOf } from '../replay.ts';
import { calledAsPermitted } from './asPermitted.ts';
import { putIn } from './calling.ts';
import { CALLS, COMMAND_SHOP, type GoodCall, LEAVES, type Leaf } from './commandShop.ts';
import { hasTerminal, pause, Terminal } from './terminal.ts';

const callOf = (name: string): GoodCall => {
  const found = CALLS[name];
  if (found === undefined) throw new Error(`CALLS says nothing of tenths ${name}`);
  return found;
};

const NAMES = LEAVES.map(({ name }) => name);

/** Does something in a shop of its own. */
const inShop = (act: (folder: string) => Promise<Ran>): Promise<Ran> =>
  inCopyOf(undefined, (folder) => {
    putIn(folder, COMMAND_SHOP);
    return act(folder);
  });

/** What a command is given to read, by a pipe, in a shell. */
const feeding = (name: string, line: string): string =>
  `printf ${quoted((callOf(name).input ?? '').replaceAll('\r', '\\n'))} | { ${line}; }`;

const runBuilt = (name: string, line: string): Promise<Ran> =>
  inShop((cwd) => runLine(feeding(name, line), { cwd }));

const good = (name: string): string => `tenths ${name} ${callOf(name).words}`;

function expectClear({ stdout, stderr }: Ran): void {
  expect(stdout + stderr).not.toMatch(/^ +at |\bError:|bug of ours|node:/m);
}

/** Without a process of its own. */
const run = (name: string, line: string, options: Partial<HereOptions> = {}): Promise<Ran> =>
  inShop((cwd) => callHere(line.split(' ').slice(1), { cwd, input: callOf(name).input ?? '', ...options }));

/** A command that only prints and one that asks: what only a process shows is the same for every other. */
const BUILT = ['check', 'record'] as const;

/** Exit code 2, with words on stderr alone. */
function expectRefused(ran: Ran, stdout = ''): void {
  expectClear(ran);
  expect(ran).toMatchObject({ exitCode: 2, stdout });
  expect(ran.stderr).toMatch(/\S/);
}

it('every command has a call that these tests can try', () => {
  expect(NAMES).toEqual(expect.arrayContaining(['check', 'record', 'new session', 'complete']));
  expect(Object.keys(CALLS).sort()).toEqual([...NAMES].sort());
});

describe('where all is well', () => {
  it.each(NAMES)('tenths %s ends with its exit code', async (name) => {
    const ran = await run(name, good(name));
    expectClear(ran);
    expect({ exitCode: ran.exitCode, stderr: ran.stderr }).toMatchObject({ exitCode: callOf(name).exitCode });
  });
});

/** Words that a command cannot take: an option that it has not, a choice that is none, too many of them, too few. */
function badCalls({ name, command }: Leaf): readonly string[] {
  const choices = command.options.filter((each) => each.argChoices !== undefined);
  const args = command.registeredArguments;
  return [
    `${good(name)} --nonsense`,
    ...command.options.filter((each) => each.required).map((each) => `tenths ${name} ${each.long}`),
    ...choices.map((each) => `tenths ${name} ${each.long} nonsense`),
    ...(args.some((each) => each.variadic) ? [] : [`tenths ${name} a b c d e`]),
    ...(args.some((each) => each.required) ? [`tenths ${name}`] : []),
  ];
}

describe('bad arguments', () => {
  // All that follows `--` is what was typed, whatever it is.
  const cases = LEAVES.filter(({ name }) => name !== 'complete').flatMap((leaf) =>
    badCalls(leaf).map((line) => [line, leaf.name] as const),
  );
  it.concurrent.each(cases)('are refused: %s', async (line, name) => {
    expectRefused(await run(name, line));
  });
});

describe('an engine that is not there', () => {
  const cases = NAMES.flatMap((name) => {
    const { missing } = callOf(name);
    return missing === undefined ? [] : [[`tenths ${name} ${missing}`, name] as const];
  });
  it.each(cases)('is named and refused: %s', async (line, name) => {
    const ran = await run(name, line);
    expectRefused(ran);
    expect(ran.stderr).toContain('crane');
  });
});

describe('a folder that cannot be written', () => {
  // Of those that write nothing one is enough where time is short.
  const tried = NAMES.filter((name) => isLong || callOf(name).writes === true || name === 'check');

  const ranReadOnly = once(() =>
    inCopyOf(undefined, async (parent) => {
      const calls = tried.map((name) => ({
        words: good(name).split(' ').slice(1),
        cwd: join(parent, name),
        input: callOf(name).input ?? '',
      }));
      for (const { cwd } of calls) {
        putIn(cwd, COMMAND_SHOP);
        chmodTree(cwd, READ_ONLY);
      }
      try {
        return calledAsPermitted(calls);
      } finally {
        for (const { cwd } of calls) chmodTree(cwd, WRITABLE);
      }
    }),
  );

  it.each(tried)('stops tenths %s only where it writes', async (name) => {
    const { writes, exitCode, keeps = '' } = callOf(name);
    const ran = (await ranReadOnly())[tried.indexOf(name)] as Ran;
    if (!writes) {
      expectClear(ran);
      expect(ran).toMatchObject({ exitCode, stderr: '' });
      return;
    }
    expectRefused(ran, keeps);
    expect(ran.stderr).toMatch(/: permission denied \(EACCES\)\n {8}nothing was changed/);
    expect(ran.stderr.split('\n').length).toBeLessThan(12);
  });
});

const READ_ONLY = { folders: 0o555, files: 0o444 };
const WRITABLE = { folders: 0o755, files: 0o644 };

function chmodTree(folder: string, modes: typeof READ_ONLY): void {
  chmodSync(folder, modes.folders);
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) chmodTree(path, modes);
    else chmodSync(path, modes.files);
  }
}

describe('a stream that is not there', () => {
  it.each(NAMES)('changes no exit code of tenths %s', async (name) => {
    const ran = await run(name, good(name), { isUnread: true });
    expectClear(ran);
    expect(ran).toMatchObject({ exitCode: callOf(name).exitCode, stdout: '' });
  });

  it.each(BUILT)('changes no exit code of tenths %s in a pipe', async (name) => {
    const reader = await runBuilt(name, `{ ${good(name)}; echo "exit $?" >&2; } | true`);
    expectClear(reader);
    expect(reader.stderr).toMatch(new RegExp(`^exit ${callOf(name).exitCode}$`, 'm'));
  });

  it.each(BUILT)('stops nothing where tenths %s has no stdout', async (name) => {
    const ran = await runBuilt(name, `${good(name)} >&-`);
    expectClear(ran);
    expect(ran).toMatchObject({ exitCode: callOf(name).exitCode, stdout: '' });
  });

  it.each(NAMES)('is an end of what tenths %s reads', async (name) => {
    const ran = await run(name, good(name), { input: '' });
    expectClear(ran);
    expect(ran.exitCode).toBe(callOf(name).exitCode);
  });

  it.each(BUILT)('is an end of what tenths %s reads from a shell', async (name) => {
    const ran = await runBuilt(name, `${good(name)} <&-`);
    expectClear(ran);
    expect(ran.exitCode).toBe(callOf(name).exitCode);
  });
});

describe('a terminal', () => {
  it.each(NAMES)('of no width shows tenths %s all the same', async (name) => {
    const ran = await run(name, good(name), { columns: 0 });
    expectClear(ran);
    expect(ran.exitCode).toBe(callOf(name).exitCode);
    expect(ran.stdout + ran.stderr).toMatch(/\S{3}/);
  });

  const why = hasTerminal ? '' : ' (skipped: there is no script of util-linux to make one)';
  it.skipIf(!hasTerminal).each(BUILT)(
    `of no width that is a real one shows tenths %s${why}`,
    async (name) => {
      const { input = '', exitCode } = callOf(name);
      const line = `stty cols 0 rows 0; ${good(name)}`;
      const ran = await inShop((cwd) =>
        runLine(`printf ${quoted(input)} | script -qec ${quoted(line)} /dev/null`, { cwd }),
      );
      expectClear(ran);
      expect(ran.exitCode).toBe(exitCode);
      expect(ran.stdout).toMatch(/\S{3}/);
    },
  );

  it.skipIf(!hasTerminal)(`whose screen has gone ends an entry and keeps it${why}`, async () => {
    const entry = `{ "$@"; echo "exit $?" >&2; } | sh -c 'echo "reader $$." >&2; exec cat'`;
    const words = [process.execPath, builtProgram(), ...good('record').split(' ').slice(1)];
    const shown = await inShop(async (cwd) => {
      const terminal = new Terminal(cwd, words, {}, ['sh', '-c', entry, 'entry']);
      await terminal.see('> ');
      terminal.send('0.009\r');
      await terminal.see('1 of 1 taken');
      process.kill(Number(/reader (\d+)\./.exec(terminal.shown)?.[1]), 'SIGKILL');
      while (!terminal.shown.includes('exit ')) {
        terminal.send('?\r');
        await pause(20);
      }
      await terminal.ended();
      return { stdout: terminal.shown, stderr: '', exitCode: 0 };
    });
    expectClear(shown);
    expect(shown.stdout).toContain('exit 2');
    expect(shown.stdout).toContain('1 reading is kept');
  });
});

it('a folder that was removed under a terminal is reported', async () => {
  const ran = await inShop((cwd) => runLine('mkdir gone; cd gone; rmdir ../gone; tenths check', { cwd }));
  expectRefused(ran);
  expect(ran.stderr).toContain('no longer there');
});
