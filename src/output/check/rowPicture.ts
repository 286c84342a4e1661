import type { JudgedRoute, Row } from '../../checks/judge/row.ts';
import type { SideLimit } from '../../checks/judge/sideLimit.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { drawBand, type Glyphs } from '../terminal/picture.ts';

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
export function pictureOf(
  row: Row,
  { least, greatest }: JudgedRoute,
  width: number,
  span: Extent,
  glyphs: Glyphs,
): string {
  const { deciding } = row.judgement;
  const { target, new: fresh } = row.limits.bands;
  const of = (limit: SideLimit | undefined): number | undefined => limit && toNumber(limit.amount);
  const [min, max] = [of(deciding.min), of(deciding.max)];
  const openTo = max !== undefined && min === undefined ? (of(fresh?.min) ?? 0) : of(fresh?.max);
  const end = isFar(openTo, max) ? undefined : openTo;
  return drawBand(
    {
      least: toNumber(least),
      greatest: toNumber(greatest),
      min,
      max,
      target: target && { min: of(target.min), max: of(target.max) },
      openTo:
        min === undefined
          ? Math.min(end ?? span.least, span.least)
          : Math.max(end ?? span.greatest, span.greatest),
    },
    width,
    glyphs,
  );
}

/** A bore's picture does not begin at nought: only what lies near the limit in size is drawn to. */
const isFar = (openTo: number | undefined, max: number | undefined): boolean =>
  openTo === 0 && max !== undefined && max > 50_000_000;
