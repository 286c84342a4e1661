import type { Mapping } from '../../bench/import/mapping.ts';
import { type Known, knownRows, provenanceOf, provenanceText } from '../../bench/import/provenance.ts';
import {
  type CellProblem,
  type ImportedReadings,
  problemOfFile,
  readingsOf,
} from '../../bench/import/readings.ts';
import { writtenBlocks } from '../../bench/record/writtenBlocks.ts';
import { schemaPath } from '../../bench/scaffold/madeFile.ts';
import { sessionText } from '../../bench/sessionText.ts';
import type { Csv } from '../../documents/csv.ts';
import { folderOf } from '../../documents/opened.ts';
import type { ImportedRows } from '../../documents/session/imported.ts';
import { appendItem, insertEntry } from '../../documents/writing/splice.ts';
import { type Line, writtenLines, writtenText } from '../../output/escape/line.ts';
import { plural } from '../../quantity/words.ts';
import { fileOfCall, pathOnDisk } from '../../shell/discover/paths.ts';
import { readBelow } from '../../shell/discover/safeRead.ts';
import { done, type Outcome } from '../../shell/problem.ts';
import { sha256 } from '../../shell/process/digest.ts';
import { thisProcess } from '../../shell/process/thisProcess.ts';
import type { World } from '../../shell/world.ts';
import { changeFile } from '../../shell/write/change.ts';
import { nodeFiles } from '../../shell/write/fileLayer.ts';
import { makeFolder } from '../../shell/write/folders.ts';
import { check } from '../check/check.ts';
import { checkedDate } from '../new/new.ts';
import { type BenchEngine, benchEngine, inEngine } from '../record/benchEngine.ts';
import { type RecordTarget, recordTarget, type TargetOptions } from '../record/recordTarget.ts';
import { filledText } from '../record/recordWrite.ts';
import { UsageError } from '../usage.ts';
import { delimiterOf, newMapping, openMapping, readCsv } from './importMapping.ts';

export interface ImportOptions extends TargetOptions {
  readonly engine?: string;
  readonly map?: string;
  readonly newMap?: string;
  readonly dryRun?: boolean;
}

/** Brings readings of a spreadsheet into a session, once however often it is called. The exit code. */
export async function importCsv(file: string, options: ImportOptions, world: World): Promise<number> {
  const opened = benchEngine(options.engine, world);
  const text = readText(file, world);
  const mapping = options.newMap === undefined ? openMapping(options.map, opened, world) : 'new';
  if (mapping === undefined) return 2;
  const delimiter = mapping === 'new' ? delimiterOf(text) : mapping.delimiter;
  const csv = await readCsv(text, delimiter);
  if (csv.problems.length > 0) return reportProblems(file, csv.problems.map(problemOfFile), world);
  return mapping === 'new'
    ? newMapping(options.newMap ?? '', csv, delimiter, opened, world)
    : importRows(file, csv, mapping, opened, options, world);
}

async function importRows(
  file: string,
  csv: Csv,
  mapping: Mapping,
  opened: BenchEngine,
  options: ImportOptions,
  world: World,
): Promise<number> {
  const known = knownRows(nameOf(file), csv, opened.engine.sessions, sha256);
  const fresh = newRows(file, csv, known);
  if (fresh === 0) {
    const rows = plural(csv.rows.length - 1, 'row');
    const reported = `Nothing is new: ${rows} of ${nameOf(file)} are in ${known.session ?? ''} already`;
    world.err.write(writtenLines([reported]));
    return 0;
  }
  const readings = readingsOf(csv, mapping, known.count, opened.engine, opened.registry);
  if (readings.problems.length > 0) return reportProblems(file, readings.problems, world);
  if (readings.taken.size === 0)
    throw new UsageError(`${file} holds no reading`, 'see columns: of the mapping');
  const target = recordTarget(opened, options, world);
  const rows = provenanceOf(nameOf(file), csv, csv.rows.length - 1, sha256);
  return options.dryRun === true
    ? showDry(opened, target, options, readings, rows, world)
    : await write(opened, target, options, readings, rows, world);
}

function newRows(file: string, csv: Csv, known: Known): number {
  if (known.kind === 'changed') {
    throw new UsageError(
      `the first ${known.count} rows of ${file} are not those that came into ${known.session}`,
      `correct readings in the session; to import it as another file, rename it`,
    );
  }
  if (csv.rows.length < 2) throw new UsageError(`${file} has no rows below its headings`);
  return csv.rows.length - 1 - known.count;
}

