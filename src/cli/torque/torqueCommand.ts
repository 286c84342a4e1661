import type { Command } from 'commander';
import { TORQUE_FORMATS } from '../../output/torque/formats/index.ts';
import type { World } from '../../shell/world.ts';
import { formatOption } from '../format/formatChoice.ts';
import { AT_OPTION, ENGINE_OPTION, helpEnd } from '../helpWords.ts';
import { onlyOneEngine } from '../usage.ts';

/** `tenths torque NAME [engine]`. */
export function addTorque(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('torque')
    .description('the tightening card of a joint: order, passes, wrench setting, expected clamp load')
    .argument('<name>', "a torque document: its file's name, a part of it, or its joint")
    .argument('[engine]', 'the engine; unless given, the one of this folder, or the only one of the shop')
    .option('--engine <name>', ENGINE_OPTION)
    .option('--wrench <length>', 'from the middle of the grip to the drive, such as 18in')
    .option('--adapter <length>', 'from the drive to the fastener, such as 6in')
    .option('--adapter-angle <angle>', '0 in line with the wrench, 90 square to it, 180 back along it')
    .option(
      '--run-on <torque>',
      'the torque that turns a locknut before it clamps; it is added to every torque',
    )
    .option('--at <revision>', AT_OPTION)
    .addOption(formatOption(TORQUE_FORMATS))
    .addHelpText('after', TORQUE_END)
    .action(async (name: string, word: string | undefined, options) => {
      const { torque } = await import('./torque.ts');
      done(await torque(name, onlyOneEngine(word, options.engine), options, world));
    });
}

const TORQUE_END = helpEnd({
  examples: [
    ['tenths torque main-caps'],
    ['tenths torque head reservoir-pump-2 --wrench 18in --adapter 6in'],
    ['tenths torque rod --run-on "8.9 lbf in"'],
    ['tenths torque main-caps --format markdown > main-caps.md'],
  ],
  failing: 'a torque of the document is beyond the proof load',
});
