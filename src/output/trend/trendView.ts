import type { EngineState } from '../../compare/state.ts';
import type { Trend, TrendLine } from '../../compare/trend.ts';
import type { Outlook } from '../../compare/trendFit.ts';
import { plural } from '../../quantity/words.ts';
import { positionText } from '../check/view/rowView.ts';
import { heightText, outlookText, printingOfLine, rateText, unlikeReadings } from './trendWords.ts';

/** A trend in words: every format for a reader's eye is written from it. */
export interface TrendView {
  readonly heading: string;
  readonly about: string;
  readonly rows: readonly TrendRow[];
  /** What a reader must know before a number of the table is believed. */
  readonly notes: readonly string[];
}

export interface TrendRow {
  /** Empty for another line of the position before. */
  readonly position: string;
  readonly readings: string;
  readonly values: string;
  readonly rate: string;
  readonly outlook: string;
  readonly kind: Outlook['kind'];
}

export function trendView(
  engine: string,
  trend: Trend,
  unknownParts: readonly string[],
  unitFor: EngineState['unitFor'],
): TrendView {
  const { characteristic, axis, lines } = trend;
  const [first] = lines;
  const unit = first === undefined ? '' : `, ${unitFor(first.row).name}`;
  return {
    heading: `${characteristic.label}${unit}`,
    about: `${engine}, ${axis === 'hours' ? 'by running hours' : 'by date'}`,
    rows: lines.map((each, index) => rowOf(each, lines[index - 1], axis, unitFor)),
    notes: notesOf(trend, unknownParts),
  };
}

function rowOf(
  of: TrendLine,
  before: TrendLine | undefined,
  axis: Trend['axis'],
  unitFor: EngineState['unitFor'],
): TrendRow {
  const printing = printingOfLine(of, unitFor);
  const [first, last] = [of.points[0], of.points.at(-1)];
  const values = [first, ...(of.points.length > 1 ? [last] : [])].flatMap((point) => point ?? []);
  const isNext = before?.row.position.key === of.row.position.key;
  return {
    position: isNext ? '' : positionText(of.row),
    readings: plural(of.points.length, 'reading'),
    values: values.map(({ y }) => heightText(y, printing)).join(' → '),
    rate: rateText(of, axis, printing),
    outlook: outlookText(of, axis, printing),
    kind: of.fit.outlook.kind,
  };
}

function notesOf(
  { characteristic, lines, withoutHours }: Trend,
  unknownParts: readonly string[],
): readonly string[] {
  const started = new Map<string, string[]>();
  const unlike = new Map<string, string[]>();
  const gather = (into: Map<string, string[]>, key: string, { row }: TrendLine): void => {
    if (key !== '') into.set(key, [...(into.get(key) ?? []), row.position.name]);
  };
  for (const line of lines) {
    const [first] = line.points;
    const since = `${first?.session.stage} ${first?.session.date}`;
    gather(started, line.startedBy === undefined ? '' : `a new line since ${since}: ${line.startedBy}`, line);
    gather(unlike, unlikeReadings(line), line);
  }
  const at = (positions: readonly string[]): string =>
    characteristic.family.isSingle ? '' : ` (${positions.join(', ')})`;
  return [
    ...followedNote(lines),
    ...[...started].map(([text, positions]) => `${text}${at(positions)}`),
    ...[...unlike].map(([text, positions]) => `not like for like${at(positions)}: ${text}`),
    ...unknownParts.map(
      (part) => `${part}: not known which readings that concerns, so no new line begins there`,
    ),
    ...(withoutHours.length === 0
      ? []
      : [`by date: no hours in ${withoutHours.map(({ name }) => name).join(', ')}`]),
    ...(characteristic.figure === 'taper' || characteristic.figure === 'out of round' ? [BIAS] : []),
  ];
}

/** A round journal shows a tenth out of round more often than not when a reading scatters by three to five tenths. */
const BIAS =
  'a greatest less a least: the scatter of the readings alone makes it larger, so a small value is less than it looks';

function followedNote(lines: readonly TrendLine[]): readonly string[] {
  const followed = [...new Set(lines.map((line) => line.followed))].filter((each) => each !== 'mean');
  return followed.map((each) => `the ${each} of each session's readings, which meets its limit first`);
}
