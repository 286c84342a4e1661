import { type Command, Option } from 'commander';
import { STAGES } from '../../documents/session/stage.ts';
import { READERS } from '../../output/report/sheet.ts';
import type { World } from '../../shell/world.ts';
import { ENGINE_OPTION, helpEnd, NO_CACHE } from '../helpWords.ts';
import { onlyOneEngine, UsageError } from '../usage.ts';

/** `tenths report [engine] --to FILE`. */
export function addReport(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('report')
    .description('the sheet of an engine as one file that prints: for the shop, its customer, a machine shop')
    .argument('[engine]', 'the engine; unless given, the one of this folder, or the only one of the shop')
    .option('--engine <name>', ENGINE_OPTION)
    .requiredOption('--to <file>', 'a file that ends in .html, .md or .pdf; with --all a folder')
    .addOption(
      new Option('--all', 'a page of every engine, and a board that leads to them').conflicts([
        'for',
        'closing',
        'blank',
        'session',
        'paper',
        'browser',
      ]),
    )
    .option('--with-customers', 'name customers on the board and its pages; without this, nobody is named')
    .addOption(
      new Option('--for <reader>', 'who reads it')
        .choices([...READERS])
        .default('shop')
        .conflicts(['closing', 'blank']),
    )
    .addOption(
      new Option(
        '--closing',
        'the page for closing up the engine: what is open, and boxes to tick',
      ).conflicts('blank'),
    )
    .addOption(
      new Option('--blank <stage>', 'the blank sheet of a session, with boxes for a pencil')
        .choices([...STAGES])
        .conflicts('session'),
    )
    .option('--session <name>', 'the engine as this session left it, instead of as it is now')
    .option('--at <revision>', 'the documents of this git revision: the sheet then names its commit')
    .addOption(new Option('--paper <size>', 'the paper of a PDF').choices(['A4', 'Letter']).default('A4'))
    .option(
      '--browser <program>',
      'the Chromium that prints the PDF; unless given, one that is found on this machine',
    )
    .option('--no-cache', `with --all: ${NO_CACHE}`)
    .addHelpText('after', REPORT_END)
    .action(async (word: string | undefined, options) => {
      if (options.all === true) {
        const one = onlyOneEngine(word, options.engine);
        if (one !== undefined) throw new UsageError(`${one} is one engine, and --all means every one`);
        const { board } = await import('./board.ts');
        done(await board(options, world));
        return;
      }
      const { report } = await import('./report.ts');
      done(await report(onlyOneEngine(word, options.engine), options, world));
    });
}

const REPORT_END = helpEnd({
  examples: [
    ['tenths report reservoir-pump-2 --to pump.html'],
    ['tenths report --at HEAD --to pump.html', 'the same file whenever it is written'],
    ['tenths report --for customer --to customer.pdf'],
    ['tenths report --for machine-shop --session teardown --to order.html', 'agreed work only'],
    ['tenths report --closing --to closing.pdf', 'to tick by hand before it is closed up'],
    ['tenths report --blank teardown --to teardown.pdf', 'to fill in at the bench'],
    ['tenths report --to pump.md', 'for a pull request or a wiki'],
    ['tenths report --all --to public', 'for a web server, or a job of CI'],
  ],
  notes: [
    `Every page says NOT RELEASED while anything is open. \`confirmed: [{ what: released, by: NAME }]\` in a session releases it.
An existing file is replaced only where it is such a sheet.`,
  ],
});
