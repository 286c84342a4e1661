import type { Characteristic } from '../../../characteristics/characteristic.ts';
import type { InstrumentType } from '../../../measurement/instrument.ts';
import { toNumber } from '../../../quantity/fraction.ts';
import { type Finding, finding } from '../../finding.ts';
import { placeOfPoint } from '../../value/readingPoints.ts';
import { IMPLAUSIBLE } from '../implausible.ts';
import { isIn } from '../plausibleSizes.ts';
import { type DoubtedPoint, readFrom, type SlipContext } from '../slipContext.ts';
import { allowed } from './allowed.ts';

interface Lookalike {
  readonly of: string;
  readonly taken: string;
  readonly words: string;
  /** With other instruments nobody takes the one for the other; where none is named, it may have been this one. */
  readonly by?: InstrumentType;
  /** How much more it reads, where no limits say it. */
  readonly times?: number;
}

/** What is read in the same place and called alike, by ids: what it may have been taken for, and how that is said. */
const LOOKALIKES: readonly Lookalike[] = [
  { of: 'valve_lash_cold', taken: 'valve_lash_hot', words: 'read hot?' },
  { of: 'valve_lash_hot', taken: 'valve_lash_cold', words: 'read cold?' },
  {
    of: 'valve_stem_clearance',
    taken: 'valve_rock',
    words: 'the valve rocked, which reads more than the clearance?',
    by: 'dial indicator',
    // Service data of a car engine: .020 to .045 mm by size and .04 to .09 mm by rock, limits .08 and .16 mm.
    times: 2,
  },
];

const FEWEST = 3;

/** A whole list that is beyond its own limits, and each of it inside those of a figure that is taken for it. */
export function otherFigureFindings(context: SlipContext): readonly Finding[] {
  const points = context.points;
  return LOOKALIKES.flatMap((each) => {
    const own = points.filter(({ characteristic }) => characteristic.id === each.of);
    return takenFor(each, own, context) ?? [];
  });
}

function takenFor(
  lookalike: Lookalike,
  points: readonly DoubtedPoint[],
  context: SlipContext,
): Finding | undefined {
  const { of, taken, words } = lookalike;
  const { view } = context;
  const [first] = points;
  const other = view.registry.find(taken);
  if (first === undefined || other === undefined || points.length < FEWEST) return undefined;
  if (!points.every((point) => isReadWith(lookalike, point, context) && isBetter(point, other, context)))
    return undefined;
  const message = `${first.characteristic.label}: all ${points.length} readings lie beyond its limits and inside those of ${other.label}: ${words}`;
  return finding(IMPLAUSIBLE, placeOfPoint(view.session, first), message, {
    measure: of,
    covers: points.map(({ reading }) => ({ measure: of, at: reading.position })),
  });
}

/** What a reading that looks like a slip of the pen may be instead: the figure that it is taken for. */
export function takenInstead(point: DoubtedPoint, context: SlipContext): string | undefined {
  const found = LOOKALIKES.find(({ of }) => of === point.characteristic.id);
  const other = found && context.view.registry.find(found.taken);
  if (found === undefined || other === undefined || !isReadWith(found, point, context)) return undefined;
  return isBetter(point, other, context, found.times) ? found.words : undefined;
}

const isReadWith = ({ by }: Lookalike, point: DoubtedPoint, { view }: SlipContext): boolean =>
  by === undefined || point.block.instrument === undefined || readFrom(point, view).instrument === by;

function isBetter(
  { characteristic, reading, point }: DoubtedPoint,
  other: Characteristic,
  context: SlipContext,
  times?: number,
): boolean {
  const own = allowed(characteristic, reading.position, context);
  if (own === undefined) return false;
  const others =
    allowed(other, reading.position, context) ??
    (times === undefined ? undefined : { from: own.from * times, to: own.to * times });
  const amount = toNumber(point.amount);
  return others !== undefined && !isIn(amount, own) && isIn(amount, others);
}
