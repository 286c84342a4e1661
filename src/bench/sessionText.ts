import type { Stage } from '../documents/session/stage.ts';
import { keyText, valueText } from '../documents/writing/keyText.ts';
import type { Family } from '../layout/family.ts';
import type { Position } from '../layout/position.ts';
import type { PlannedGrid } from './grids.ts';

export interface SessionHead {
  readonly stage: Stage;
  /** `YYYY-MM-DD`. */
  readonly date: string;
  readonly by: string | undefined;
  /** The path to the session's schema from where it will stand; undefined leaves the line out. */
  readonly schema: string | undefined;
}

/** A block of readings as it is to stand in a session. */
export interface WrittenBlock {
  readonly measure: string;
  readonly family: Family;
  readonly halves: boolean;
  readonly instrument: string | undefined;
  /** The gauge's master, and what its numbers count, where it shows deviations. */
  readonly zero: GaugeZero | undefined;
  readonly grid: PlannedGrid;
  readonly at: readonly WrittenPosition[];
  /** Lines of text put above the block as comments. */
  readonly comments: readonly string[];
}

export const GAUGE_COUNTS = ['tenths', 'thou', 'hundredths'] as const;

/** What the numbers of a block count from, and in what. */
export interface GaugeZero {
  /** The master, or `journal`. */
  readonly setTo?: string;
  /** A size that is only added, instead of a master. */
  readonly base?: string;
  readonly counts: (typeof GAUGE_COUNTS)[number] | undefined;
}

/** A position and its points as YAML: a row a station, a column a direction, `~` where none was taken. */
export interface WrittenPosition {
  readonly position: Position;
  readonly rows: readonly (readonly string[])[];
}

/** A session as a person would write it. */
export function sessionText(head: SessionHead, comments: readonly string[], blocks: readonly WrittenBlock[]) {
  const lines = [
    ...(head.schema === undefined ? [] : [schemaLine(head.schema)]),
    ...comments.map(comment),
    'kind: session',
    `stage: ${head.stage}`,
    `date: ${head.date}`,
    ...(head.by === undefined ? [] : [`by: ${valueText(head.by)}`]),
    blocks.length === 0 ? 'readings: []' : 'readings:',
    ...blocks.flatMap((block) => [
      ...block.comments.map((line) => `  ${comment(line)}`),
      ...asItem(blockText(block)).map((line) => `  ${line}`),
    ]),
  ];
  return `${lines.join('\n')}\n`;
}

export const schemaLine = (path: string): string => `# yaml-language-server: $schema=${path}`;

export const comment = (line: string): string => (line === '' ? '#' : `# ${line}`);

const asItem = (text: string): readonly string[] =>
  text.split('\n').map((line, index) => `${index === 0 ? '-' : ' '} ${line}`);

/** A block's own text, as it stands at the left margin. */
export function blockText(block: WrittenBlock): string {
  const { measure, instrument, zero, grid } = block;
  const lines = [
    `measure: ${measure}`,
    ...(instrument === undefined ? [] : [`with: ${keyText(instrument)}`]),
    ...(zero?.setTo === undefined ? [] : [`set_to: ${zero.setTo}`]),
    ...(zero?.base === undefined ? [] : [`base: ${zero.base}`]),
    ...(zero?.counts === undefined ? [] : [`in: ${zero.counts}`]),
    ...(block.halves || grid.fromShop ? [] : [...stationLines(grid)]),
    ...(block.halves || grid.fromShop ? [] : [...names('directions', grid.directions)]),
    ...readingLines(block),
  ];
  return lines.join('\n');
}

const stationLines = ({ stations, distances }: PlannedGrid): readonly string[] =>
  distances === undefined
    ? names('stations', stations)
    : [
        `stations: { ${stations.map((name, at) => `${nameText(name)}: ${distances[at] ?? '~'}`).join(', ')} }`,
      ];

const names = (key: string, list: readonly string[]): readonly string[] =>
  list.length === 0 ? [] : [`${key}: [${list.map(nameText).join(', ')}]`];

/** `+45` bare would be read as a number and lose its sign. */
const nameText = (name: string): string => (/^[-+]/.test(name) ? JSON.stringify(name) : keyText(name));

function readingLines(block: WrittenBlock): readonly string[] {
  const { writtenUnder } = block.family;
  if (writtenUnder === 'value')
    return block.at.map((each) => `value: ${positionText(each, block.grid, false)}`);
  if (writtenUnder === 'after') return ['after:', ...block.at.map(stepText)];
  return ['at:', ...nestedLines(block.at, 0, block).map((line) => `  ${line}`)];
}

/** A key for each coordinate: what has the same first ones stands below them together. */
function nestedLines(all: readonly WrittenPosition[], depth: number, block: WrittenBlock): readonly string[] {
  const last = block.family.axes.length - 1;
  const keys = [...new Set(all.map(({ position }) => position.written[depth] ?? ''))];
  return keys.flatMap((key) => {
    const here = all.filter(({ position }) => position.written[depth] === key);
    return depth === last
      ? here.map((each) => `${keyText(key)}: ${positionText(each, block.grid, block.halves)}`)
      : [`${keyText(key)}:`, ...nestedLines(here, depth + 1, block).map((line) => `  ${line}`)];
  });
}

/** A note stands beside the step's value and not within it. */
function stepText({ position, rows }: WrittenPosition): string {
  const cell = rows[0]?.[0] ?? '~';
  const inside = /^\{ (.+) \}$/.exec(cell)?.[1] ?? `value: ${cell}`;
  return `  - { step: ${keyText(position.name)}, ${inside} }`;
}

function positionText({ rows }: WrittenPosition, grid: PlannedGrid, halves: boolean): string {
  const [first = []] = rows;
  if (halves && rows.length === 2) return `{ upper: ${rows[0]?.[0] ?? '~'}, lower: ${rows[1]?.[0] ?? '~'} }`;
  if (rows.length === 1 && first.length === 1 && grid.stations.length === 0) return first[0] ?? '~';
  if (grid.stations.length === 0) return listText(first);
  if (grid.directions.length === 0) return listText(rows.flat());
  return listText(rows.map(listText));
}

const listText = (items: readonly string[]): string => `[${items.join(', ')}]`;
