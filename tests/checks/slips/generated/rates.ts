import type { Finding } from '../../../../src/checks/finding.ts';
import { judgeSession } from '../../../../src/checks/judge/session.ts';
import { engineOf, opened } from '../../bench.ts';
import { BLOCK_KINDS, type BlockKind, makeBlockSlip } from './blockSlip.ts';
import {
  type GeneratedEngine,
  generateEngine,
  type Known,
  measure,
  type Readings,
  yamlOf,
} from './engine.ts';
import { type MadeSlip, makeSlip, SLIP_KINDS, type SlipKind } from './madeSlip.ts';
import { random } from './random.ts';

export interface Rate {
  made: number;
  flagged: number;
  named: number;
}

export interface Rates {
  readonly clean: { sessions: number; flagged: number };
  readonly slips: Readonly<Record<SlipKind, Rate>>;
  readonly blocks: Readonly<Record<BlockKind, Rate>>;
  readonly all: Rate;
  /** Suggested values that no part could have beside the readings of its mate. */
  impossible: number;
  /** A few that went wrong, to look at. */
  readonly missed: string[];
}

const none = (): Rate => ({ made: 0, flagged: 0, named: 0 });
const ratesOf = <K extends string>(kinds: readonly K[]) =>
  Object.fromEntries(kinds.map((kind) => [kind, none()])) as Record<K, Rate>;

/** Generates that many sessions, clean, again with one slip and again with a list that moved, and counts what is said of them. */
export function measureRates(count: number, seed: number, known: Known = 'new and wear'): Rates {
  const next = random(seed);
  const rates: Rates = {
    clean: { sessions: 0, flagged: 0 },
    slips: ratesOf(SLIP_KINDS),
    blocks: ratesOf(BLOCK_KINDS),
    all: none(),
    impossible: 0,
    missed: [],
  };
  for (let i = 0; i < count; i++) {
    const engine = generateEngine(next, known);
    const right = measure(next, engine);
    countClean(rates, said(engine, right));
    const wrong = copyOf(right);
    const made = makeSlip(next, engine, wrong);
    if (made !== undefined) countSlip(rates, made, said(engine, wrong), right);
    if (i % 4 > 0) continue;
    const block = copyOf(right);
    const moved = makeBlockSlip(next, engine, block);
    if (moved !== undefined) countBlock(rates, moved.kind, moved.words, said(engine, block));
  }
  return rates;
}

const copyOf = (readings: readonly Readings[]): readonly Readings[] =>
  readings.map((each) => ({ ...each, written: each.written.map((points) => [...points]) }));

function countClean(rates: Rates, found: readonly Finding[]): void {
  rates.clean.sessions += 1;
  if (found.length === 0) return;
  rates.clean.flagged += 1;
  rates.missed.push(`clean: ${found[0]?.message}`);
}

function countSlip(rates: Rates, made: MadeSlip, all: readonly Finding[], right: readonly Readings[]): void {
  const found = all.find(
    ({ measure: id, position }) => id === made.id && (position ?? '') === (made.position || (position ?? '')),
  );
  const isNamed = found !== undefined && namesIt(found.message, made);
  for (const each of all.filter((one) => isImpossible(one, right))) {
    rates.impossible += 1;
    rates.missed.push(`impossible: ${each.message}`);
  }
  for (const rate of [rates.all, rates.slips[made.kind]]) {
    rate.made += 1;
    if (found !== undefined) rate.flagged += 1;
    if (isNamed) rate.named += 1;
  }
  if (!isNamed)
    rates.missed.push(`${made.kind} ${made.id} ${made.position} ${made.named}: ${found?.message}`);
}

/** The value that was meant; or its kind, where no other value is given out as the one that was. */
const namesIt = (message: string, { named, words }: MadeSlip): boolean =>
  message.includes(named) || (words.test(message) && suggestionIn(message) === undefined);

const SUGGESTION = /: (\S+?)(?: (?:mm|in))?\? written/;
const suggestionIn = (message: string): string | undefined => SUGGESTION.exec(message)?.[1];

function countBlock(rates: Rates, kind: BlockKind, words: RegExp, found: readonly Finding[]): void {
  const isNamed = found.some(({ message }) => words.test(message));
  for (const rate of [rates.all, rates.blocks[kind]]) {
    rate.made += 1;
    if (found.length > 0) rate.flagged += 1;
    if (isNamed && found.length === 1) rate.named += 1;
  }
  if (!isNamed || found.length > 1)
    rates.missed.push(`${kind}: ${found.map(({ message }) => message).join(' | ')}`);
}

const PAIRS: readonly (readonly [outer: string, inner: string])[] = [
  ['main_bearing_bore', 'main_journal_diameter'],
  ['rod_bearing_bore', 'crankpin_diameter'],
  ['cylinder_bore', 'piston_diameter'],
];

function isImpossible({ message, measure: id, position }: Finding, right: readonly Readings[]): boolean {
  const read = (of: string): readonly number[] =>
    right.find(({ part }) => part.id === of)?.written[Number(position) - 1]?.map(Number) ?? [];
  const isTooSmall = (value: number): boolean =>
    PAIRS.some(([outer, inner]) => outer === id && read(inner).some((each) => value <= each));
  const isTooLarge = (value: number): boolean =>
    PAIRS.some(([outer, inner]) => inner === id && read(outer).some((each) => value >= each));
  return valuesIn(message).some((value) => value <= 0 || isTooSmall(value) || isTooLarge(value));
}

/** All that a message gives out as what may have been meant, but what is in another unit. */
function valuesIn(message: string): readonly number[] {
  const one = / (?:mm|in)\? written/.test(message) ? undefined : suggestionIn(message);
  const [, list = ''] = /; possible: (.*?)(?:; |$)/.exec(message) ?? [];
  const listed = [...list.matchAll(/(?:^|, )(-?[\d.]+) \(/g)].flatMap(([, value]) => value ?? []);
  return [...(one === undefined ? [] : [one]), ...listed].map(Number);
}

function said(engine: GeneratedEngine, readings: readonly Readings[]): readonly Finding[] {
  const own = [...engine.documents, opened('s.yaml', yamlOf('2026-02-03', readings))];
  const made = engineOf(own);
  return made.engine.sessions.flatMap((session) =>
    judgeSession(made.engine, made.registry, session).findings.filter(
      ({ code }) => code === 'reading/implausible' || code === 'reading/impossible',
    ),
  );
}
