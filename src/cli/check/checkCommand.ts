import { type Command, Option } from 'commander';
import { CHECK_FORMATS } from '../../output/check/formats/index.ts';
import type { World } from '../../shell/world.ts';
import { formatOption } from '../format/formatChoice.ts';
import { AT_OPTION as AT, helpEnd, NO_CACHE } from '../helpWords.ts';
import { engineOption, judgeByOption, ruleOption } from '../judgeOptions.ts';
import { shareOption } from './share.ts';

/** `tenths check [paths...]`. */
export function addCheck(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('check')
    .description('validate every document and judge each engine as it is now')
    .argument(
      '[paths...]',
      'engines by name or path, sessions, or folders of them; this folder where none is named',
      ['.'],
    )
    .addOption(engineOption())
    .option('--session <name>', 'only this session: a path, a file name or a part of it, or a stage')
    .option('--all', 'judge every session as it found the engine, instead of the engine as it is now')
    .option('--at <revision>', AT)
    .option(
      '--since <revision>',
      'only engines of which a document, own or shared, changed since this revision',
    )
    .addOption(
      new Option(
        '--staged',
        'judge what is staged in git for the next commit; prints nothing where nothing is wrong',
      )
        .conflicts(['session', 'all', 'at', 'since'])
        .default(false),
    )
    .addOption(
      new Option('--watch', 'judge again when a document changes, and print what changed; Ctrl-C ends it')
        .conflicts(['staged', 'at', 'since', 'share'])
        .default(false),
    )
    .addOption(ruleOption())
    .addOption(judgeByOption())
    .option('--strict', 'exit with 1 for warnings as well', false)
    .option(
      '--known <file>',
      'a list of findings: those that are in it are shown and counted, but do not fail the check',
    )
    .option(
      '--update-known',
      'write the findings of this run into the file of --known, in place of the old list',
    )
    .addOption(shareOption())
    .option(
      '--detail',
      'show also the uncertainty, route and instrument of every value, and every remark',
      false,
    )
    .option('--no-cache', NO_CACHE)
    .addOption(formatOption(CHECK_FORMATS))
    .addHelpText('after', CHECK_END)
    .action(async (paths: string[], options) => {
      const named = pathsOf(paths, options.engine);
      if (options.watch) {
        const { watchCheck } = await import('./watch.ts');
        return done(await watchCheck(named, options, world));
      }
      const { check } = await import('./check.ts');
      done(await check(named, options, world));
    });
}

/** `--engine` alone stands for this folder, which is meant where nothing is named. */
const pathsOf = (paths: readonly string[], engine: string | undefined): readonly string[] =>
  engine === undefined ? paths : [...paths.filter((each) => each !== '.'), engine];

const CHECK_END = helpEnd({
  examples: [
    ['tenths check', 'every engine below this folder'],
    ['tenths check reservoir-pump-2', 'an engine by its name, or a part of it'],
    ['tenths check --session teardown --rule guarded'],
    ['tenths check --since origin/main --strict', 'what a pull request changes'],
    ['tenths check --staged', 'what the next commit holds, as a hook'],
    ['tenths check --watch', 'again with every change, beside an editor'],
    ['tenths check engines/reservoir-pump-2 --at HEAD~3'],
    ['tenths check --format json > check.json'],
  ],
  failing: 'an error on an engine',
});
