import { EXPORT_COLUMNS, type ExportRow } from '../../output/export/exportRow.ts';
import { exportCsv, exportJsonLines } from '../../output/export/exportText.ts';
import type { World } from '../../shell/world.ts';
import { UsageError } from '../usage.ts';

export interface ExportFormat {
  readonly ending: string;
  readonly bytesOf: (rows: readonly ExportRow[]) => Uint8Array;
}

const TEXTS: readonly ExportFormat[] = [
  { ending: '.csv', bytesOf: (rows) => Buffer.from(exportCsv(rows)) },
  { ending: '.jsonl', bytesOf: (rows) => Buffer.from(exportJsonLines(rows)) },
];

/** By the ending of the file that is asked for. */
export async function formatOf(file: string, world: World): Promise<ExportFormat> {
  const text = TEXTS.find(({ ending }) => file.endsWith(ending));
  if (text !== undefined) return text;
  if (file.endsWith('.parquet')) return parquetFormat(world);
  throw new UsageError(
    `--to ${file} is not the name of a table`,
    'name a file that ends in .csv, .jsonl or .parquet',
  );
}

async function parquetFormat({ parquet }: World): Promise<ExportFormat> {
  if (parquet === undefined) throw new RangeError('a world without a writer of Parquet');
  const bytes = await parquet();
  return {
    ending: '.parquet',
    bytesOf: (rows) =>
      bytes(
        EXPORT_COLUMNS.map(({ name, type }) => ({
          name,
          type,
          values: rows.map((row) => row[name] ?? null),
        })),
      ),
  };
}
