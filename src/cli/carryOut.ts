import { Command, CommanderError } from 'commander';
import { writtenLines, writtenText } from '../output/escape/line.ts';
import type { Output, World } from '../shell/world.ts';
import { VERSION } from '../version.ts';
import { HELP_WORDS } from './helpWords.ts';
import { problemLines, UsageError } from './usage.ts';

/** Says commands to the library, each of which tells the exit code when it is carried out. */
export type AddCommands = (program: Command, world: World, done: (exitCode: number) => void) => void;

/** Carries out one call and returns its exit code: 0 well, 1 findings, 2 it could not be done. */
export async function carryOut(add: AddCommands, words: readonly string[], world: World): Promise<number> {
  let exitCode = 0;
  const program = programOf(add, world, (code) => {
    exitCode = code;
  });
  try {
    await program.parseAsync(words, { from: 'user' });
    return exitCode;
  } catch (error) {
    return failure(error, world);
  }
}

function failure(error: unknown, { err }: World): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (!(error instanceof UsageError)) throw error;
  err.write(writtenLines(problemLines(error)));
  return 2;
}

export function programOf(add: AddCommands, world: World, done: (exitCode: number) => void): Command {
  const program = new Command('tenths')
    .description('A build log for engines: plain YAML files, judged with their uncertainty.')
    .version(VERSION, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .configureHelp(HELP_WORDS)
    .configureOutput({
      writeOut: (text) => world.out.write(writtenText(text)),
      writeErr: (text) => world.err.write(writtenText(text)),
      getOutHelpWidth: () => widthOf(world.out),
      getErrHelpWidth: () => widthOf(world.err),
      getOutHasColors: () => false,
      getErrHasColors: () => false,
      outputError: (text, write) => write(ourWords(text)),
    })
    .exitOverride()
    .showHelpAfterError('(tenths --help lists the commands)');
  add(program, world, done);
  return program;
}

/** The library would look at the process's own streams. */
const widthOf = ({ isTTY, columns = 80 }: Output): number => (isTTY === true ? columns : 80);

/** The library's messages in our way of quoting; a line end in a word of the call begins no line. */
const ourWords = (text: string): string =>
  text
    .replace(/\n(?!\(Did you mean |$)/g, '\\n')
    .replace(/^error: /, 'tenths: ')
    .replace(/(?<=^|\s)'([^']*)'(?=\s|$)/g, '`$1`');
