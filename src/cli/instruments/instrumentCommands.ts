import type { Command } from 'commander';
import { PAGES_FORMATS } from '../../output/pages/formats/index.ts';
import type { World } from '../../shell/world.ts';
import { formatOption } from '../format/formatChoice.ts';
import { AT_OPTION, helpEnd } from '../helpWords.ts';

/** `tenths instruments` and `tenths recall`. */
export function addInstrumentCommands(
  program: Command,
  world: World,
  done: (exitCode: number) => void,
): void {
  addInstruments(program, world, done);
  addRecall(program, world, done);
}

function addInstruments(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('instruments')
    .description(
      'the register: what is due, what was checked, and which verdicts each instrument leaves open',
    )
    .option('--on <date>', 'what is due or overdue on this day, instead of on the day of the latest session')
    .option('--at <revision>', AT_OPTION)
    .addOption(formatOption(PAGES_FORMATS))
    .addHelpText('after', INSTRUMENTS_END)
    .action(async (options) => {
      const { instruments } = await import('./instruments.ts');
      done(await instruments(options, world));
    });
}

const INSTRUMENTS_END = helpEnd({
  examples: [['tenths instruments'], ['tenths instruments --on 2026-12-01', 'what is overdue by then']],
});

function addRecall(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('recall')
    .description(
      'an instrument that reads wrong: what it measured since it was last good, and which verdicts change',
    )
    .argument('<instrument>', 'its name in the register, or as sessions call it')
    .option(
      '--from <date>',
      'readings since this day, instead of since the day on which it was last known to be good',
    )
    .option(
      '--error <amount>',
      'how much too large it reads, shown minus true (below zero: too small); judges its readings again without this error',
    )
    .option('--range <from..to>', 'only readings between these two sizes')
    .option('--at <revision>', AT_OPTION)
    .addOption(formatOption(PAGES_FORMATS))
    .addHelpText('after', RECALL_END)
    .action(async (name: string, options) => {
      const { recall } = await import('./recall.ts');
      done(await recall(name, options, world));
    });
}

const RECALL_END = helpEnd({
  examples: [
    ['tenths recall mic-3-4', 'what it was used for'],
    ['tenths recall mic-3-4 --error 0.0003in', 'it showed three tenths too much'],
    ['tenths recall mic-3-4 --error -0.0002 --range 3.2..3.4'],
    ['tenths recall mic-3-4 --error 0.0003 --format markdown > recall.md', 'a page for each customer'],
  ],
  notes: [
    `Readings of a gauge that was set with it count too. It counts as good on the day of a certificate, and of a
\`checked:\` within its largest error. \`delivered:\` in an engine's job says that the engine left the shop.`,
  ],
});
