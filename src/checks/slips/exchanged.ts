import { type Finding, finding, type Reading } from '../finding.ts';
import { serviceShifts } from '../grades/usualGrades.ts';
import { placeOfPoint } from '../value/readingPoints.ts';
import { type Fit, fitsOf, placesOfFit } from './fits.ts';
import { IMPOSSIBLE } from './impossible.ts';
import { isIn, shifted } from './plausibleSizes.ts';
import { isPressed } from './possible.ts';
import type { SlipContext } from './slipContext.ts';

/** Journals in the list of bores, and bores in that of journals: no shaft is smaller than its bore, and the other way round all are. */
export const exchangedFindings = (context: SlipContext): readonly Finding[] =>
  fitsOf(context.view.registry).flatMap((fit) => exchanged(fit, context) ?? []);

const FEWEST = 2;

function exchanged(fit: Fit, context: SlipContext): Finding | undefined {
  const { view } = context;
  const { outer, inner, clearance } = fit;
  const pairs = pairsOf(fit, context);
  if (pairs.length < FEWEST || !pairs.every((pair) => isExchanged(pair, fit, context))) return undefined;
  // Where one of the lists is as it should be, the other alone has moved.
  if (pairs.every(({ outerAt, outerRead }) => isUsual(outer, outerAt, outerRead, context))) return undefined;
  if (pairs.every(({ innerAt, innerRead }) => isUsual(inner, innerAt, innerRead, context))) return undefined;
  const point = context.points.find(
    ({ characteristic }) => characteristic === inner || characteristic === outer,
  );
  if (point === undefined) return undefined;
  const message = `${inner.label} and ${outer.label}: at all ${pairs.length} positions the inner part is larger than the outer, so that ${clearance.label} is below zero, which is impossible: are the two lists exchanged?`;
  return finding(IMPOSSIBLE, placeOfPoint(view.session, point), message, {
    measure: inner.id,
    covers: pairs.flatMap(({ outerAt, innerAt }): readonly Reading[] => [
      { measure: outer.id, at: outerAt },
      { measure: inner.id, at: innerAt },
    ]),
  });
}

interface Pair {
  readonly outerAt: Reading['at'];
  readonly innerAt: Reading['at'];
  readonly outerRead: number;
  readonly innerRead: number;
  /** The position of their clearance. */
  readonly at: Reading['at'];
}

function pairsOf(fit: Fit, { view, expectations }: SlipContext): readonly Pair[] {
  const [outers, inners] = [expectations.medians(fit.outer), expectations.medians(fit.inner)];
  if (outers.size < FEWEST || inners.size < FEWEST) return [];
  return view.engine.document.layout.positionsOf(fit.clearance.family).flatMap((at) => {
    const places = placesOfFit(fit, at, view);
    if (places === undefined) return [];
    const [outerRead, innerRead] = [outers.get(places.outer), inners.get(places.inner)];
    return outerRead === undefined || innerRead === undefined
      ? []
      : [{ outerAt: places.outer, innerAt: places.inner, outerRead, innerRead, at }];
  });
}

function isUsual(of: Fit['outer'], at: Reading['at'], read: number, { expectations }: SlipContext): boolean {
  const range = expectations.fittedRange(of, at);
  return range !== undefined && isIn(read, range);
}

/** Each has the other's size, as far as that is known. */
function isExchanged(pair: Pair, fit: Fit, { expectations, view }: SlipContext): boolean {
  const { outer, inner } = fit;
  const couldBe = (characteristic: Fit['outer'], at: Reading['at'], read: number, by: number): boolean => {
    const range = expectations.fittedRange(characteristic, at);
    return range === undefined || isIn(read, shifted(range, by));
  };
  return (
    pair.innerRead > pair.outerRead &&
    !isPressed(fit, pair.at, expectations) &&
    serviceShifts(inner, view.registry.parts).some(
      (by) =>
        couldBe(outer, pair.outerAt, pair.innerRead, by) && couldBe(inner, pair.innerAt, pair.outerRead, by),
    )
  );
}
