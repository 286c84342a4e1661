import type { Characteristic } from '../../characteristics/characteristic.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { sessionsBefore } from '../history/earlier.ts';
import { isSamePartAfter } from '../history/partHistory.ts';
import { statedCondition } from '../judge/condition.ts';
import type { Bands } from '../judge/sideLimit.ts';
import { type DoubtedPoint, expandedOf, lengthText, type SlipContext } from './slipContext.ts';

/** Journals that ran and were never built up are not larger than new ones, nor bores smaller. */
export function usedAboveNew(points: readonly DoubtedPoint[], context: SlipContext): string | undefined {
  const [first] = points;
  if (first === undefined || !points.every((point) => isUsed(point, context))) return undefined;
  const distances = points.map((point) => beyondUnworn(point, context));
  if (!distances.every((by) => by !== undefined && by > 0)) return undefined;
  const least = Math.min(...distances.flatMap((by) => by ?? [])) + expandedOf(first, context);
  const than = wearsDown(first, context) ? 'larger' : 'smaller';
  return `${than} than new, by ${lengthText(least, first, context)} or more; used parts are not, unless they were plated, sprayed or renewed. The same amount everywhere: was the gauge set wrongly?`;
}

function isUsed(point: DoubtedPoint, context: SlipContext): boolean {
  const { characteristic, reading } = point;
  const { view } = context;
  const { session, engine, registry } = view;
  const { position } = reading;
  const hasRun = session.stage === 'teardown' || session.stage === 'service';
  return (
    goesOneWay(characteristic, view, wearsDown(point, context)) &&
    hasRun &&
    statedCondition(view, characteristic, position)?.band !== 'new' &&
    isSamePartAfter([...sessionsBefore(engine, session), session], characteristic, position, engine, registry)
  );
}

/** What is ground smaller as it wears smaller, or bored larger as it wears larger: neither makes it pass new on the other side. */
const goesOneWay = (
  { of, dimension }: Characteristic,
  { registry }: SlipContext['view'],
  wearsDown: boolean,
): boolean =>
  dimension === 'size' &&
  of !== undefined &&
  registry.parts.find(of)?.sized?.made === (wearsDown ? 'under' : 'over');

/** How far it lies on the side to which no wear leads, past what its uncertainty explains. */
function beyondUnworn(point: DoubtedPoint, context: SlipContext): number | undefined {
  const bands = bandsOf(point, context);
  const { new: fresh } = bands;
  const limit = wearsDown(point, context) ? fresh?.max : fresh?.min;
  if (limit === undefined || wearSides(bands) !== 1) return undefined;
  const by = toNumber(point.point.amount) - toNumber(limit.amount);
  return (wearsDown(point, context) ? by : -by) - expandedOf(point, context);
}

const wearsDown = (point: DoubtedPoint, context: SlipContext): boolean =>
  bandsOf(point, context).wear?.min !== undefined;

const wearSides = ({ wear }: Bands): number =>
  [wear?.min, wear?.max].filter((side) => side !== undefined).length;

const bandsOf = ({ characteristic, reading }: DoubtedPoint, { expectations }: SlipContext): Bands =>
  expectations.rows(characteristic, reading.position)[0]?.limits.bands ?? {};
