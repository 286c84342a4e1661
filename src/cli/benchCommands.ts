import { Argument, type Command, Option } from 'commander';
import { STAGES } from '../documents/session/stage.ts';
import type { World } from '../shell/world.ts';
import { ENGINE_OPTION, helpEnd } from './helpWords.ts';
import { addNew, list } from './new/newCommands.ts';
import { onlyOneEngine } from './usage.ts';

/** The commands with which a shop is begun and readings come into it. Each is loaded when it is called. */
export function addBenchCommands(program: Command, world: World, done: (exitCode: number) => void): void {
  addInit(program, world, done);
  addNew(program, world, done);
  addRecord(program, world, done);
  addImport(program, world, done);
  addCompletion(program, world, done);
}

function addInit(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('init')
    .description('make a shop repository: defaults, register of instruments, settings of editors and of git')
    .argument('[folder]', 'the folder to make it in', '.')
    .addOption(new Option('--units <unit>', 'the unit of plain lengths').choices(['in', 'mm']).default('in'))
    .option('--name <name>', 'what the shop is called', forDocument)
    .option('--hook', 'a check before each commit')
    .option('--ci', 'a job that checks each push')
    .option('--no-git', 'make no git repository')
    .addHelpText('after', INIT_END)
    .action(async (folder: string, options) => {
      const { init } = await import('./new/init.ts');
      done(init(folder, options, world));
    });
}

const INIT_END = helpEnd({
  examples: [
    ['tenths init', 'in this folder, inches and lbf ft'],
    ['tenths init shop --units mm', 'in the folder shop, millimetres and N m'],
    ['tenths init --hook --ci', 'with a check before each commit and on each push'],
  ],
  notes: [`Nothing is ever overwritten, so it may be run again: existing files are kept.`],
});

function addRecord(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('record')
    .description('guided entry: position by position, each reading judged as typed and saved at once')
    .argument('[engine]', 'a path, its folder or its name, or a part of either')
    .option('--engine <name>', ENGINE_OPTION)
    .addOption(
      new Option('--stage <stage>', 'the stage of the job; asked for where the day has no session').choices([
        ...STAGES,
      ]),
    )
    .option('--session <name>', 'an existing session: its open positions are filled in')
    .option('--date <date>', 'the day, YYYY-MM-DD; today unless given')
    .option('--by <name>', 'who measures', forDocument)
    .option('--measure <ids>', 'these characteristics instead of what the limits name', list)
    .addHelpText('after', RECORD_END)
    .action(async (word: string | undefined, options) => {
      const { record } = await import('./record/record.ts');
      done(await record(onlyOneEngine(word, options.engine), options, world));
    });
}

const RECORD_END = helpEnd({
  examples: [
    ['tenths record --stage teardown', 'a new session of today'],
    ['tenths record', 'the session of today, or an entry that was cut off'],
    ['tenths record pump-2 --session 2026-02-03-teardown'],
    ['tenths record --stage machined --measure cylinder_bore'],
    ['cat readings.txt | tenths record --stage trial --measure main_bearing_bore'],
  ],
  notes: [
    `At each position the limits and the last session's reading are shown. Type what the instrument shows, or let the
instrument type it; ? lists the commands. Ctrl-C leaves and keeps everything.`,
  ],
  failing: 'an error on the engine in the recorded readings',
});

function addImport(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('import')
    .description('readings from a spreadsheet, by a mapping that is written once')
    .argument('<file>', 'a CSV file')
    .argument('[engine]', 'a path, its folder or its name, or a part of either')
    .option('--map <name>', 'the mapping: imports/NAME.yaml, or a path; the only one unless given')
    .option('--new-map <name>', "make imports/NAME.yaml from the file's headings, to be filled in")
    .option('--engine <name>', ENGINE_OPTION)
    .addOption(new Option('--stage <stage>', 'the stage of the job, for a new session').choices([...STAGES]))
    .option('--session <name>', 'an existing session')
    .option('--date <date>', 'the day, YYYY-MM-DD; today unless given')
    .option('--by <name>', 'who measured', forDocument)
    .option('--dry-run', 'print the session as it would be, and write nothing')
    .addHelpText('after', IMPORT_END)
    .action(async (file: string, word: string | undefined, options) => {
      const { importCsv } = await import('./import/import.ts');
      done(await importCsv(file, { ...options, engine: onlyOneEngine(word, options.engine) }, world));
    });
}

const IMPORT_END = helpEnd({
  examples: [
    ['tenths import bores.csv --new-map bores', 'make imports/bores.yaml, then edit it'],
    ['tenths import bores.csv --stage machined --dry-run'],
    ['tenths import bores.csv --stage machined --date 2026-02-10 --by RK'],
  ],
  notes: [
    `Rows that a session already holds are not imported again, so you may import a growing file each time.`,
  ],
  failing: 'an error on the engine in the imported readings',
});

import { forDocument } from './writtenWords.ts';

function addCompletion(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('completion')
    .description('a script for your shell that completes engines, sessions, characteristics and options')
    .addArgument(new Argument('<shell>', 'the shell').choices([...SHELLS]))
    .addHelpText('after', COMPLETION_END)
    .action(async (shell: (typeof SHELLS)[number]) => {
      const { completion } = await import('./complete/completion.ts');
      done(completion(shell, world));
    });
  program
    .command('complete', { hidden: true })
    .description('the words that may stand at the end of a line; asked by the shell')
    .argument('[words...]', 'what was typed')
    .action(async (words: string[]) => {
      const { complete } = await import('./complete/complete.ts');
      done(await complete(program, words, world));
    });
}

const SHELLS = ['bash', 'zsh', 'fish'] as const;

const COMPLETION_END = helpEnd({
  examples: [
    ['tenths completion bash >> ~/.bashrc'],
    ['tenths completion zsh > ~/.zfunc/_tenths', 'with fpath+=~/.zfunc before compinit'],
    ['tenths completion fish > ~/.config/fish/completions/tenths.fish'],
  ],
});
