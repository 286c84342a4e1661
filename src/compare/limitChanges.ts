import type { Row } from '../checks/judge/row.ts';
import type { SideLimit } from '../checks/judge/sideLimit.ts';
import { BAND_NAMES, type BandName } from '../documents/limits/bands.ts';
import {
  isSameTemperature,
  STANDARD_TEMPERATURE,
  type StatedTemperature,
} from '../measurement/temperature.ts';
import { equals, type Fraction } from '../quantity/fraction.ts';
import { nearestTurn } from '../quantity/turn.ts';
import type { Change } from './change.ts';
import { isSameSize } from './unlike.ts';

/** A limit that is not the same on both sides: a change of the sheet, not of the engine. */
export interface LimitChange {
  readonly row: Row;
  readonly band: BandName;
  readonly side: 'min' | 'max';
  readonly a: SideLimit | undefined;
  readonly b: SideLimit | undefined;
}

/** Of everything that both sides measured of one size, in the order of the changes. */
export const limitChanges = (changes: readonly Change[]): readonly LimitChange[] =>
  changes.flatMap(({ a, b }) =>
    a === undefined || b === undefined || !isSameSize(a, b) ? [] : changesOfRow(a.row, b.row),
  );

const changesOfRow = (before: Row, after: Row): readonly LimitChange[] =>
  BAND_NAMES.flatMap((band) =>
    (['min', 'max'] as const).flatMap((side) => {
      const [a, b] = [before.limits.bands[band]?.[side], after.limits.bands[band]?.[side]];
      return sameLimit(a, b, after.characteristic.cycle) ? [] : [{ row: after, band, side, a, b }];
    }),
  );

const sameLimit = (
  a: SideLimit | undefined,
  b: SideLimit | undefined,
  cycle: Fraction | undefined,
): boolean =>
  a === undefined || b === undefined
    ? a === b
    : equals(nearestTurn(statedAmount(a), statedAmount(b), cycle), statedAmount(b)) &&
      isSameTemperature(warmthOf(a), warmthOf(b));

/** As the sheet has it: a limit that was moved to the temperature of a value has not changed. */
export const statedAmount = ({ amount, stated }: SideLimit): Fraction => stated ?? amount;

export const warmthOf = ({ warm }: SideLimit): StatedTemperature => warm ?? STANDARD_TEMPERATURE;
