import { Command, CommanderError } from 'commander';
import { writtenLines, writtenText } from '../output/escape/line.ts';
import type { Output, World } from '../shell/world.ts';
import { VERSION } from '../version.ts';
import { addBenchCommands } from './benchCommands.ts';
import { addCalc } from './calc/calcCommand.ts';
import type { CheckedEngine } from './check/checkEngine.ts';
import type { CheckCall, EngineTask } from './check/engineChecker.ts';
import { addExport } from './export/exportCommand.ts';
import { addFilm } from './film/filmCommand.ts';
import { HELP_WORDS } from './helpWords.ts';
import { addInstrumentCommands } from './instruments/instrumentCommands.ts';
import { addJudgingCommands } from './judgingCommands.ts';
import { addPart } from './parts/partCommand.ts';
import { addPlan } from './plan/planCommand.ts';
import { addReport } from './report/reportCommand.ts';
import { addTorque } from './torque/torqueCommand.ts';
import { problemLines, UsageError } from './usage.ts';

/** Carries out one call and returns its exit code: 0 well, 1 findings, 2 it could not be done. */
export async function run(words: readonly string[], world: World): Promise<number> {
  let exitCode = 0;
  const program = commandLine(world, (code) => {
    exitCode = code;
  });
  try {
    await program.parseAsync(words, { from: 'user' });
    return exitCode;
  } catch (error) {
    return failure(error, world);
  }
}

/** For a thread that takes its share of a run. */
export async function checkerFor(call: CheckCall): Promise<(task: EngineTask) => CheckedEngine> {
  const { threadChecker } = await import('./check/engineChecker.ts');
  return threadChecker(call);
}

function failure(error: unknown, { err }: World): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (!(error instanceof UsageError)) throw error;
  err.write(writtenLines(problemLines(error)));
  return 2;
}

/** Every command, to be carried out or looked at. */
export function commandLine(world: World, done: (exitCode: number) => void): Command {
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
  addJudgingCommands(program, world, done);
  addPart(program, world, done);
  addInstrumentCommands(program, world, done);
  addTorque(program, world, done);
  addFilm(program, world, done);
  addPlan(program, world, done);
  addReport(program, world, done);
  addCalc(program, world, done);
  addExport(program, world, done);
  addBenchCommands(program, world, done);
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
