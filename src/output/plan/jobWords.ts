import { formatLimit, named, plusMinus, printingOf, readingText } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import { foundText } from '../../checks/open/found.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Position } from '../../layout/position.ts';
import { outText, type UnitFor } from '../../plan/closing/outText.ts';
import type { Decider } from '../../plan/work/instruments.ts';
import type { Job } from '../../plan/work/job.ts';
import { titleOf } from '../../plan/work/jobTitle.ts';
import { placesText } from '../../plan/work/placesText.ts';
import type { Urgency } from '../../plan/work/urgency.ts';
import { worstOf } from '../../plan/work/worst.ts';
import { formatUncertainty } from '../../quantity/format.ts';
import { byMeasure } from '../check/byMeasure.ts';
import { type CutWords, cutWords, stepsLeftText } from './cutWords.ts';
import { leftToSurface } from './leftToSurface.ts';

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
    title: serves === undefined ? titleOf(job, engine.document) : `${job.name}, for ${namesOf(serves)}`,
    urgency,
    isSupporting: serves !== undefined,
    cuts: [
      ...(job.cut === undefined ? [] : cutWords(job.cut, engine, unitFor)),
      ...leftToSurface(job, unitFor),
    ],
    why: whyLines(job, engine, unitFor),
    follows: followLines(job, before),
  };
}

/** `grind main journals, grind crankpins`. */
export const namesOf = (jobs: readonly Job[]): string => jobs.map(({ name }) => name).join(', ');

/** What follows several jobs is reported once. */
function followLines({ follows }: Job, before: readonly Job[]): readonly string[] {
  const same = before.find((each) => follows.length > 0 && each.follows === follows);
  return same === undefined ? follows : [`as for ${same.name}`];
}

function whyLines(job: Job, engine: Engine, unitFor: UnitFor): readonly string[] {
  const { rows, found, deciders, operation, suspects } = job;
  const figures = (of: readonly Row[]): string => figuresText(of, engine);
  if (operation === 'measure') return [`missing: ${figures(rows)}`];
  if (operation === 'measure again') {
    const undecided = rows.map((row, index) => undecidedText(row, deciders[index], unitFor));
    return [...new Set(suspects.flatMap(({ why }) => why ?? [])), ...undecided];
  }
  const [out, rest] = [rows.filter(isOut), rows.filter((row) => !isOut(row))];
  const byVerdict = new Map<string, Row[]>();
  for (const row of rest) {
    const verdict = row.judgement.verdict ?? '';
    byVerdict.set(verdict, [...(byVerdict.get(verdict) ?? []), row]);
  }
  return [
    ...found.map(foundText),
    ...byMeasure(out).flatMap((group) => outTexts(group, engine, unitFor)),
    ...[...byVerdict].map(([verdict, worn]) => `${verdict}: ${figures(worn)}`),
    ...(job.wouldCut ?? []).map(stepsLeftText),
  ];
}

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
export function figuresText(rows: readonly Row[], { document: { layout } }: Engine): string {
  const byLabel = new Map<string, Position[]>();
  for (const { characteristic, position } of rows) {
    byLabel.set(characteristic.label, [...(byLabel.get(characteristic.label) ?? []), position]);
  }
  return [...byLabel].map(([label, at]) => `${label} ${placesText(at, layout)}`.trim()).join('; ');
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
  const by = decider?.instruments.join(', ').replace(/, ([^,]*)$/, ' and $1');
  return decider === undefined
    ? `${reading}: no registered instrument decides it; repeat each point, or treat it as out`
    : `${reading}: measure again with ${by}, to ±${formatUncertainty(decider.expanded, printing.unit)}`;
}
