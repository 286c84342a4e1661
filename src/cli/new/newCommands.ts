import { type Command, InvalidArgumentError, Option } from 'commander';
import { readRods } from '../../bench/scaffold/rods.ts';
import { STAGES } from '../../documents/session/stage.ts';
import type { World } from '../../shell/world.ts';
import { ENGINE_OPTION, helpEnd } from '../helpWords.ts';
import { onlyOneEngine } from '../usage.ts';
import { forDocument } from '../writtenWords.ts';

export const list = (text: string): readonly string[] =>
  text
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');

function count(text: string): number {
  const value = Number(text);
  if (/^\d{1,3}$/.test(text) && value >= 1 && value <= 100) return value;
  throw new InvalidArgumentError('Write a whole number from 1 to 100.');
}

/** `tenths new engine`, `new session` and `new torque`. */
export function addNew(program: Command, world: World, done: (exitCode: number) => void): void {
  const scaffold = program
    .command('new')
    .description('make the files of an engine, a session or a tightening sequence, to be filled in')
    .addHelpText('after', NEW_END);
  scaffold
    .command('engine')
    .description('a folder with the documents of an engine')
    .argument('<name>', 'what the engine is called', forDocument)
    .option('--cylinders <count>', 'the number of cylinders; 4 unless given', count)
    .option('--mains <count>', 'the number of main bearings; unless given, one more than cylinders', count)
    .option('--crankpins <count>', 'the number of crankpins; unless given, as many as cylinders', count)
    .option('--rods <rods>', 'the rods on each crankpin, such as "1 5, 2 6, 3 7, 4 8"', readRods)
    .option('--folder <path>', 'the folder, instead of engines/NAME')
    .addHelpText('after', NEW_ENGINE_END)
    .action(async (name: string, options) => {
      const { newEngine } = await import('./newEngine.ts');
      done(await newEngine(name, options, world));
    });
  scaffold
    .command('session')
    .description('an empty session: every position that the limits name, in the order of the bench')
    .argument('[engine]', 'a path, its folder or its name, or a part of either')
    .option('--engine <name>', ENGINE_OPTION)
    .addOption(
      new Option('--stage <stage>', 'the stage of the job; asked for unless given').choices([...STAGES]),
    )
    .option('--date <date>', 'the day, YYYY-MM-DD; today unless given')
    .option('--by <name>', 'who measures', forDocument)
    .option('--measure <ids>', 'these characteristics instead of what the limits name', list)
    .option('--sheet', 'print it as a blank sheet instead, and write no file')
    .addHelpText('after', NEW_SESSION_END)
    .action(async (word: string | undefined, options) => {
      const { newSession } = await import('./new.ts');
      done(await newSession(onlyOneEngine(word, options.engine), options, world));
    });
  scaffold
    .command('torque')
    .description('a tightening sequence')
    .argument('<joint>', 'what is tightened, such as main-caps', forDocument)
    .argument('[engine]', 'a path, its folder or its name, or a part of either')
    .requiredOption('--passes <torques>', 'the torque of each pass, first to last', list)
    .option('--engine <name>', ENGINE_OPTION)
    .option(
      '--fasteners <names>',
      'the names of the fasteners; unless given, made from the name of the joint',
      list,
    )
    .option('--source <text>', 'where the figures come from', forDocument)
    .addHelpText('after', NEW_TORQUE_END)
    .action(async (joint: string, word: string | undefined, options) => {
      const { newTorque } = await import('./new.ts');
      done(newTorque(joint, { ...options, engine: onlyOneEngine(word, options.engine) }, world));
    });
}

const NEW_END = helpEnd({
  examples: [
    ['tenths new engine "Reservoir pump no. 2" --cylinders 4 --mains 5'],
    ['tenths new session --stage teardown'],
    ['tenths new torque main-caps --passes 40,80,110'],
  ],
});

const NEW_ENGINE_END = helpEnd({
  examples: [
    ['tenths new engine "Reservoir pump no. 2"', 'four cylinders, five mains'],
    ['tenths new engine "Ridge 8" --mains 5 --rods "1 5, 2 6, 3 7, 4 8"', 'two rods on each pin'],
  ],
});

const NEW_SESSION_END = helpEnd({
  examples: [
    ['tenths new session --stage teardown', 'the only engine, or the one of this folder'],
    ['tenths new session pump-2 --stage rebuild --by RK'],
    ['tenths new session pump-2 --stage machined --measure cylinder_bore,piston_diameter'],
    ['tenths new session pump-2 --stage teardown --sheet', 'a blank sheet to print'],
  ],
});

const NEW_TORQUE_END = helpEnd({
  examples: [
    ['tenths new torque main-caps --passes 40,80,110'],
    [
      `tenths new torque rod-caps --passes "20 N m,45 N m" --engine pump-2 --source "Maker's manual, p. 4-12"`,
    ],
  ],
});
