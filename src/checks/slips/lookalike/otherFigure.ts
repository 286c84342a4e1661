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
  /** With other instruments nobody takes the one for the other. */
  readonly by?: InstrumentType;
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
  { of, taken, words, by }: Lookalike,
  points: readonly DoubtedPoint[],
  context: SlipContext,
): Finding | undefined {
  const { view } = context;
  const [first] = points;
  const other = view.registry.find(taken);
  if (first === undefined || other === undefined || points.length < FEWEST) return undefined;
  const isOther = (point: DoubtedPoint): boolean =>
    (by === undefined || readFrom(point, view).instrument === by) && isBetter(point, other, context);
  if (!points.every(isOther)) return undefined;
  const message = `${first.characteristic.label}: all ${points.length} readings lie beyond its limits and inside those of ${other.label}: ${words}`;
  return finding(IMPLAUSIBLE, placeOfPoint(view.session, first), message, {
    measure: of,
    covers: points.map(({ reading }) => ({ measure: of, at: reading.position })),
  });
}

function isBetter(
  { characteristic, reading, point }: DoubtedPoint,
  other: Characteristic,
  context: SlipContext,
) {
  const [own, others] = [characteristic, other].map((each) => allowed(each, reading.position, context));
  const amount = toNumber(point.amount);
  return own !== undefined && others !== undefined && !isIn(amount, own) && isIn(amount, others);
}
