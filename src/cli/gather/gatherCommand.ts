import type { Command } from 'commander';
import { CHECK_FORMATS } from '../../output/check/formats/index.ts';
import type { World } from '../../shell/world.ts';
import { formatOption } from '../format/formatChoice.ts';
import { helpEnd } from '../helpWords.ts';

/** `tenths gather FILES`. */
export function addGather(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('gather')
    .description('put the results of all shares together, as one run would write them')
    .argument('<files...>', 'the JSON of every share')
    .addOption(formatOption(CHECK_FORMATS))
    .addHelpText('after', GATHER_END)
    .action(async (files: string[], options) => {
      const { gather } = await import('./gather.ts');
      done(await gather(files, options, world));
    });
}

const GATHER_END = helpEnd({
  examples: [
    ['tenths check --share 2/5 --format json:2.json', 'in the second of five jobs'],
    ['tenths gather *.json --format text --format junit:check.xml', 'in the job after them'],
  ],
  failing: 'an error on an engine',
});
