import type { Command } from 'commander';
import type { World } from '../../shell/world.ts';
import { helpEnd } from '../helpWords.ts';

/** `tenths export [PATHS] --to FILE`. */
export function addExport(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('export')
    .description('readings and judged values as one table, for spreadsheets and data tools')
    .argument('[paths...]', 'engines by name or path, or folders of them; this folder where none is named', [
      '.',
    ])
    .requiredOption('--to <file>', 'the file to write; its name ends in .csv, .jsonl or .parquet')
    .option(
      '--partition',
      'one file for each engine, in a folder of its name; a file that would stay the same is not written',
      false,
    )
    .option('--at <revision>', 'the documents of this git revision instead of those on disk')
    .addHelpText('after', EXPORT_END)
    .action(async (paths: string[], options) => {
      const { exportTable } = await import('./export.ts');
      done(await exportTable(paths, options, world));
    });
}

const EXPORT_END = helpEnd({
  examples: [
    ['tenths export --to readings.parquet'],
    ['tenths export reservoir-pump-2 --to readings.csv'],
    ['tenths export --to readings.parquet --partition', 'readings/engine=…/readings.parquet'],
    ['tenths export --to readings.jsonl --at v1'],
  ],
  notes: [
    `A row is a reading, or a judged value of a session: the column row says which. An existing file is replaced.
With --at each row names the commit.`,
  ],
});