/** Any file that the user names; a spreadsheet need not lie in the shop. */
function readText(file: string, { workingDirectory }: World): string {
  const { folder, name } = fileOfCall(file, workingDirectory);
  const bytes = readBelow(folder, name, MOST_BYTES);
  if (!bytes.ok) throw new UsageError(bytes.problem.message, bytes.problem.help);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes.value);
  } catch {
    throw new UsageError(`${file} is not in UTF-8`, 'save it from the spreadsheet as CSV UTF-8');
  }
}

const nameOf = (path: string): string => path.replace(/^.*[\\/]/, '');

const MOST_BYTES = 8 * 1024 * 1024;
/** `bores.csv:12:7`, then the row and the heading, as a spreadsheet counts them. */
function reportProblems(file: string, problems: readonly CellProblem[], { err }: World): number {
  const reported = problems.flatMap(({ line, column, where, message, help }): readonly Line[] => [
    `${file}:${line}:${column} ${where}: ${message}`,
    ...(help === undefined ? [] : [`    ${help}`]),
  ]);
  err.write(writtenLines([...reported, `${plural(problems.length, 'problem')}; nothing was written`]));
  return 2;
}

function newText(
  { folder, registry }: BenchEngine,
  options: ImportOptions,
  { taken, blocks }: ImportedReadings,
  rows: ImportedRows,
  world: World,
): string {
  const head = {
    stage: options.stage ?? ('service' as const),
    date: checkedDate(options.date, world),
    by: options.by,
    schema: schemaPath(inEngine({ folder }, 'sessions'), 'session'),
  };
  const text = sessionText(head, [], writtenBlocks(blocks, taken, registry));
  return `${text}imported:\n  - ${provenanceText(rows)}\n`;
}

/** The readings put into an existing session, with where they came from. */
function addedText(
  opened: BenchEngine,
  { path }: RecordTarget,
  before: Uint8Array,
  { taken, blocks }: ImportedReadings,
  rows: ImportedRows,
): Outcome<string> {
  const filled = filledText(opened, path, before, blocks, taken);
  if (!filled.ok) return filled;
  const item = provenanceText(rows);
  const again = appendItem(filled.value, ['imported'], item);
  const noted = again.ok ? again : insertEntry(filled.value, [], 'imported', `- ${item}`);
  return noted.ok ? done(noted.value.text) : noted;
}

function showDry(
  opened: BenchEngine,
  target: RecordTarget,
  options: ImportOptions,
  readings: ImportedReadings,
  rows: ImportedRows,
  world: World,
): number {
  const bytes = target.existing === undefined ? undefined : readBelow(opened.root, target.path, MOST_BYTES);
  if (bytes?.ok === false) throw new UsageError(bytes.problem.message, bytes.problem.help);
  const text =
    bytes === undefined
      ? done(newText(opened, options, readings, rows, world))
      : addedText(opened, target, bytes.value, readings, rows);
  if (!text.ok) throw new UsageError(text.problem.message, text.problem.help);
  world.out.write(writtenText(text.value));
  world.err.write(writtenLines(['', `${target.path} would hold this; nothing was written`]));
  return 0;
}

async function write(
  opened: BenchEngine,
  target: RecordTarget,
  options: ImportOptions,
  readings: ImportedReadings,
  rows: ImportedRows,
  world: World,
): Promise<number> {
  const { root } = opened;
  const folder = makeFolder(root, folderOf(target.path));
  if (!folder.ok) throw new UsageError(folder.problem.message, folder.problem.help);
  const destination = { files: nodeFiles, self: thisProcess, root, path: target.path };
  const written = changeFile<string>(destination, (before) => {
    const text: Outcome<string> =
      before === undefined
        ? done(newText(opened, options, readings, rows, world))
        : addedText(opened, target, before, readings, rows);
    return text.ok ? done(Buffer.from(text.value)) : text;
  });
  if (!written.ok) throw new UsageError(written.problem.message, written.problem.help);
  const count = plural(readings.taken.size, 'reading');
  world.err.write(writtenLines([`${count} from ${rows.file} into ${target.path}`, '']));
  return check(
    [pathOnDisk(root, target.path)],
    { format: [{ format: 'text' }], strict: false, detail: false },
    world,
  );
}
