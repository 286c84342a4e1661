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
    .description('validate every document and judge where each engine stands now')
    .argument(
      '[paths...]',
      'engines by name or path, sessions, or folders of them; this folder where none is named',
      ['.'],
    )
    .addOption(engineOption())
    .option('--session <name>', 'only this session: a path, a file name or a part of it, or a stage')
    .option('--all', 'every session as it found the engine, instead of where the engine stands now')
    .option('--at <revision>', AT)
    .option('--since <revision>', 'only engines whose documents, or those they share, changed since then')
    .addOption(
      new Option('--staged', 'what is staged in git for the next commit; prints nothing where all is well')
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
    .option('--known <file>', 'findings that were known before: they are shown and counted, and do not fail')
    .option('--update-known', 'write into that file whatever is found now')
    .addOption(shareOption())
    .option('--detail', 'uncertainty, route and instrument of every value, and every remark', false)
    .option('--no-cache', NO_CACHE)
    .addOption(formatOption(Object.keys(CHECK_FORMATS)))
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
