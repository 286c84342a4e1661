import { formatLimit, named, plusMinus, printingOf, readingText } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import { foundText } from '../../checks/open/found.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Position } from '../../layout/position.ts';
import { outText, type UnitFor } from '../../plan/closing/outText.ts';
import type { Decider } from '../../plan/work/instruments.ts';
import type { Job, ReadAgain } from '../../plan/work/job.ts';
import { titleOf } from '../../plan/work/jobTitle.ts';
import { placesText } from '../../plan/work/placesText.ts';
import type { Urgency } from '../../plan/work/urgency.ts';
import { worstOf } from '../../plan/work/worst.ts';
import { formatUncertainty } from '../../quantity/format.ts';
import { namesOrSome } from '../../quantity/words.ts';
import { byMeasure } from '../check/byMeasure.ts';
import { type CutWords, cutWords, stepsLeftText } from './cutWords.ts';
import { leftToSurface } from './leftToSurface.ts';
import { measureLines, unmeasuredName } from './measureWords.ts';

/** A job in words, for every way to print it. */
export interface JobWords {
  /** `grind main journals 1 to 7`. */
  readonly title: string;
  readonly urgency: Urgency;
  /** What comes with other jobs, in one line. */
  readonly isSupporting: boolean;
  readonly cuts: readonly CutWords[];
  readonly why: readonly string[];
  readonly follows: readonly string[];
}

export function jobWords(job: Job, before: readonly Job[], engine: Engine, unitFor: UnitFor): JobWords {
  const { urgency, serves } = job;
  return {
    title: serves === undefined ? titleText(job, engine) : `${job.name}, for ${namesOf(serves)}`,
    urgency,
    isSupporting: serves !== undefined,
    cuts: [
      ...(job.cut === undefined ? [] : cutWords(job.cut, engine, unitFor)),
      ...leftToSurface(job, unitFor),
    ],
    why: whyLines(job, before, engine, unitFor),
    follows: [...againLines(job.suspects, engine), ...followLines(job, before)],
  };
}

/** With its places; of what is measured its figures and theirs: `measure again main journal diameter 3`. */
export function titleText(job: Job, engine: Engine): string {
  const { name, operation, rows, suspects, unmeasured = [] } = job;
  if (operation !== 'measure' && operation !== 'measure again') return titleOf(job, engine.document);
  const figures = [
    ...figureTexts([...rows, ...suspects.map(({ row }) => row)], engine),
    ...unmeasured.map((each) => unmeasuredName(each, engine)),
  ];
  return `${name} ${namesOrSome(figures, 'figures')}`;
}

/** `grind main journals, grind crankpins`: what must and what should be renewed of one kind once. */
export const namesOf = (jobs: readonly Job[]): string =>
  [...new Set(jobs.map(({ name }) => name))].join(', ');

/** What follows several jobs is reported once. */
function followLines({ follows }: Job, before: readonly Job[]): readonly string[] {
  const same = before.find((each) => follows.length > 0 && each.follows === follows);
  return same === undefined ? follows : [`as for ${same.name}`];
}

function whyLines(job: Job, before: readonly Job[], engine: Engine, unitFor: UnitFor): readonly string[] {
  const { rows, found, deciders, operation } = job;
  if (operation === 'measure') return measureLines(job, engine);
  if (operation === 'measure again') {
    const undecided = rows.map((row, index) => undecidedText(row, deciders[index], unitFor));
    return [...doubtLines(job, before, engine), ...undecided];
  }
  return [
    ...doubtLines(job, before, engine),
    ...found.map(foundText),
    ...reasonTexts(rows, engine, unitFor),
    ...(job.wouldCut ?? []).map(stepsLeftText),
  ];
}

/** What is out with its numbers, and all else by its verdict. */
export function reasonTexts(rows: readonly Row[], engine: Engine, unitFor: UnitFor): readonly string[] {
  const [out, rest] = [rows.filter(isOut), rows.filter((row) => !isOut(row))];
  const byVerdict = new Map<string, Row[]>();
  for (const row of rest) {
    const verdict = row.judgement.verdict ?? '';
    byVerdict.set(verdict, [...(byVerdict.get(verdict) ?? []), row]);
  }
  return [
    ...byMeasure(out).flatMap((group) => outTexts(group, engine, unitFor)),
    ...[...byVerdict].map(([verdict, worn]) => `${verdict}: ${figuresText(worn, engine)}`),
  ];
}

/** What one finding says of the parts of several jobs is told once. */
function doubtLines({ suspects }: Job, before: readonly Job[], engine: Engine): readonly string[] {
  const lines = doubtTexts(suspects, engine).map((text) => {
    const same = before.find((each) => doubtTexts(each.suspects, engine).includes(text));
    return same === undefined ? text : `as for ${same.name}`;
  });
  return [...new Set(lines)];
}

