import type { Characteristic } from '../../../characteristics/characteristic.ts';
import type { Position } from '../../../layout/position.ts';
import { median } from '../../../measurement/sample.ts';
import { toNumber } from '../../../quantity/fraction.ts';
import { type Finding, finding } from '../../finding.ts';
import { placeOfPoint, type ReadingPoint } from '../../value/readingPoints.ts';
import { IMPLAUSIBLE } from '../implausible.ts';
import { isIn } from '../plausibleSizes.ts';
import type { SlipContext } from '../slipContext.ts';
import { allowed } from './allowed.ts';
import { CUBIC_SLIPS } from './cubic.ts';

/** One volume at all positions where it was read. */
export interface VolumeList {
  readonly characteristic: Characteristic;
  readonly points: readonly ReadingPoint[];
}

const FEWEST_POSITIONS = 2;

/** A whole list in the other unit, which nothing of its like shows: its limits do, or else the compression ratio. */
export function volumeListFindings(lists: readonly VolumeList[], context: SlipContext): readonly Finding[] {
  const long = lists.filter((each) => positionsIn(each).length >= FEWEST_POSITIONS);
  const byLimits = long.flatMap((list) =>
    slipsBy(list, (at, factor) => isBackByLimits(list, at, factor, context)),
  );
  if (byLimits.length > 0) return byLimits.map((each) => reported(each, context));
  const byRatio = long.flatMap((list) =>
    slipsBy(list, (at, factor) => isBackByRatio(list, at, factor, context)),
  );
  // What two lists explain alike is explained by neither.
  return byRatio.length === 1 ? byRatio.map((each) => reported(each, context)) : [];
}

interface ListSlip extends VolumeList {
  readonly words: string;
}

const positionsIn = ({ points }: VolumeList): readonly Position[] => [
  ...new Set(points.map(({ reading }) => reading.position)),
];

const slipsBy = (list: VolumeList, isBack: (at: Position, factor: number) => boolean): readonly ListSlip[] =>
  CUBIC_SLIPS.filter(({ factor }) => positionsIn(list).every((at) => isBack(at, factor))).map(
    ({ words }) => ({
      ...list,
      words,
    }),
  );

const readAt = ({ points }: VolumeList, at: Position): number =>
  median(points.filter(({ reading }) => reading.position === at).map(({ point }) => toNumber(point.amount)));

function isBackByLimits(list: VolumeList, at: Position, factor: number, context: SlipContext): boolean {
  const range = allowed(list.characteristic, at, context);
  const read = readAt(list, at);
  return range !== undefined && !isIn(read, range) && isIn(read * factor, range);
}

/** No gasket, deck or chamber that is only worn or cut brings the room over a piston so far from what the ratio allows. */
const FAR = 1.5;

/** The ratio is far out as read, and inside its limits with this volume in the other unit. */
function isBackByRatio(list: VolumeList, at: Position, factor: number, context: SlipContext): boolean {
  const ratio = context.view.registry.find('compression_ratio');
  const range = ratio && allowed(ratio, at, context);
  const [swept, room] = ['swept_volume', 'clearance_volume'].map((id) => workedOut(id, at, context));
  if (range === undefined || swept === undefined || room === undefined) return false;
  const read = readAt(list, at);
  const isFar = swept / room > FAR * (range.to - 1) || FAR * (swept / room) < range.from - 1;
  return isFar && isIn(1 + swept / (room - read + read * factor), range);
}

function workedOut(id: string, at: Position, { view }: SlipContext): number | undefined {
  const characteristic = view.registry.find(id);
  const [route] = characteristic === undefined ? [] : view.routes.at(characteristic, at, {});
  return route && toNumber(route.measured.mean.amount);
}

function reported(slip: ListSlip, { view: { session } }: SlipContext): Finding {
  const { characteristic, points, words } = slip;
  const [first] = points;
  if (first === undefined) throw new Error('a list of volumes holds none');
  const message = `${characteristic.label}: all ${points.length} readings: ${words}?`;
  return finding(IMPLAUSIBLE, placeOfPoint(session, first), message, {
    measure: characteristic.id,
    covers: positionsIn(slip).map((at) => ({ measure: characteristic.id, at })),
  });
}
