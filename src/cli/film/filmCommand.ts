import type { Command } from 'commander';
import { FILM_FORMATS } from '../../output/film/formats/index.ts';
import type { World } from '../../shell/world.ts';
import { formatOption } from '../format/formatChoice.ts';
import { ENGINE_OPTION, helpEnd } from '../helpWords.ts';

/** `tenths film [ENGINE] [MEASURE]`. */
export function addFilm(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('film')
    .description('oil film, flow, friction and heat of each bearing, estimated from its clearance')
    .argument('[subject...]', 'ENGINE, MEASURE (the clearance of one kind of bearing), or both')
    .option('--engine <name>', ENGINE_OPTION)
    .option('--session <name>', 'the clearances of this session instead of the present ones')
    .option('--at <revision>', 'the documents of this git revision instead of those on disk')
    .option('--clearance <range>', 'estimate for clearances of this range instead, such as 0.0020..0.0045')
    .addOption(formatOption(FILM_FORMATS))
    .addHelpText('after', FILM_END)
    .action(async (words: string[], options) => {
      const { film } = await import('./film.ts');
      done(await film(words, options, world));
    });
}

const FILM_END = helpEnd({
  examples: [
    ['tenths film'],
    ['tenths film reservoir-pump-2 main_bearing_clearance'],
    ['tenths film main_bearing_clearance --clearance 0.0020..0.0045', 'half a thou more or less'],
    ['tenths film --session teardown --format json'],
  ],
  notes: [
    `State speed, loads and oil supply in \`running:\`, the oil in \`oil:\` and the lengths of bearings in \`sizes:\` of the engine
document. An estimate for a steady load on a round bearing: it decides no verdict, and the maker's limits come first.`,
  ],
});