/** Of many of one figure the first with its reason, the others by their places. */
function doubtTexts(suspects: readonly ReadAgain[], { document: { layout } }: Engine): readonly string[] {
  return [...new Set(suspects.map(({ row }) => row.characteristic))].flatMap((of) => {
    const same = suspects.filter(({ row }) => row.characteristic === of);
    const whys = [...new Set(same.flatMap(({ why }) => why ?? []))];
    if (whys.length <= MOST_TOLD) return whys;
    const others = same.filter(({ why }) => why !== whys[0]).map(({ row }) => row.position);
    return [`${whys[0]}; also in doubt: ${placesText(others, layout)}`];
  });
}

/** With what each reading in doubt is read once more, and what makes an end of the doubt. */
function againLines(suspects: readonly ReadAgain[], engine: Engine): readonly string[] {
  // What fits another size than is stated was read well enough.
  const doubted = suspects.filter(({ settledBy }) => settledBy !== 'size');
  const ways = [...new Set(doubted.map(({ instruments }) => listed(instruments)))];
  const read = ways.map((names) => {
    const rows = doubted.flatMap(({ row, instruments }) => (listed(instruments) === names ? [row] : []));
    const where = ways.length > 1 ? `: ${figuresText(rows, engine)}` : '';
    return `read again${names === '' ? '' : ` with ${names}`}${where}`;
  });
  return [...read, ...new Set(suspects.map(({ settledBy }) => SETTLED[settledBy]))];
}

const SETTLED: Readonly<Record<ReadAgain['settledBy'], string>> = {
  reading:
    'mend a figure that was wrong; one that reads the same in a second block or a later session is believed',
  figure: 'mend the figure that cannot be',
  size: 'state the size that is stamped on the part: machined: or fitted:',
};

/** `bore and mic`. */
const listed = (names: readonly string[]): string => names.join(', ').replace(/, ([^,]*)$/, ' and $1');

const isOut = ({ judgement }: Row): boolean => judgement.verdict === 'out';

/** Of how many of one characteristic each is reported by itself; a page of a whole engine must not take three sheets. */
const MOST_TOLD = 3;

/** Of many the worst with its numbers, the others by their places. */
export function outTexts(
  rows: readonly Row[],
  { document: { layout } }: Engine,
  unitFor: UnitFor,
): readonly string[] {
  const worst = worstOf(rows) ?? rows[0];
  if (rows.length <= MOST_TOLD || worst === undefined) return rows.map((row) => failedText(row, unitFor));
  const others = rows.filter((row) => row !== worst).map(({ position }) => position);
  return [`${failedText(worst, unitFor)}; also out: ${placesText(others, layout)}`];
}

/** `crankshaft crack test failed: cracked`; of a figure how far it is past its limit. */
function failedText(row: Row, unitFor: UnitFor): string {
  const { outcomes } = row.characteristic;
  return outcomes === undefined ? outText(row, unitFor) : `${named(row)} failed: ${outcomes.fail}`;
}

/** By one characteristic: `crankpin diameter 2, 4, 5; crankpin out of round 2`. */
export const figuresText = (rows: readonly Row[], engine: Engine): string =>
  figureTexts(rows, engine).join('; ');

function figureTexts(rows: readonly Row[], { document: { layout } }: Engine): readonly string[] {
  const byLabel = new Map<string, Position[]>();
  for (const { characteristic, position } of rows) {
    byLabel.set(characteristic.label, [...(byLabel.get(characteristic.label) ?? []), position]);
  }
  return [...byLabel].map(([label, at]) => `${label} ${placesText(at, layout)}`.trim());
}

function undecidedText(row: Row, decider: Decider | undefined, unitFor: UnitFor): string {
  const printing = printingOf(row, unitFor);
  const [judged] = row.routes;
  if (judged === undefined) return named(row);
  const { min, max } = row.judgement.deciding;
  const limits = [min, max].flatMap((limit) =>
    limit === undefined ? [] : formatLimit(limit.amount, printing.unit, printing.decimals),
  );
  const reading = `${named(row)}: ${readingText(judged, printing)} ${printing.unit.name} at ${plusMinus(judged.route, printing.unit)}, limits ${limits.join(' and ')}`;
  return decider === undefined
    ? `${reading}: no registered instrument decides it; repeat each point, or treat it as out`
    : `${reading}: measure again with ${listed(decider.instruments)}, to ±${formatUncertainty(decider.expanded, printing.unit)}`;
}
