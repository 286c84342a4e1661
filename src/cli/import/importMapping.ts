import { type Mapping, mappingText, readMapping } from '../../bench/import/mapping.ts';
import { madeFile } from '../../bench/scaffold/madeFile.ts';
import type { Csv } from '../../documents/csv.ts';
import { stemOf } from '../../documents/stem.ts';
import { diagnosticsLines } from '../../output/check/runText.ts';
import { writtenLines } from '../../output/escape/line.ts';
import { discover } from '../../shell/discover/discover.ts';
import { pathOnDisk, shopPath } from '../../shell/discover/paths.ts';
import { readBelow } from '../../shell/discover/safeRead.ts';
import { shownPath } from '../../shell/discover/store.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import { makeFiles } from '../../shell/write/makeFiles.ts';
import { printMade } from '../new/printMade.ts';
import type { BenchEngine } from '../record/benchEngine.ts';
import { UsageError } from '../usage.ts';

const MOST_BYTES = 256 * 1024;
const FOLDER = 'imports';

/** The mapping of a call; undefined where it has problems, which are reported. */
export function openMapping(
  name: string | undefined,
  { root }: BenchEngine,
  world: World,
): Mapping | undefined {
  const path = mappingPath(name, root, world);
  const bytes = readBelow(root, path, MOST_BYTES);
  if (!bytes.ok) throw new UsageError(bytes.problem.message, 'make one with --new-map NAME');
  const shown = shownPath(pathOnDisk(root, path), world.workingDirectory);
  const mapping = readMapping(shown, bytes.value);
  if (mapping.ok) return mapping.value;
  const style = textStyle(world.err, world.environment, false);
  world.err.write(writtenLines(diagnosticsLines(mapping.problems, new Map([[shown, mapping.text]]), style)));
  return undefined;
}

/** Named, or the only one of the shop. */
function mappingPath(name: string | undefined, root: string, { workingDirectory }: World): string {
  if (name !== undefined && /\.ya?ml$/.test(name)) return shopPath(root, name, workingDirectory);
  if (name !== undefined) return `${FOLDER}/${name}.yaml`;
  const found = discover(root, [FOLDER], { below: false }).paths;
  const [first, second] = found;
  if (first === undefined)
    throw new UsageError('no mapping says what the columns are', 'make one with --new-map NAME');
  if (second === undefined) return first;
  throw new UsageError(`there are several mappings: ${found.map(stemOf).join(', ')}`, 'name one with --map');
}

/** No other command needs what reads a spreadsheet, so none has to load it. */
export async function readCsv(text: string, delimiter: string): Promise<Csv> {
  const { parseCsv } = await import('../../documents/csv.ts');
  return parseCsv(text, delimiter);
}

/** What a spreadsheet puts between cells, by the first line of its file. */
export const delimiterOf = (text: string): string => {
  const [first = ''] = text.split(/\r?\n/);
  return [';', '\t', ','].find((each) => first.includes(each)) ?? ',';
};

const hasDecimalComma = (rows: Csv['rows']): boolean =>
  rows.some((row) => row.some(({ text }) => /^[-+]?\d+,\d+$/.test(text.trim())));

/** Makes a mapping to be filled in from the headings of a file. The exit code. */
export function newMapping(
  name: string,
  { rows }: Csv,
  delimiter: string,
  { root, engine }: BenchEngine,
  world: World,
): number {
  const headings = (rows[0] ?? []).map((cell) => cell.text);
  const word = { ';': 'semicolon', '\t': 'tab' }[delimiter] ?? 'comma';
  const file = madeFile(
    `${FOLDER}/${name}.yaml`,
    mappingText(headings, name, engine.units.get('length')?.name ?? 'in')
      .replace('delimiter: comma  ', `delimiter: ${word}  `)
      .replace('decimal: point', `decimal: ${hasDecimalComma(rows) ? 'comma' : 'point'}`),
  );
  const results = makeFiles(root, [file]);
  const code = printMade(results, world);
  if (code === 0)
    world.out.write(
      writtenLines([
        '',
        'Next:',
        `  edit ${file.path}`,
        `  tenths import FILE.csv --map ${name} --stage STAGE --dry-run`,
      ]),
    );
  return code;
}
