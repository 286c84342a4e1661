import type { Command } from 'commander';
import type { World } from '../../shell/world.ts';
import { formatOption } from '../format/formatChoice.ts';
import { AT_OPTION, helpEnd } from '../helpWords.ts';
import { PAGE_FORMATS } from '../page/pageFormats.ts';

/** `tenths part [mark]`. */
export function addPart(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('part')
    .description(
      'a part by its mark over all engines: where it was, what was read of it, done to it and found',
    )
    .argument('[mark]', 'what is stamped on it; all parts with a mark where none is named')
    .option('--at <revision>', AT_OPTION)
    .option(
      '--history',
      'what earlier commits held as well: sessions that were removed, values that were corrected',
    )
    .addOption(formatOption(PAGE_FORMATS))
    .addHelpText('after', PART_END)
    .action(async (mark: string | undefined, options) => {
      const { part } = await import('./part.ts');
      done(part(mark, options, world));
    });
}

const PART_END = helpEnd({
  examples: [
    ['tenths part', 'every part with a mark'],
    ['tenths part K4471'],
    ['tenths part K4471 --history', 'removed and corrected readings of earlier commits, too'],
    ['tenths part "crankshaft 7"', 'where parts of several kinds have one mark'],
    ['tenths part K4471 --format markdown > K4471.md'],
  ],
  notes: [
    `Marks stand in \`fitted:\` of sessions and engines, and in documents of kind: part for what lies in no engine.
A casting number is no mark: many parts have it.`,
  ],
});
