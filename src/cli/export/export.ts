import { reportEngine } from '../../checks/judge/report.ts';
import { writtenLines } from '../../output/escape/line.ts';
import type { ExportRow } from '../../output/export/exportRow.ts';
import { exportRows } from '../../output/export/exportRows.ts';
import { plural } from '../../quantity/words.ts';
import type { World } from '../../shell/world.ts';
import { type ExportPlace, makeExportFolder, writeExported } from '../../shell/write/exported.ts';
import { byShop, readEngine, sourceOf } from '../shop/resolveShop.ts';
import { orUsage, UsageError } from '../usage.ts';
import { type ExportFormat, formatOf } from './exportFormat.ts';

export interface ExportOptions {
  readonly to: string;
  readonly partition: boolean;
  readonly at?: string | undefined;
}

/** Writes readings and judged values as one table; the exit code. */
export async function exportTable(
  paths: readonly string[],
  options: ExportOptions,
  world: World,
): Promise<number> {
  const format = await formatOf(options.to, world);
  const { engines, hasProblems } = readAll(paths, options, world);
  const rows = engines.flatMap((each) => each.rows);
  if (engines.length === 0) {
    throw new UsageError(
      `no engine found in ${paths.join(', ')}`,
      'an engine is a folder with a document of kind: engine',
    );
  }
  if (options.partition) writePartitions(engines, options.to, format, world);
  else write({ named: options.to, workingDirectory: world.workingDirectory }, rows, format, world);
  world.out.write(writtenLines([`${plural(rows.length, 'row')} of ${plural(engines.length, 'engine')}`]));
  return hasProblems ? 2 : 0;
}

interface ExportedEngine {
  readonly folder: string;
  readonly rows: readonly ExportRow[];
}

interface AllRead {
  readonly engines: readonly ExportedEngine[];
  readonly hasProblems: boolean;
}

function readAll(paths: readonly string[], { at }: ExportOptions, world: World): AllRead {
  const source = sourceOf(at, paths[0] ?? '.', world);
  const reported = new Set<string>();
  let hasProblems = false;
  const engines = byShop(paths, source).flatMap(({ shop, selected }) =>
    shop.loader.find({ folders: selected.map(({ folder }) => folder) }).engines.flatMap((folder) => {
      const read = readEngine({ shop, folder }, world, reported);
      hasProblems ||= read.hasProblems;
      if (read.engine === undefined) return [];
      const rows = exportRows(reportEngine(read.engine, read.registry, {}), source.revision?.commit);
      return [{ folder, rows }];
    }),
  );
  return { engines, hasProblems };
}

/** `NAME/engine=FOLDER/NAME.parquet`, as engines of distributed data read one table: a file an engine. */
function writePartitions(
  engines: readonly ExportedEngine[],
  to: string,
  format: ExportFormat,
  world: World,
): void {
  const { workingDirectory } = world;
  const folder = to.slice(0, -format.ending.length);
  const name = `${folder.slice(folder.lastIndexOf('/') + 1)}${format.ending}`;
  for (const { folder: engine, rows } of engines) {
    const inner = `engine=${encodeURIComponent(engine)}`;
    orUsage(makeExportFolder({ named: folder, workingDirectory }, inner));
    write({ named: `${folder}/${inner}/${name}`, workingDirectory }, rows, format, world);
  }
}

function write(place: ExportPlace, rows: readonly ExportRow[], format: ExportFormat, { out }: World): void {
  const what = orUsage(writeExported(place, format.bytesOf(rows)));
  out.write(writtenLines([`${what.padEnd(9)}  ${place.named}`]));
}
