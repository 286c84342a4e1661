import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import { didYouMean } from '../../diagnostic/suggestion.ts';
import { childOf, entriesOf, itemsOf, textAt, textOf, textsOf } from '../../documents/yaml/access.ts';
import { loadYaml } from '../../documents/yaml/loader.ts';
import type { Node, Span } from '../../documents/yaml/node.ts';
import { findUnit, type Unit } from '../../quantity/units.ts';

/** A column of readings: where along and round the part they were taken, if the heading says so. */
export interface ReadingColumn {
  readonly heading: string;
  readonly station: string | undefined;
  readonly direction: string | undefined;
}

/** How the columns of a spreadsheet become readings. Headings are as they stand in the file's first row. */
export interface Mapping {
  readonly readings: readonly ReadingColumn[];
  readonly measureColumn: string | undefined;
  /** The id where every row is of one characteristic. */
  readonly measure: string | undefined;
  /** What the spreadsheet calls a characteristic, and its id. */
  readonly measures: ReadonlyMap<string, string>;
  /** One, or one for each coordinate: `[Cylinder, Ring]`. */
  readonly positionColumns: readonly string[];
  readonly stationColumn: string | undefined;
  readonly directionColumn: string | undefined;
  readonly withColumn: string | undefined;
  readonly noteColumn: string | undefined;
  /** What the readings were taken with, where no column says it. */
  readonly instrument: string | undefined;
  readonly delimiter: ',' | ';' | '\t';
  readonly decimal: '.' | ',';
  readonly unit: Unit;
  /** Decimals to which zeros that a spreadsheet dropped are put back; undefined takes digits as they stand. */
  readonly decimals: number | undefined;
}

export type MappingResult =
  | { readonly ok: true; readonly value: Mapping }
  | { readonly ok: false; readonly problems: readonly Diagnostic[]; readonly text: string };

const DELIMITERS = new Map<string, Mapping['delimiter']>([
  ['comma', ','],
  ['semicolon', ';'],
  ['tab', '\t'],
]);
const DECIMALS = new Map<string, Mapping['decimal']>([
  ['point', '.'],
  ['comma', ','],
]);
const COLUMN_KEYS = [
  'measure',
  'position',
  'station',
  'direction',
  'with',
  'note',
  'value',
  'values',
] as const;
const KEYS = ['columns', 'measure', 'measures', 'with', 'delimiter', 'decimal', 'unit', 'decimals'] as const;

/** Reads a mapping; nothing in it is guessed, and every problem is reported. */
export function readMapping(shown: string, bytes: Uint8Array): MappingResult {
  const { source, root, diagnostics } = loadYaml(shown, bytes);
  const problems = [...diagnostics];
  const say = (span: Span | undefined, message: string, help?: string): undefined => {
    problems.push(diagnostic('value', source.place(span ?? { start: 0, end: 0 }), message, help));
  };
  const word = <T>(key: string, known: ReadonlyMap<string, T>): T | undefined => {
    const text = textAt(root, key);
    const found = text === undefined ? undefined : known.get(text);
    const choices = [...known.keys()].join(' or ');
    return found ?? say(childOf(root, key)?.span, `\`${key}:\` must be stated: ${choices}`);
  };
  const columns = childOf(root, 'columns');
  refuseUnknown(root, KEYS, say);
  refuseUnknown(columns, COLUMN_KEYS, say);
  const unit = findUnit(textAt(root, 'unit') ?? '');
  if (unit === undefined) say(childOf(root, 'unit')?.span, '`unit:` must be stated, such as in or mm');
  const readings = readReadings(columns);
  if (readings.length === 0)
    say(columns?.span, '`columns:` names no readings', 'write `value:` and the heading of the readings');
  const measureColumn = textAt(columns, 'measure');
  const measure = textAt(root, 'measure');
  if (measureColumn === undefined && measure === undefined) {
    say(
      columns?.span,
      'what is measured is not stated',
      'write `measure: ID`, or `columns: { measure: HEADING }`',
    );
  }
  const delimiter = word('delimiter', DELIMITERS);
  const decimal = word('decimal', DECIMALS);
  const decimals = readDecimals(root, say);
  if (
    problems.length > 0 ||
    unit === undefined ||
    delimiter === undefined ||
    decimal === undefined ||
    decimals === undefined
  ) {
    return { ok: false, problems, text: source.text };
  }
  return {
    ok: true,
    value: {
      readings,
      measureColumn,
      measure,
      measures: new Map(
        entriesOf(childOf(root, 'measures')).map(({ key, node }) => [key, textOf(node) ?? '']),
      ),
      positionColumns: textsOf(childOf(columns, 'position')),
      stationColumn: textAt(columns, 'station'),
      directionColumn: textAt(columns, 'direction'),
      withColumn: textAt(columns, 'with'),
      noteColumn: textAt(columns, 'note'),
      instrument: textAt(root, 'with'),
      delimiter,
      decimal,
      unit,
      decimals: decimals === 'as written' ? undefined : decimals,
    },
  };
}

type Say = (span: Span | undefined, message: string, help?: string) => undefined;

function refuseUnknown(node: Node | undefined, known: readonly string[], say: Say): void {
  for (const { key, keySpan } of entriesOf(node)) {
    if (!known.includes(key))
      say(keySpan, `unknown key \`${key}\``, didYouMean(key, known) ?? `it takes ${known.join(', ')}`);
  }
}

/** `value: Reading`, or `values: { Front A: [front, throw], Rear A: [rear, throw] }`. */
function readReadings(columns: Node | undefined): readonly ReadingColumn[] {
  const value = textAt(columns, 'value');
  const single = value === undefined ? [] : [{ heading: value, station: undefined, direction: undefined }];
  const many = entriesOf(childOf(columns, 'values')).map(({ key, node }) => {
    const [station, direction] = itemsOf(node).map((item) => textOf(item));
    return { heading: key, station: station ?? textOf(node), direction };
  });
  return [...single, ...many];
}

function readDecimals(root: Node | undefined, say: Say): number | 'as written' | undefined {
  const text = textAt(root, 'decimals');
  if (text === 'as written') return text;
  if (text !== undefined && /^[0-9]$/.test(text)) return Number(text);
  return say(
    childOf(root, 'decimals')?.span,
    '`decimals:` must be stated: spreadsheets drop the zeros at the end of a number',
    'write `decimals: 4` to have them put back, or `decimals: as written`',
  );
}

/** A mapping to be filled in, from the headings of a file. */
export const mappingText = (headings: readonly string[], name: string, unit: string): string => {
  const list = headings.map((heading) => JSON.stringify(heading)).join(', ');
  return `# How the columns of a spreadsheet become readings: tenths import FILE.csv --map ${name}
# Its headings are ${list}.
columns:
  position: ${JSON.stringify(headings[0] ?? 'Position')}
  # One reading a row:
  value: ${JSON.stringify(headings[1] ?? 'Reading')}
  # or several, with their station and direction: values: { "Front A": [front, throw], "Rear A": [rear, throw] }
  # Also, where the file has such a column: measure, station, direction, with, note.
# What is measured, where no column says it; what a column calls it: measures: { Main journal: main_journal_diameter }
measure: main_journal_diameter
# with: mic-3-4         # the instrument, where no column says it
delimiter: comma        # comma, semicolon or tab
decimal: point          # point or comma
unit: ${unit}
decimals: as written    # or how many the instrument shows: 4 puts back the zeros that a spreadsheet dropped
`;
};
