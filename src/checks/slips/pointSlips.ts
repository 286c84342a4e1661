import { isGap } from '../../characteristics/belowZero.ts';
import { namedAt } from '../../layout/naming.ts';
import type { Position } from '../../layout/position.ts';
import type { Slip } from '../../measurement/slips/writtenNumber.ts';
import { type Fraction, toNumber } from '../../quantity/fraction.ts';
import { type Finding, finding, isCovered } from '../finding.ts';
import { isBored } from '../grades/usualGrades.ts';
import { placeOfPoint } from '../value/readingPoints.ts';
import { writtenNumbers } from '../value/writtenNumbers.ts';
import { IMPLAUSIBLE } from './implausible.ts';
import {
  type Explanation,
  expectedOf,
  isWornAround,
  misreading,
  slipAmongLike,
  usualSlip,
} from './likeliest.ts';
import { takenInstead } from './lookalike/otherFigure.ts';
import { ownRange } from './ownRange.ts';
import { isIn, wider } from './plausibleSizes.ts';
import { readingOfAnother, type SlipCandidate, sizeOfAnother } from './slipCandidates.ts';
import {
  amountIn,
  type DoubtedPoint,
  expandedOf,
  LEAST_SLIP,
  lengthText,
  type SlipContext,
} from './slipContext.ts';

/** Once for each position of a block: lengths that no honest part explains, those left out of which more was said. */
export function pointFindings(context: SlipContext, said: readonly Finding[]): readonly Finding[] {
  const found = new Map<unknown, Finding>();
  for (const point of context.points) {
    if (found.has(point.reading) || isCovered(point.characteristic.id, point.reading.position, said))
      continue;
    const one =
      firstOf(suspects(point, context), (suspect) => messageOf(suspect, context)) ??
      (isGap(point.characteristic) ? messageAmongLike(point, context) : undefined);
    if (one !== undefined) found.set(point.reading, slipFinding(point, one, context));
  }
  return [...found.values()];
}

/** Of a position that stands apart from its like, though it might be worn: the slip that brings it back among them. */
export function slipOfOneApart(
  measure: string | undefined,
  position: Position | undefined,
  context: SlipContext,
): Finding | undefined {
  const points = context.points.filter(
    ({ characteristic, reading }) => characteristic.id === measure && reading.position === position,
  );
  for (const point of points) {
    const one = messageAmongLike(point, context);
    if (one !== undefined) return slipFinding(point, one, context);
  }
  return undefined;
}

/** What is beyond its limits, and would be among its like but for a slip; a gap closes by its decimal point alone. */
function messageAmongLike(point: DoubtedPoint, context: SlipContext): string | undefined {
  const stated = ownRange(point, context);
  if (stated === undefined) return undefined;
  const isOfGap = isGap(point.characteristic);
  const isSought = isOfGap ? IS_OF_SCALE : () => true;
  return firstOf(
    candidates(point, context).filter(
      ({ amount }) => amount < stated.from || (!isOfGap && amount > stated.to),
    ),
    (each) => {
      const slip = isWornAround(each, context) ? undefined : slipAmongLike(each, context, isSought);
      return slip && explained(each, slip, context);
    },
  );
}

/** Small numbers are like each other by chance: two digits swapped say nothing there. */
const IS_OF_SCALE = ({ words }: Slip): boolean => /decimal point|scale|whole number/.test(words);

function firstOf<T>(all: readonly T[], message: (each: T) => string | undefined): string | undefined {
  for (const each of all) {
    const said = message(each);
    if (said !== undefined) return said;
  }
  return undefined;
}

function slipFinding(point: DoubtedPoint, message: string, { view }: SlipContext): Finding {
  const { characteristic, reading } = point;
  const named = namedAt(characteristic.label, reading.position);
  const about = { measure: characteristic.id, position: reading.position };
  return finding(IMPLAUSIBLE, placeOfPoint(view.session, point), `${named}: ${message}`, {
    ...about,
    covers: [{ measure: characteristic.id, at: reading.position }],
  });
}

