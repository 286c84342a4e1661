import { Argument, type Command, InvalidArgumentError, Option } from 'commander';
import type { World } from '../shell/world.ts';

/** The commands with which a shop is begun and readings come into it. Each is loaded when it is called. */
export function addBenchCommands(program: Command, world: World, done: (exitCode: number) => void): void {
  addInit(program, world, done);
  addNew(program, world, done);
  addRecord(program, world, done);
  addImport(program, world, done);
  addCompletion(program, world, done);
}

const STAGES = ['teardown', 'machined', 'trial', 'rebuild', 'service'] as const;

export const list = (text: string): readonly string[] =>
  text
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');

function count(text: string): number {
  const value = Number(text);
  if (/^\d{1,3}$/.test(text) && value >= 1 && value <= 100) return value;
  throw new InvalidArgumentError('write a whole number from 1 to 100');
}

function addInit(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('init')
    .description('make a shop repository: defaults, register of instruments, settings of editors and of git')
    .argument('[folder]', 'where', '.')
    .addOption(new Option('--units <unit>', 'the unit of plain lengths').choices(['in', 'mm']).default('in'))
    .option('--name <name>', 'what the shop is called')
    .option('--hook', 'a check before each commit')
    .option('--ci', 'a job that checks each push')
    .option('--no-git', 'leave git alone')
    .addHelpText('before', INIT_EXAMPLES)
    .action(async (folder: string, options) => {
      const { init } = await import('./init.ts');
      done(init(folder, options, world));
    });
}

const INIT_EXAMPLES = `Examples:
  tenths init                    in this folder, inches and lbf ft
  tenths init shop --units mm    in the folder shop, millimetres and N m
  tenths init --hook --ci        with a check before each commit and on each push

Nothing is ever overwritten, so it may be run again: files that stand are kept.
`;

function addNew(program: Command, world: World, done: (exitCode: number) => void): void {
  const scaffold = program
    .command('new')
    .description('scaffold an engine, a session, a tightening sequence')
    .addHelpText('before', NEW_EXAMPLES);
  scaffold
    .command('engine')
    .description('a folder with the documents of an engine')
    .argument('<name>', 'what the engine is called')
    .option('--cylinders <count>', 'how many', count, 4)
    .option('--mains <count>', 'main bearings; one more than cylinders unless given', count)
    .option('--crankpins <count>', 'as many as cylinders unless given', count)
    .option('--folder <path>', 'where, instead of engines/NAME')
    .addHelpText('before', NEW_ENGINE_EXAMPLES)
    .action(async (name: string, options) => {
      const { newEngine } = await import('./new.ts');
      done(newEngine(name, options, world));
    });
  scaffold
    .command('session')
    .description('an empty session: every position that the limits name, in the order of the bench')
    .argument('[engine]', 'its folder or a part of its name')
    .addOption(new Option('--stage <stage>', 'where the job stands').choices([...STAGES]))
    .option('--date <date>', 'the day, YYYY-MM-DD; today unless given')
    .option('--by <name>', 'who measures')
    .option('--measure <ids>', 'these characteristics instead of what the limits name', list)
    .option('--sheet', 'print it as a blank sheet instead, and write no file')
    .addHelpText('before', NEW_SESSION_EXAMPLES)
    .action(async (engine: string | undefined, options) => {
      const { newSession } = await import('./new.ts');
      done(await newSession(engine, options, world));
    });
  scaffold
    .command('torque')
    .description('a tightening sequence')
    .argument('<joint>', 'what is tightened, such as main-caps')
    .requiredOption('--passes <torques>', 'the torque of each pass, first to last', list)
    .option('--engine <engine>', 'the folder of the engine or a part of its name')
    .option('--fasteners <names>', 'their names; made up from the joint unless given', list)
    .option('--source <text>', 'where the figures come from')
    .addHelpText('before', NEW_TORQUE_EXAMPLES)
    .action(async (joint: string, options) => {
      const { newTorque } = await import('./new.ts');
      done(newTorque(joint, options, world));
    });
}

const NEW_EXAMPLES = `Examples:
  tenths new engine "Millbrook pump no. 2" --cylinders 4 --mains 5
  tenths new session --stage teardown
  tenths new torque main-caps --passes 40,80,110
`;

