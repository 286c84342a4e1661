import { Command, CommanderError, Option } from 'commander';
import { visible, visibleLines } from '../output/visible.ts';
import type { World } from '../shell/world.ts';
import { VERSION } from '../version.ts';
import { addBenchCommands } from './benchCommands.ts';
import type { CheckCall, CheckedEngine, EngineTask } from './checkEngine.ts';
import { CHECK_FORMATS } from './checkWriter.ts';
import { HELP_WORDS } from './helpWords.ts';
import { addTorque } from './torqueCommand.ts';
import { UsageError } from './usage.ts';

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
  const { engineChecker } = await import('./checkEngine.ts');
  return engineChecker(call);
}

function failure(error: unknown, { err }: World): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (!(error instanceof UsageError)) throw error;
  err.write(
    `tenths: ${visible(error.message)}\n${error.help === undefined ? '' : `        ${visible(error.help)}\n`}`,
  );
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
      writeOut: (text) => world.out.write(text),
      writeErr: (text) => world.err.write(text),
      outputError: (text, write) => write(visibleLines(text.replace(/^error: /, 'tenths: '))),
    })
    .exitOverride()
    .showHelpAfterError('(tenths --help lists the commands)');
  addCheck(program, world, done);
  addDiff(program, world, done);
  addTrend(program, world, done);
  addExplain(program, world, done);
  addStudy(program, world, done);
  addTorque(program, world, done);
  addBenchCommands(program, world, done);
  return program;
}

const AT = 'the documents of this git revision instead of those on disk';

const rule = (): Option =>
  new Option('--rule <rule>', 'how to decide near a limit').choices(['simple', 'guarded']);

const judgeBy = (): Option =>
  new Option('--judge-by <band>', 'the band that decides').choices(['new', 'wear']);

function addCheck(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('check')
    .description('validate every document, judge every session, print tables and findings')
    .argument(
      '[paths...]',
      'engines by name or path, sessions, or folders of them; this folder where none is named',
      ['.'],
    )
    .option('--session <name>', 'only this session: a path, a file name or a part of it, or a stage')
    .option('--latest', 'only the latest session of each engine')
    .option('--at <revision>', AT)
    .option('--since <revision>', 'only engines whose documents, or those they share, changed since then')
    .addOption(rule())
    .addOption(judgeBy())
    .option('--strict', 'exit with 1 for warnings as well', false)
    .option('--detail', 'uncertainty, route and instrument of every value, and every remark', false)
    .addOption(new Option('--format <format>', 'how to print').choices([...CHECK_FORMATS]).default('text'))
    .addHelpText('after', CHECK_EXAMPLES)
    .action(async (paths: string[], options) => {
      const { check } = await import('./check.ts');
      done(await check(paths, options, world));
    });
}

const CHECK_EXAMPLES = `
Examples:
  tenths check                                 every engine below this folder
  tenths check engines/millbrook-pump-2 --latest
  tenths check --session teardown --rule guarded
  tenths check --since origin/main --strict    what a pull request changes
  tenths check engines/millbrook-pump-2 --at HEAD~3
  tenths check --format json > check.json

Exit code: 0 no error, 1 an error on an engine, 2 a document that cannot be trusted or a wrong call.`;

function addExplain(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('explain')
    .description('a finding code, a characteristic, or where one value comes from')
    .argument('<what...>', 'CODE, or CHARACTERISTIC, or ENGINE CHARACTERISTIC [POSITION]')
    .option('--session <name>', 'the value in this session instead of the latest that has it')
    .option('--at <revision>', AT)
    .addOption(rule())
    .addOption(judgeBy())
    .addHelpText('after', EXPLAIN_EXAMPLES)
    .action(async (words: string[], options) => {
      const { explain } = await import('./explain.ts');
      done(explain(words, options, world));
    });
}

const EXPLAIN_EXAMPLES = `
Examples:
  tenths explain reading/undecided
  tenths explain main_bearing_clearance
  tenths explain engines/millbrook-pump-2 main_bearing_clearance        where it was measured
  tenths explain engines/millbrook-pump-2 main_bearing_clearance 5 --session teardown`;

function addStudy(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('study')
    .description('a gauge study: how far an instrument in these hands repeats')
    .argument('[engine]', 'the engine whose session holds the study')
    .option('--session <name>', 'the study of this session instead of the latest that has one')
    .option('--at <revision>', AT)
    .addHelpText('after', STUDY_EXAMPLES)
    .action(async (engine: string | undefined, options) => {
      const { study } = await import('./study.ts');
      done(study(engine, options, world));
    });
}

const STUDY_EXAMPLES = `
Examples:
  tenths study engines/millbrook-pump-2
  tenths study --session 2026-01-12-gauges`;

function addDiff(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('diff')
    .description('what changed between two sessions of an engine, or two git revisions')
    .argument(
      '<sides...>',
      'A [B], sessions or revisions, and after them the engine; without B the files on disk',
    )
    .option('--engine <name>', 'the engine')
    .option('--all', 'what is the same or within its uncertainty as well', false)
    .option('--exit-code', 'exit with 1 when anything is different', false)
    .addOption(
      new Option('--format <format>', 'how to print').choices(['text', 'json', 'markdown']).default('text'),
    )
    .addHelpText('after', DIFF_EXAMPLES)
    .action(async (words: string[], options) => {
      const { diff } = await import('./diff.ts');
      done(diff(words, options, world));
    });
}

const DIFF_EXAMPLES = `
Examples:
  tenths diff teardown rebuild
  tenths diff teardown rebuild engines/millbrook-pump-2 --all
  tenths diff HEAD~3                            since then, every engine that changed
  tenths diff HEAD~3 HEAD engines/millbrook-pump-2
  tenths diff v1:engines/old-name main:engines/new-name
  tenths diff origin/main --format markdown     for a pull request

Sessions come before revisions: refs/heads/rebuild is the branch, rebuild the session.
An engine at a revision is the latest value of everything that was measured at every position.`;

function addTrend(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('trend')
    .description('one characteristic across the sessions of an engine, and when it reaches its wear limit')
    .argument('<measure>', 'the characteristic, such as main_bearing_clearance')
    .argument('[engine]', 'the engine; else the one around this folder, or the only one of the shop')
    .option('--position <name>', 'only there')
    .addOption(
      new Option('--by <axis>', 'hours where every session states them, else date').choices([
        'hours',
        'date',
      ]),
    )
    .option('--at <revision>', AT)
    .option(
      '--history',
      'what earlier commits held as well: sessions that were removed, values that were corrected',
    )
    .addOption(new Option('--format <format>', 'how to print').choices(['text', 'json']).default('text'))
    .addHelpText('after', TREND_EXAMPLES)
    .action(async (measure: string, engine: string | undefined, options) => {
      const { trend } = await import('./trend.ts');
      done(trend(measure, engine, options, world));
    });
}

const TREND_EXAMPLES = `
Examples:
  tenths trend cylinder_bore
  tenths trend main_bearing_clearance engines/millbrook-pump-2 --position 3 --by date

A part that was replaced, machined, worked on or fitted anew starts a new line.`;