/** The numbers of a point that no honest part explains. */
function suspects(point: DoubtedPoint, context: SlipContext): readonly SlipCandidate[] {
  const { expectations } = context;
  const { characteristic, reading } = point;
  // Nearly all readings are of the size that is fitted: what it takes to know the others is worked out for the rest alone.
  const usual = expectations.fittedRange(characteristic, reading.position);
  const amounts = point.point.repeats ?? [point.point.amount];
  const isUsual = (amount: Fraction): boolean => usual === undefined || isIn(toNumber(amount), usual);
  if (amounts.every(isUsual) && expectations.isStandard(characteristic)) return [];
  const earlier = expectations.earlier(characteristic, reading.position);
  return candidates(point, context).filter(({ amount, ranges, expanded }) => {
    const isAsBefore = earlier !== undefined && Math.abs(amount - earlier) <= LEAST_SLIP * expanded;
    return !isAsBefore && !ranges.some((range) => isIn(amount, wider(range, expanded)));
  });
}

function candidates(point: DoubtedPoint, context: SlipContext): readonly SlipCandidate[] {
  const ranges = context.expectations.ranges(point.characteristic, point.reading.position);
  if (ranges.length === 0) return [];
  const expanded = expandedOf(point, context);
  return writtenNumbers(point.point).map((number) => ({
    ...point,
    number,
    amount: amountIn(number),
    ranges,
    expanded,
  }));
}

function messageOf(suspect: SlipCandidate, context: SlipContext): string | undefined {
  const { view, expectations } = context;
  const copy = readingOfAnother(suspect, view);
  const slip = usualSlip(suspect, context);
  if (slip !== undefined) return explained(suspect, slip, context, copy);
  const source = copy ?? ofOtherSize(suspect, context);
  if (source !== undefined) return `written ${suspect.number.digits}: ${source}${like(suspect, context)}`;
  const isService = expectations.isServiceSize(
    suspect.characteristic,
    suspect.reading.position,
    suspect.amount,
  );
  // A cylinder is bored alone with its piston, which may not have been measured; of journals all are ground to one size.
  const isBoredAlone =
    isService &&
    isBored(suspect.characteristic, view.registry.parts) &&
    !expectations.hasMate(suspect.characteristic, suspect.reading.position);
  const isPlainlyWrong = isFar(suspect) || (isService && !isBoredAlone);
  // Below zero the sign is what is wrong.
  if (suspect.amount < 0 || (!isPlainlyWrong && isWornAround(suspect, context))) return undefined;
  const misread = misreading(suspect, context, isPlainlyWrong);
  if (misread !== undefined && !isBoredAlone) return explained(suspect, misread, context);
  return isPlainlyWrong && !isBoredAlone
    ? `written ${suspect.number.digits}: ${UNEXPLAINED}${like(suspect, context)}`
    : undefined;
}

function explained(
  suspect: SlipCandidate,
  { meant, words }: Explanation,
  context: SlipContext,
  copy?: string,
): string {
  const { characteristic, reading, amount, number } = suspect;
  const isService = context.expectations.isServiceSize(characteristic, reading.position, amount);
  const all = [words, ...(copy === undefined ? [] : [copy]), ...(isService ? [OTHER_SERVICE_SIZE] : [])];
  const taken = takenInstead(suspect, context);
  if (taken !== undefined)
    return `written ${number.digits}: ${taken} or ${all.join(', or ')}${meant === undefined ? '' : `: ${meant}`}`;
  return meant === undefined
    ? `written ${number.digits}; possible: ${all.join(', ')}${like(suspect, context)}`
    : `${meant}? written ${number.digits}: ${all.join(', or ')}`;
}

/** A worn piston is nearly as large as its bore: only a part of quite another size is known by it. */
function ofOtherSize(suspect: SlipCandidate, context: SlipContext): string | undefined {
  const isUnlike = Math.abs(suspect.amount - expectedOf(suspect, context)) >= UNLIKE_SIZES * suspect.amount;
  return isUnlike ? sizeOfAnother(suspect, context.view, context.expectations) : undefined;
}

function like(suspect: SlipCandidate, context: SlipContext): string {
  const expected = expectedOf(suspect, context);
  return Number.isFinite(expected)
    ? `; about ${lengthText(expected, suspect, context)} is expected here`
    : '';
}

const OTHER_SERVICE_SIZE = 'another service size, which `fitted:` does not state';
const UNEXPLAINED = 'no usual slip explains it';

/** A fiftieth: no part wears by so much, and crankpins differ from mains by more. */
const UNLIKE_SIZES = 0.02;
/** Without a slip that explains it, only what lies this many widths of the range beyond it is said. */
const FAR = 2;

function isFar({ amount, ranges, expanded }: SlipCandidate): boolean {
  return ranges.every(({ from, to }) => {
    const beyond = Math.max(from - amount, amount - to);
    return beyond > FAR * (to - from) + 2 * LEAST_SLIP * expanded;
  });
}
