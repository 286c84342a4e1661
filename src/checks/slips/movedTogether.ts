import { isGap } from '../../characteristics/belowZero.ts';
import { median } from '../../measurement/sample.ts';
import { likelierOnStrip, slipsOf } from '../../measurement/slips/slips.ts';
import type { Slip, WrittenNumber } from '../../measurement/slips/writtenNumber.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { type Finding, finding } from '../finding.ts';
import { serviceShifts } from '../grades/usualGrades.ts';
import { placeOfPoint } from '../value/readingPoints.ts';
import { writtenNumbers } from '../value/writtenNumbers.ts';
import { IMPLAUSIBLE } from './implausible.ts';
import { takenInstead } from './lookalike/otherFigure.ts';
import { ownRange } from './ownRange.ts';
import { isIn, type Range, shifted, statedRange, wider } from './plausibleSizes.ts';
import {
  amountIn,
  type DoubtedPoint,
  expandedOf,
  lengthText,
  openPoints,
  readFrom,
  type SlipContext,
} from './slipContext.ts';
import { usedAboveNew } from './usedAboveNew.ts';

/** Readings of one characteristic that are all wrong in one way: one gauge set wrongly is one finding. */
export function movedFindings(context: SlipContext, said: readonly Finding[]): readonly Finding[] {
  const all = openPoints(context.points, said, ({ characteristic }) => characteristic);
  return [...all.values()].flatMap((points) => movedTogether(points, context) ?? []);
}

interface Moved {
  readonly point: DoubtedPoint;
  readonly number: WrittenNumber;
  readonly amount: number;
  /** What its limits allow, as far as they are stated. */
  readonly own: Range;
  /** What honest parts of the size that is fitted do. */
  readonly usual: Range;
  readonly slips: readonly Slip[];
}

const FEWEST_POINTS = 3;
const FEWEST_POSITIONS = 2;

function movedTogether(points: readonly DoubtedPoint[], context: SlipContext): Finding | undefined {
  const [first] = points;
  const positions = new Set(points.map(({ reading }) => reading.position));
  if (first === undefined || points.length < FEWEST_POINTS || positions.size < FEWEST_POSITIONS)
    return undefined;
  const moved = allMoved(points, context);
  const words =
    moved && (commonSlip(moved, context) ?? usedAboveNew(points, context) ?? sameAmount(moved, context));
  if (words === undefined) return undefined;
  const { characteristic } = first;
  const [taken, ...unlike] = new Set(points.map((point) => takenInstead(point, context)));
  const instead = taken === undefined || unlike.length > 0 ? '' : `${taken} or `;
  const message = `${characteristic.label}: all ${points.length} readings: ${instead}${words}`;
  return finding(IMPLAUSIBLE, placeOfPoint(context.view.session, first), message, {
    measure: characteristic.id,
    covers: [...positions].map((at) => ({ measure: characteristic.id, at })),
  });
}

/** Undefined as soon as one of them is what its limits allow: only then are slips thought of. */
function allMoved(points: readonly DoubtedPoint[], context: SlipContext): readonly Moved[] | undefined {
  const moved: Omit<Moved, 'slips'>[] = [];
  for (const point of points) {
    const own = ownRange(point, context);
    const usual = context.expectations.fittedRange(point.characteristic, point.reading.position);
    if (own === undefined || usual === undefined) return undefined;
    const allowed = wider(own, expandedOf(point, context));
    for (const number of writtenNumbers(point.point)) {
      const amount = amountIn(number);
      if (isIn(amount, allowed)) return undefined;
      moved.push({ point, number, amount, own, usual });
    }
  }
  return moved.map((each) => ({ ...each, slips: slipsBack(each, context) }));
}

const slipsBack = (
  { point, number, usual }: Pick<Moved, 'point' | 'number' | 'usual'>,
  context: SlipContext,
): readonly Slip[] =>
  slipsOf(number, readFrom(point, context.view)).filter((slip) => isBack(slip, point, usual, context));

/** By a step to the size that is fitted, and in any other way to one that it may have been made to. */
const isBack = (
  { intended, words }: Slip,
  { characteristic }: DoubtedPoint,
  usual: Range,
  { view }: SlipContext,
): boolean =>
  (STEP_WORDS.test(words) ? [0] : serviceShifts(characteristic, view.registry.parts)).some((by) =>
    isIn(toNumber(intended), shifted(usual, by)),
  );

