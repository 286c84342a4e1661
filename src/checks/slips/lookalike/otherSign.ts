import { isNeverBelowZero } from '../../../characteristics/belowZero.ts';
import { namedAt } from '../../../layout/naming.ts';
import { toNumber } from '../../../quantity/fraction.ts';
import { type Finding, finding } from '../../finding.ts';
import { placeOfPoint } from '../../value/readingPoints.ts';
import { IMPLAUSIBLE } from '../implausible.ts';
import { isIn } from '../plausibleSizes.ts';
import { type DoubtedPoint, expandedOf, LEAST_SLIP, type SlipContext } from '../slipContext.ts';
import { allowed } from './allowed.ts';

/** So many others show what its like are. */
const FEWEST_LIKE = 2;
const FEWEST_OF_A_LIST = 3;

/** A height that is read to both sides of a face, above it for below: a protrusion, a recession. */
export function otherSignFindings(context: SlipContext): readonly Finding[] {
  const signed = context.points.filter(
    ({ characteristic }) => characteristic.figure === 'other' && !isNeverBelowZero(characteristic),
  );
  return [...new Set(signed.map(({ characteristic }) => characteristic))].flatMap((of) => {
    const points = signed.filter(({ characteristic }) => characteristic === of);
    const turned = points.filter((each) => isTurned(each, context));
    if (turned.length === points.length)
      return turned.length < FEWEST_OF_A_LIST ? [] : ofAList(turned, context);
    const like = points.filter((each) => isInside(each, context));
    return like.length < FEWEST_LIKE ? [] : turned.map((each) => ofOne(each, context));
  });
}

const amountOf = ({ point }: DoubtedPoint): number => toNumber(point.amount);

function isInside(point: DoubtedPoint, context: SlipContext): boolean {
  const range = allowed(point.characteristic, point.reading.position, context);
  return range !== undefined && isIn(amountOf(point), range);
}

/** Beyond its limits, on the other side of zero from all of them, and inside them with the other sign. */
function isTurned(point: DoubtedPoint, context: SlipContext): boolean {
  const range = allowed(point.characteristic, point.reading.position, context);
  const amount = amountOf(point);
  if (range === undefined || !(range.from > 0 || range.to < 0)) return false;
  const isPlain = 2 * Math.abs(amount) >= LEAST_SLIP * expandedOf(point, context);
  return isPlain && !isIn(amount, range) && isIn(-amount, range);
}

function ofAList(points: readonly DoubtedPoint[], { view: { session } }: SlipContext): readonly Finding[] {
  const [first] = points;
  if (first === undefined) return [];
  const { label, id } = first.characteristic;
  const message = `${label}: all ${points.length} readings are inside their limits with the other sign: the sign? ${SIDES}`;
  const covers = points.map(({ reading }) => ({ measure: id, at: reading.position }));
  return [finding(IMPLAUSIBLE, placeOfPoint(session, first), message, { measure: id, covers })];
}

function ofOne(point: DoubtedPoint, { view: { session } }: SlipContext): Finding {
  const { characteristic, reading } = point;
  const measure = characteristic.id;
  const message = `${namedAt(characteristic.label, reading.position)}: written ${point.point.written}: the sign? ${SIDES}`;
  const covers = [{ measure, at: reading.position }];
  return finding(IMPLAUSIBLE, placeOfPoint(session, point), message, {
    measure,
    position: reading.position,
    covers,
  });
}

const SIDES = 'explain says which side is above zero';
