import type { Command } from 'commander';
import type { World } from '../../shell/world.ts';
import { ENGINE_OPTION, helpEnd } from '../helpWords.ts';

/** `tenths calc EXPRESSION [ENGINE]`. */
export function addCalc(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('calc')
    .description("one-off shop arithmetic with units, and with an engine's sizes and latest readings by name")
    .argument('<expression>', 'in quotes, such as "0.030 in to mm"')
    .argument(
      '[engine]',
      'the engine whose sizes and readings are used; unless given, the one of this folder',
    )
    .option('--engine <name>', ENGINE_OPTION)
    .option('--at <revision>', 'the documents of this git revision instead of those on disk')
    .addHelpText('after', CALC_END)
    .action(async (expression: string, word: string | undefined, options) => {
      const { calc } = await import('./calc.ts');
      done(await calc(expression, word, options, world));
    });
}

const CALC_END = helpEnd({
  examples: [
    ['tenths calc "0.030 in to mm"'],
    ['tenths calc "45 lbf ft to N m"'],
    ['tenths calc "pi/4 * bore^2 * stroke * 4 to L" reservoir-pump-2'],
    ['tenths calc "max(cylinder_bore) - bore to thou" reservoir-pump-2'],
    ['tenths calc "cylinder_bore_3 - piston_diameter_3" reservoir-pump-2', 'one position'],
  ],
  notes: [
    `The id of a size or of a characteristic stands for its latest reading: a list where it has several positions. calc judges
nothing and works out no uncertainty. For that, add a characteristic with a formula to the shop.`,
  ],
});
