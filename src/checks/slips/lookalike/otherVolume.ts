import type { Characteristic } from '../../../characteristics/characteristic.ts';
import { pointsOf } from '../../../documents/session/reading.ts';
import { namedAt } from '../../../layout/naming.ts';
import { median } from '../../../measurement/sample.ts';
import { toNumber } from '../../../quantity/fraction.ts';
import { type Finding, finding } from '../../finding.ts';
import { placeOfPoint, type ReadingPoint, readingPointsOfBlock } from '../../value/readingPoints.ts';
import { IMPLAUSIBLE } from '../implausible.ts';
import type { SlipContext } from '../slipContext.ts';
import { CUBIC_SLIPS } from './cubic.ts';
import { type VolumeList, volumeListFindings } from './volumeList.ts';

/** How far volumes of one kind lie apart in one engine, at most, as a share. */
const ALIKE = 0.2;

const FEWEST_LIKE = 2;

/** Volumes in cubic inches for cubic centimetres, or the other way round: one among its like, or all of them. */
export function otherVolumeFindings(context: SlipContext): readonly Finding[] {
  const lists = listsIn(context);
  const whole = volumeListFindings(lists, context);
  const others = lists.filter(
    ({ characteristic }) => !whole.some(({ measure }) => measure === characteristic.id),
  );
  return [
    ...whole,
    ...others.flatMap((list) => list.points.flatMap((each) => oneAmongOthers(each, list, context))),
  ];
}

function listsIn({ view: { session, registry } }: SlipContext): readonly VolumeList[] {
  const lists = new Map<Characteristic, ReadingPoint[]>();
  for (const block of session.blocks) {
    const characteristic = registry.find(block.measure.id);
    if (characteristic?.quantity !== 'volume') continue;
    const open = readingPointsOfBlock(block, ({ settled }) => settled === undefined);
    if (open.length > 0) lists.set(characteristic, [...(lists.get(characteristic) ?? []), ...open]);
  }
  return [...lists].map(([characteristic, points]) => ({ characteristic, points }));
}

function oneAmongOthers(
  each: ReadingPoint,
  { characteristic, points }: VolumeList,
  { view: { session } }: SlipContext,
): readonly Finding[] {
  const like = points
    .filter(({ reading }) => reading !== each.reading)
    .map(({ reading }) => median(pointsOf(reading).map(({ amount }) => toNumber(amount))));
  const words = like.length < FEWEST_LIKE ? undefined : slipAmong(median(like), each);
  if (words === undefined) return [];
  const { position } = each.reading;
  const [measure, label] = [characteristic.id, characteristic.label];
  const message = `${namedAt(label, position)}: written ${each.point.written}: ${words}?`;
  const covers = [{ measure, at: position }];
  return [finding(IMPLAUSIBLE, placeOfPoint(session, each), message, { measure, position, covers })];
}

function slipAmong(like: number, { point }: ReadingPoint): string | undefined {
  const amount = toNumber(point.amount);
  return CUBIC_SLIPS.find(({ factor }) => Math.abs((amount * factor) / like - 1) < ALIKE)?.words;
}
