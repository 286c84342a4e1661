import { type Command, Option } from 'commander';
import { DIFF_FORMATS } from '../output/diff/formats/index.ts';
import { LINES_FORMATS } from '../output/lines/formats/index.ts';
import { TREND_FORMATS } from '../output/trend/formats/index.ts';
import type { World } from '../shell/world.ts';
import { addCheck } from './check/checkCommand.ts';
import { formatOption } from './format/formatChoice.ts';
import { addGather } from './gather/gatherCommand.ts';
import { AT_OPTION as AT, helpEnd } from './helpWords.ts';
import { engineOption, judgeByOption, ruleOption } from './judgeOptions.ts';
import { onlyOneEngine } from './usage.ts';

/** The commands that read a shop and say what they find; none changes a document. Each is loaded when it is called. */
export function addJudgingCommands(program: Command, world: World, done: (exitCode: number) => void): void {
  addCheck(program, world, done);
  addGather(program, world, done);
  addDiff(program, world, done);
  addTrend(program, world, done);
  addExplain(program, world, done);
  addStudy(program, world, done);
}

function addExplain(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('explain')
    .description('a finding code, a characteristic, or where one value comes from')
    .argument('<what...>', 'CODE, or CHARACTERISTIC [POSITION] [ENGINE]')
    .addOption(engineOption())
    .option('--session <name>', 'the value in this session instead of the latest that has it')
    .option('--at <revision>', AT)
    .addOption(ruleOption())
    .addOption(judgeByOption())
    .addOption(formatOption(LINES_FORMATS))
    .addHelpText('after', EXPLAIN_END)
    .action(async (words: string[], options) => {
      const { explain } = await import('./explain/explain.ts');
      done(await explain(words, options, world));
    });
}

const EXPLAIN_END = helpEnd({
  examples: [
    ['tenths explain reading/undecided'],
    ['tenths explain main_bearing_clearance'],
    ['tenths explain main_bearing_clearance reservoir-pump-2', 'where it was measured'],
    ['tenths explain main_bearing_clearance 5 reservoir-pump-2 --session teardown'],
  ],
});

function addStudy(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('study')
    .description('a gauge study: how far readings differ when people repeat them with one instrument')
    .argument('[engine]', 'the engine whose session holds the study')
    .addOption(engineOption())
    .option('--session <name>', 'the study of this session instead of the latest that has one')
    .option('--at <revision>', AT)
    .addOption(formatOption(LINES_FORMATS))
    .addHelpText('after', STUDY_END)
    .action(async (word: string | undefined, options) => {
      const { study } = await import('./study/study.ts');
      done(await study(onlyOneEngine(word, options.engine), options, world));
    });
}

const STUDY_END = helpEnd({
  examples: [['tenths study engines/reservoir-pump-2'], ['tenths study --session 2026-01-12-gauges']],
});

function addDiff(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('diff')
    .description('what changed between two sessions of an engine, or two git revisions')
    .argument(
      '<sides...>',
      'A [B] [ENGINE]: A and B are sessions or git revisions; without B, the files on disk',
    )
    .addOption(engineOption())
    .option('--part <mark>', 'compare two days on which the part with this mark was measured, in any engine')
    .option('--all', 'list also what is the same, or changed by less than its uncertainty', false)
    .option('--exit-code', 'exit with 1 when anything is different', false)
    .addOption(formatOption(DIFF_FORMATS))
    .addHelpText('after', DIFF_END)
    .action(async (words: string[], options) => {
      const { diff } = await import('./diff/diff.ts');
      done(await diff(words, options, world));
    });
}

const DIFF_END = helpEnd({
  examples: [
    ['tenths diff teardown rebuild'],
    ['tenths diff teardown rebuild engines/reservoir-pump-2 --all'],
    ['tenths diff 2019-06-04 2026-03-03 --part K4471', 'a part, from one engine to another'],
    ['tenths diff HEAD~3', 'since then, every engine that changed'],
    ['tenths diff HEAD~3 HEAD engines/reservoir-pump-2'],
    ['tenths diff v1:engines/old-name main:engines/new-name'],
    ['tenths diff origin/main --format markdown', 'for a pull request'],
  ],
  notes: [
    `A name that is both a session and a branch means the session: write refs/heads/rebuild for the branch rebuild.
Of a revision, the latest value of each characteristic at each position is compared.`,
  ],
  failing: 'anything is different, with --exit-code',
});

function addTrend(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('trend')
    .description('one characteristic across the sessions of an engine, and when it reaches its wear limit')
    .argument('<measure>', 'the characteristic, by its id or as tables print it')
    .argument('[where...]', 'POSITION, ENGINE or both; without ENGINE, the engine of this folder')
    .addOption(engineOption())
    .option('--position <name>', 'only this position')
    .addOption(
      new Option(
        '--by <axis>',
        'count the time by running hours or by date; unless given, by hours where every session states them, else by date',
      ).choices(['hours', 'date']),
    )
    .option('--at <revision>', AT)
    .option('--part <mark>', 'a part by its mark, from engine to engine')
    .option('--history', 'read earlier commits too: sessions that were removed, values that were corrected')
    .addOption(formatOption(TREND_FORMATS))
    .addHelpText('after', TREND_END)
    .action(async (measure: string, words: string[], options) => {
      const { trend } = await import('./trend/trend.ts');
      done(await trend(measure, words, options, world));
    });
}

const TREND_END = helpEnd({
  examples: [
    ['tenths trend cylinder_bore'],
    ['tenths trend main_bearing_clearance 3 reservoir-pump-2 --by date'],
    ['tenths trend crankpin_diameter 2 --part K4471', 'over all engines that it was in'],
    ['tenths trend cylinder_bore --history', 'with readings that were removed or corrected later'],
  ],
  notes: [`A part that was replaced, machined, worked on or fitted anew starts a new line.`],
});
