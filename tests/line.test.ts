import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runHere } from './line.ts';
import { projectFolder, type Ran, runLine } from './program.ts';
import { some } from './propertyRuns.ts';
import { inCopyOf, stepsOf } from './replay.ts';
import { pipelinesOf } from './shellLine.ts';
import { blocksByFolder, blocksOf, cases, casesFolder, documents, sessionOf } from './transcripts.ts';

/** A line of a transcript, with those that come before it. */
interface Line {
  readonly folder: string | undefined;
  readonly before: readonly string[];
  readonly command: string;
}

const linesOf = (folder: string | undefined, text: string): readonly Line[] => {
  const commands = stepsOf(text).map(({ command }) => command);
  return commands.map((command, index) => ({ folder, before: commands.slice(0, index), command }));
};

const inDocument = (name: string): readonly Line[] =>
  blocksByFolder(blocksOf(readFileSync(join(projectFolder, name), 'utf8'))).flatMap(([folder, blocks]) =>
    linesOf(folder && join(projectFolder, folder), blocks.map(({ text }) => text).join('\n')),
  );

const LINES = [
  ...cases.flatMap((name) => linesOf(join(casesFolder, name), sessionOf(name))),
  ...documents.flatMap(inDocument),
];

const isAnsweredHere = (line: string): boolean =>
  pipelinesOf(line)?.some((pipeline) => pipeline.some(({ words }) => words[0] === 'tenths')) === true;

const sampleOf = (lines: readonly Line[], count: number): readonly Line[] =>
  fc.sample(fc.shuffledSubarray([...lines], { minLength: count, maxLength: count }), { numRuns: 1 })[0] ?? [];

const ANSWERED_HERE = LINES.filter(({ command }) => isAnsweredHere(command));
const PIPED = ANSWERED_HERE.filter(({ command }) => (pipelinesOf(command)?.flat().length ?? 0) > 1);

/** What a line printed, with what now stands in its folder, which may lie anywhere. */
const seen = ({ stdout, stderr, exitCode }: Ran, folder: string) => ({
  stdout: stdout.replaceAll(folder, '/shop'),
  stderr: stderr.replaceAll(folder, '/shop'),
  exitCode,
  files: Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !`${entry.parentPath}/`.includes('/.git/'))
      .map(({ parentPath, name }) => join(parentPath, name))
      .map((path) => [path.slice(folder.length), readFileSync(path, 'latin1')]),
  ),
});

describe('a line that is answered without a process of its own', () => {
  it('is every line of the transcripts that calls it', () => {
    expect(ANSWERED_HERE.length).toBeGreaterThan(150);
    const others = LINES.map(({ command }) => command).filter((command) => /\btenths\b/.test(command));
    expect(others.filter((command) => !isAnsweredHere(command))).toEqual([]);
  });

  it.each([...sampleOf(ANSWERED_HERE, some(16, 8)), ...sampleOf(PIPED, some(4, 2))])(
    'does what the built program does in a shell: $command',
    async ({ folder, before, command }) => {
      await inCopyOf(folder, async (here) => {
        for (const line of before) await runHere(line, { cwd: here });
        await inCopyOf(here, async (there) => {
          const built = await runLine(command, { cwd: there });
          expect(seen(await runHere(command, { cwd: here }), here)).toEqual(seen(built, there));
        });
      });
    },
  );

  it.each([
    ['tenths check nowhere && tenths --version', 2, ''],
    ['tenths --version && tenths check nowhere', 2, '0.1.0\n'],
    ['tenths check nowhere | cat', 0, ''],
    ['printf "0.1.0" | tenths --version | sed s/0/9/', 0, '9.1.0\n'],
    ['tenths --version | sed s/0/9/ && mkdir made && tenths check made', 2, '9.1.0\n'],
  ])('has the exit code and the output of its programs: %s', async (line, exitCode, stdout) => {
    await inCopyOf(undefined, async (cwd) => {
      expect(await runHere(line, { cwd })).toMatchObject({ exitCode, stdout });
    });
  });
});

it('bytes that are no text are not handed on as if they were', async () => {
  await expect(runHere("printf '\\377' | tenths record", { cwd: projectFolder })).rejects.toThrow('no text');
});

describe('a line of a shell', () => {
  const wordsOf = (line: string) =>
    pipelinesOf(line)?.map((pipeline) =>
      pipeline.map(({ words, environment }) => ({ ...environment, words })),
    );

  it.each([
    ['tenths check', [[{ words: ['tenths', 'check'] }]]],
    [`tenths 'a  b' "c d"'e'\\'f  HEAD~1 ''`, [[{ words: ['tenths', 'a  b', "c de'f", 'HEAD~1', ''] }]]],
    ['A=1 B= tenths c=d', [[{ A: '1', B: '', words: ['tenths', 'c=d'] }]]],
    ["tenths a | sed -n '1,/^$/p'", [[{ words: ['tenths', 'a'] }, { words: ['sed', '-n', '1,/^$/p'] }]]],
    ['cp a b && tenths', [[{ words: ['cp', 'a', 'b'] }], [{ words: ['tenths'] }]]],
  ])('is taken apart: %s', (line, expected) => {
    expect(wordsOf(line)).toEqual(expected);
  });

  it('hands over to a shell what stood there, with its redirections', () => {
    const line = `printf 'a|%s\\n' "b" >> c.csv && tenths check`;
    expect(pipelinesOf(line)?.[0]?.[0]?.text).toBe(`printf 'a|%s\\n' "b" >> c.csv`);
  });

  it.each([
    'tenths check > out',
    'tenths check 2>&1',
    'tenths check >&-',
    'tenths check < in',
    'tenths check || tenths',
    'tenths check; tenths',
    'tenths check & tenths',
    '(tenths check)',
    '{ tenths check; }',
    'tenths *.yaml',
    'tenths ?.yaml',
    'tenths [ab].yaml',
    'tenths $HOME',
    'tenths "$HOME"',
    'tenths `pwd`',
    'tenths "a\\n"',
    'tenths ~/shop',
    'tenths check # all',
    '! tenths check',
    'cd shop && tenths check',
    'export A=1 && tenths check',
    'A=1 && tenths check',
    'ulimit -t 10 && tenths check',
    'tenths check |',
    '&& tenths check',
    "tenths 'check",
    'tenths check\ntenths',
    'tenths check\\',
    'cat a >| b && tenths',
    'echo a | tenths record',
  ])('that is not known here is left to a shell: %j', (line) => {
    expect(pipelinesOf(line)).toBeUndefined();
  });
});