/** The slip that brings every one of them back, unless another service size does so better. */
function commonSlip(moved: readonly Moved[], context: SlipContext): string | undefined {
  const [first, ...others] = moved;
  if (first === undefined) return undefined;
  const common = first.slips.filter(
    ({ words }) =>
      words !== SWAPPED && others.every(({ slips }) => slips.some((each) => each.words === words)),
  );
  const [likeliest, ...more] = likelierOnStrip(common, readFrom(first.point, context.view));
  if (likeliest === undefined || isBetterService(moved, likeliest.words, context)) return undefined;
  const words = [...new Set([likeliest, ...more].map((each) => each.words))].join(', or ');
  const setting = STEP_WORDS.test(words) ? ', the same amount everywhere: was the gauge set wrongly' : '';
  return `${words}${setting}? ${likeliest.written} for ${first.point.point.written}`;
}

/** Digits that are swapped everywhere alike are swapped by chance. */
const SWAPPED = 'two digits swapped';
const STEP_WORDS = / out, /;

/**
 * What was measured beside it says of what size the part is. Where nothing was, what is nearer to new is likelier; where no
 * wear limit says how near it has to be, a service size is.
 */
function isBetterService(moved: readonly Moved[], words: string, context: SlipContext): boolean {
  const [first] = moved;
  if (first === undefined) return false;
  const { characteristic, reading } = first.point;
  const { expectations, view } = context;
  if (expectations.isSizeKnown(characteristic, reading.position)) return false;
  const byPen = median(moved.map((each) => beyondNew(intendedBy(words, each), each.point, context)));
  return serviceShifts(characteristic, view.registry.parts).some((by) => {
    if (by === 0) return false;
    const agree = expectations.matesAgree(characteristic, by);
    if (agree !== undefined)
      return agree && moved.every(({ amount, usual }) => isIn(amount, shifted(usual, by)));
    const isThere = ({ amount, own, point }: Moved): boolean =>
      isIn(amount, wider(shifted(own, by), expandedOf(point, context)));
    const byGrinding = median(moved.map(({ amount, point }) => beyondNew(amount - by, point, context)));
    return (
      moved.every((each) => Math.abs(intendedBy(words, each) + by - each.amount) < 1) ||
      (moved.every(isThere) && (first.own === first.usual || byGrinding <= byPen))
    );
  });
}

const intendedBy = (words: string, { slips, amount }: Moved): number => {
  const slip = slips.find((each) => each.words === words);
  return slip === undefined ? amount : toNumber(slip.intended);
};

/** How far a size lies beyond the limits of new parts; nought inside them. */
function beyondNew(
  amount: number,
  { characteristic, reading }: DoubtedPoint,
  { expectations }: SlipContext,
): number {
  const [row] = expectations.rows(characteristic, reading.position);
  const { from, to } = statedRange({ new: row?.limits.bands.new ?? { min: undefined, max: undefined } });
  return Math.max(0, from - amount, amount - to);
}

/** As like each other as parts of one size are, and none that any honest part has. */
function sameAmount(moved: readonly Moved[], context: SlipContext): string | undefined {
  const amounts = moved.map(({ amount }) => amount);
  const [first] = moved;
  if (first === undefined || !moved.every((each) => isOutside(each, context))) return undefined;
  const width = first.own.to - first.own.from;
  if (Math.max(...amounts) - Math.min(...amounts) > width || isGap(first.point.characteristic))
    return undefined;
  const middle = median(amounts);
  const isAbove = middle > first.own.to;
  const by = isAbove ? middle - first.own.to : first.own.from - middle;
  const text = lengthText(by, first.point, context);
  return `about ${text} ${isAbove ? 'above' : 'below'} what their limits allow, the same amount everywhere: was the gauge set wrongly, or is it of another size than \`machined:\` or \`fitted:\` says?`;
}

const isOutside = (
  { point: { characteristic, reading }, amount }: Moved,
  { expectations }: SlipContext,
): boolean => !expectations.ranges(characteristic, reading.position).some((range) => isIn(amount, range));
