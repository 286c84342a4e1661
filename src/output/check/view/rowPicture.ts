import type { JudgedRoute, Row } from '../../../checks/judge/row.ts';
import type { SideLimit } from '../../../checks/judge/sideLimit.ts';
import { toNumber } from '../../../quantity/fraction.ts';
import type { PictureOf } from '../../terminal/picture.ts';

/** From the least to the greatest of a table's values, so that its pictures have one scale. */
export interface Extent {
  readonly least: number;
  readonly greatest: number;
}

export function extentOf(rows: readonly Row[]): Extent {
  const routes = rows.flatMap((row) => row.routes);
  return {
    least: Math.min(...routes.map((route) => toNumber(route.least))),
    greatest: Math.max(...routes.map((route) => toNumber(route.greatest))),
  };
}

/** Where a row's value lies between the limits that decide. */
export function pictureOf(row: Row, { least, greatest }: JudgedRoute, span: Extent): PictureOf {
  const { min, max } = row.judgement.deciding;
  const { target } = row.limits.bands;
  return {
    least: toNumber(least),
    greatest: toNumber(greatest),
    min: numberOf(min),
    max: numberOf(max),
    target: target && { min: numberOf(target.min), max: numberOf(target.max) },
    openTo: openEndOf(row, span),
  };
}

const numberOf = (limit: SideLimit | undefined): number | undefined => limit && toNumber(limit.amount);

/** Where the side that nothing limits is drawn to, in the base unit. */
export function openEndOf({ judgement, limits }: Row, span: Extent): number {
  const [min, max] = [numberOf(judgement.deciding.min), numberOf(judgement.deciding.max)];
  const fresh = limits.bands.new;
  const openTo = max !== undefined && min === undefined ? (numberOf(fresh?.min) ?? 0) : numberOf(fresh?.max);
  const end = isFar(openTo, max) ? undefined : openTo;
  return min === undefined
    ? Math.min(end ?? span.least, span.least)
    : Math.max(end ?? span.greatest, span.greatest);
}

/** A bore's picture does not begin at nought: only what lies near the limit in size is drawn to. */
const isFar = (openTo: number | undefined, max: number | undefined): boolean =>
  openTo === 0 && max !== undefined && max > 50_000_000;
