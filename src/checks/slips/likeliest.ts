import { isGap } from '../../characteristics/belowZero.ts';
import { pointsOf } from '../../documents/session/reading.ts';
import { median } from '../../measurement/sample.ts';
import { misreadFigures } from '../../measurement/slips/misreadFigures.ts';
import { canBeShown, likelierOnStrip, slipsOf } from '../../measurement/slips/slips.ts';
import type { Slip } from '../../measurement/slips/writtenNumber.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { ownRange } from './ownRange.ts';
import { isIn, type Range, wider } from './plausibleSizes.ts';
import { couldBe } from './possible.ts';
import { possibleValues } from './possibleValues.ts';
import type { SlipCandidate } from './slipCandidates.ts';
import { LEAST_SLIP, readFrom, type SlipContext, usualDecimals } from './slipContext.ts';

/** What slip explains a reading: the number that was meant and the kind where one alone comes of it, else all that may be. */
export interface Explanation {
  readonly meant: string | undefined;
  readonly words: string;
}

/** The usual slips of the pen, first those that bring the number to what was read beside it, then to its like. */
export const usualSlip = (suspect: SlipCandidate, context: SlipContext): Explanation | undefined =>
  explained(slipsOf(suspect.number, readFrom(suspect, context.view)), suspect, context, [
    ...near(suspect, context),
    ...own(suspect, context),
    suspect.ranges,
  ]);

/** Of what stands apart from its like, though it might be wear: a slip has to bring it back among them. */
export const slipAmongLike = (
  suspect: SlipCandidate,
  context: SlipContext,
  isSought: (slip: Slip) => boolean,
): Explanation | undefined =>
  explained(
    slipsOf(suspect.number, readFrom(suspect, context.view)).filter(isSought),
    suspect,
    context,
    near(suspect, context),
  );

/** A figure misread, dropped or written twice: what is not plainly wrong has to come back among its like. */
export const misreading = (
  suspect: SlipCandidate,
  context: SlipContext,
  isPlainlyWrong: boolean,
): Explanation | undefined =>
  explained(misreadFigures(suspect.number, usualDecimals(suspect)), suspect, context, [
    ...near(suspect, context),
    ...(isPlainlyWrong ? [suspect.ranges] : []),
  ]);

function explained(
  slips: readonly Slip[],
  suspect: SlipCandidate,
  context: SlipContext,
  tiers: readonly (readonly Range[])[],
): Explanation | undefined {
  const from = readFrom(suspect, context.view);
  const able = slips.filter(
    (slip) => isAble(toNumber(slip.intended), suspect, context) && canBeShown(slip, suspect.number, from),
  );
  for (const tier of tiers) {
    const within = able.filter(({ intended }) => tier.some((range) => isIn(toNumber(intended), range)));
    if (within.length > 0) return explanationOf(likelierOnStrip(within, from));
  }
  return undefined;
}

function explanationOf(slips: readonly Slip[]): Explanation {
  const meant = new Set(slips.map(({ intended }) => toNumber(intended)));
  const [first] = slips;
  return meant.size === 1 && first !== undefined
    ? { meant: first.written, words: first.words }
    : { meant: undefined, words: possibleValues(slips) };
}

const isAble = (amount: number, suspect: SlipCandidate, { view, expectations }: SlipContext): boolean =>
  (suspect.amount < 0 || Math.abs(amount - suspect.amount) >= LEAST_SLIP * suspect.expanded) &&
  suspect.ranges.some((range) => isIn(amount, range)) &&
  couldBe(suspect.characteristic, suspect.reading.position, amount, view, expectations);

/** Where the other points of its position lie, and where its like do. */
function near(suspect: SlipCandidate, { expectations }: SlipContext): readonly (readonly Range[])[] {
  const { characteristic, reading, ranges, expanded } = suspect;
  const isPlausible = (amount: number): boolean => ranges.some((range) => isIn(amount, range));
  const beside = pointsOf(reading)
    .map(({ amount }) => toNumber(amount))
    .filter((amount) => amount !== suspect.amount && isPlausible(amount));
  const like = [...expectations.medians(characteristic)]
    .filter(([position, amount]) => position !== reading.position && isPlausible(amount))
    .map(([, amount]) => amount);
  const enough = like.length < FEWEST_LIKE ? [] : like;
  if (isGap(characteristic)) return [...timesEachWay(beside), ...timesEachWay(enough)];
  return [...around(beside, LEAST_SLIP * expanded), ...around(enough, LEAST_SLIP * expanded)];
}

function own(suspect: SlipCandidate, context: SlipContext): readonly (readonly Range[])[] {
  const range = ownRange(suspect, context);
  return range === undefined ? [] : [[range]];
}

/** Whether another point of its position lies off its like on the same side: a part is worn there, and no pen slipped. */
export function isWornAround(suspect: SlipCandidate, { expectations }: SlipContext): boolean {
  const { characteristic, reading, amount, expanded } = suspect;
  const like = [...expectations.medians(characteristic)].flatMap(([position, each]) =>
    position === reading.position ? [] : [each],
  );
  if (like.length < FEWEST_LIKE) return false;
  const [from, to] = [Math.min(...like) - 2 * expanded, Math.max(...like) + 2 * expanded];
  return pointsOf(reading).some((point) => {
    const beside = toNumber(point.amount);
    if (beside === amount) return false;
    return amount < from ? beside < from : amount > to && beside > to;
  });
}

const FEWEST_LIKE = 2;

function around(amounts: readonly number[], by: number): readonly (readonly Range[])[] {
  if (amounts.length === 0) return [];
  const [from, to] = [Math.min(...amounts), Math.max(...amounts)];
  return [[wider({ from, to }, by + (to - from) / 2)]];
}

/** Gaps differ by a part of themselves. */
const timesEachWay = (amounts: readonly number[]): readonly (readonly Range[])[] =>
  amounts.length === 0 ? [] : [[{ from: Math.min(...amounts) / TIMES, to: Math.max(...amounts) * TIMES }]];

const TIMES = 1.5;

/** What the other points of the position say, else an earlier session, else its like, else the limits. */
export function expectedOf(
  { reading, characteristic, ranges }: SlipCandidate,
  { expectations }: SlipContext,
): number {
  const plausible = (amount: number): boolean => ranges.some((range) => isIn(amount, range));
  const { position } = reading;
  const beside = pointsOf(reading)
    .map((point) => toNumber(point.amount))
    .filter(plausible);
  const earlier = expectations.earlier(characteristic, position);
  const like = [...expectations.medians(characteristic).values()].filter(plausible);
  if (beside.length > 0) return median(beside);
  if (earlier !== undefined && plausible(earlier)) return earlier;
  if (like.length > 0) return median(like);
  const [first] = ranges;
  return first === undefined ? Number.NaN : (first.from + first.to) / 2;
}