const NEW_ENGINE_EXAMPLES = `Examples:
  tenths new engine "Millbrook pump no. 2"              four cylinders, five mains
  tenths new engine "Ridge 8" --cylinders 8 --mains 5 --crankpins 4
`;

const NEW_SESSION_EXAMPLES = `Examples:
  tenths new session --stage teardown                   the only engine, or the one around this folder
  tenths new session pump-2 --stage rebuild --by RK
  tenths new session pump-2 --stage machined --measure cylinder_bore,piston_diameter
  tenths new session pump-2 --stage teardown --sheet    a blank sheet to print
`;

const NEW_TORQUE_EXAMPLES = `Examples:
  tenths new torque main-caps --passes 40,80,110
  tenths new torque rod-caps --passes "20 N m,45 N m" --engine pump-2 --source "Maker's manual, p. 4-12"
`;

function addRecord(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('record')
    .description('guided entry: place by place, judged as typed, every reading saved at once')
    .argument('[engine]', 'its folder or a part of its name')
    .addOption(new Option('--stage <stage>', 'where the job stands').choices([...STAGES]))
    .option('--session <name>', 'a session that stands: its open places are filled in')
    .option('--date <date>', 'the day, YYYY-MM-DD; today unless given')
    .option('--by <name>', 'who measures')
    .option('--measure <ids>', 'these characteristics instead of what the limits name', list)
    .addHelpText('before', RECORD_EXAMPLES)
    .action(async (engine: string | undefined, options) => {
      const { record } = await import('./record.ts');
      done(await record(engine, options, world));
    });
}

const RECORD_EXAMPLES = `Examples:
  tenths record --stage teardown             a new session of today
  tenths record                              the session of today, or an entry that was cut off
  tenths record pump-2 --session 2026-02-03-teardown
  tenths record --stage machined --measure cylinder_bore
  cat readings.txt | tenths record --stage trial --measure main_bearing_bore

At each place the limits and the last session's reading are shown. Type what the instrument shows, or let the
instrument type it; ? lists the commands. Ctrl-C leaves and keeps everything.
`;

function addImport(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('import')
    .description('readings from a spreadsheet, by a mapping that is written once')
    .argument('<file>', 'a CSV file')
    .option('--map <name>', 'the mapping: imports/NAME.yaml, or a path; the only one unless given')
    .option('--new-map <name>', "make imports/NAME.yaml from the file's headings, to be filled in")
    .option('--engine <engine>', 'the folder of the engine or a part of its name')
    .addOption(new Option('--stage <stage>', 'where the job stands, for a new session').choices([...STAGES]))
    .option('--session <name>', 'a session that stands')
    .option('--date <date>', 'the day, YYYY-MM-DD; today unless given')
    .option('--by <name>', 'who measured')
    .option('--dry-run', 'print the session as it would be, and write nothing')
    .addHelpText('before', IMPORT_EXAMPLES)
    .action(async (file: string, options) => {
      const { importCsv } = await import('./import.ts');
      done(await importCsv(file, options, world));
    });
}

const IMPORT_EXAMPLES = `Examples:
  tenths import bores.csv --new-map bores            make imports/bores.yaml, then edit it
  tenths import bores.csv --stage machined --dry-run
  tenths import bores.csv --stage machined --date 2026-02-10 --by RK

Rows that are in a session already are not taken again, so a file that grows may be imported each time.
`;

function addCompletion(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('completion')
    .description('what a shell must read to complete engines, sessions, characteristics and options')
    .addArgument(new Argument('<shell>', 'which shell').choices([...SHELLS]))
    .addHelpText('before', COMPLETION_EXAMPLES)
    .action(async (shell: (typeof SHELLS)[number]) => {
      const { completion } = await import('./completion.ts');
      done(completion(shell, world));
    });
  program
    .command('complete', { hidden: true })
    .description('the words that may stand at the end of a line; asked by the shell')
    .argument('[words...]', 'what was typed')
    .action(async (words: string[]) => {
      const { complete } = await import('./complete.ts');
      done(await complete(program, words, world));
    });
}

const SHELLS = ['bash', 'zsh', 'fish'] as const;

const COMPLETION_EXAMPLES = `Examples:
  tenths completion bash >> ~/.bashrc
  tenths completion zsh > ~/.zfunc/_tenths            with fpath+=~/.zfunc before compinit
  tenths completion fish > ~/.config/fish/completions/tenths.fish
`;
