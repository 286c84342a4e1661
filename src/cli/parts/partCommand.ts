import type { Command } from 'commander';
import { PAGES_FORMATS } from '../../output/pages/formats/index.ts';
import type { World } from '../../shell/world.ts';
import { formatOption } from '../format/formatChoice.ts';
import { AT_OPTION, helpEnd } from '../helpWords.ts';

/** `tenths part [mark]`. */
export function addPart(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('part')
    .description('one part by its mark, over all engines: where it was, what was measured, done and found')
    .argument('[mark]', 'the mark that is stamped on it; without one, all parts with a mark')
    .option('--at <revision>', AT_OPTION)
    .option('--history', 'read earlier commits too: sessions that were removed, values that were corrected')
    .addOption(formatOption(PAGES_FORMATS))
    .addHelpText('after', PART_END)
    .action(async (mark: string | undefined, options) => {
      const { part } = await import('./part.ts');
      done(await part(mark, options, world));
    });
}

const PART_END = helpEnd({
  examples: [
    ['tenths part', 'every part with a mark'],
    ['tenths part K4471'],
    ['tenths part K4471 --history', 'with readings that were removed or corrected later'],
    ['tenths part "crankshaft 7"', 'where parts of several kinds have one mark'],
    ['tenths part K4471 --format markdown > K4471.md'],
  ],
  notes: [
    `Write a mark in \`fitted:\` of a session or an engine, or in a document of kind: part while the part is in no engine.
A casting number is no mark: many parts have it.`,
  ],
});
