import type { JudgedRoute, Row } from '../../../checks/judge/row.ts';
import type { SidedLimits } from '../../../checks/judge/sideLimit.ts';
import type { EarlierRow } from '../../../checks/state/lastKnown.ts';
import { toNumber } from '../../../quantity/fraction.ts';
import type { Unit } from '../../../quantity/units.ts';
import { numberIn } from '../../check/rowJson.ts';
import type { BandPicture, Ends, Sides } from '../../page/pictures/band.ts';

interface Reported {
  readonly title: string;
  readonly description: string;
  readonly distance: string;
}

/**
 * A row's picture, in the numbers that `check` prints; none where nothing limits it.
 * @param openTo where a side that nothing limits is drawn to, in the base unit
 */
export function bandOf(
  row: Row,
  before: EarlierRow | undefined,
  openTo: number,
  unit: Unit,
  reported: Reported,
): BandPicture | undefined {
  const { new: fresh, wear, target, last } = row.limits.bands;
  const [judged] = row.routes;
  if (judged === undefined || row.characteristic.quantity === 'pass or fail') return undefined;
  if ([fresh, wear ?? last].every((band) => band?.min === undefined && band?.max === undefined))
    return undefined;
  return {
    kind: 'band',
    ...reported,
    reading: endsIn(judged, unit),
    before: endsOfBefore(before, unit),
    uncertainty: judged.route.expanded / toNumber(unit.factor),
    fresh: sidesIn(fresh, unit),
    target: sidesIn(target, unit),
    wear: sidesIn(wear ?? last, unit),
    openTo: openTo / toNumber(unit.factor),
  };
}

const endsIn = ({ least, greatest }: JudgedRoute, unit: Unit): Ends => ({
  least: numberIn(least, unit),
  greatest: numberIn(greatest, unit),
});

const endsOfBefore = (before: EarlierRow | undefined, unit: Unit): Ends | undefined => {
  const [judged] = before?.row.routes ?? [];
  return judged && endsIn(judged, unit);
};

const sidesIn = (band: SidedLimits | undefined, unit: Unit): Sides | undefined =>
  band && {
    min: band.min && numberIn(band.min.amount, unit),
    max: band.max && numberIn(band.max.amount, unit),
  };
