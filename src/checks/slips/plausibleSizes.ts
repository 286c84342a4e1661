import { BAND_NAMES } from '../../documents/limits/bands.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { Bands, Side } from '../judge/sideLimit.ts';

/** Sizes that an honest part may have, in the base unit; open where nothing is known. */
export interface Range {
  readonly from: number;
  readonly to: number;
}

export const isIn = (amount: number, { from, to }: Range): boolean => amount >= from && amount <= to;

export const shifted = ({ from, to }: Range, by: number): Range => ({ from: from + by, to: to + by });

export const within = (middle: number, half: number): Range => ({ from: middle - half, to: middle + half });

export const wider = ({ from, to }: Range, by: number): Range => ({ from: from - by, to: to + by });

/**
 * The limits widened by what honest parts do. On a side that wears twice the way from new to worn out; on a
 * side that does not wear, and past which a part was machined at most, the width of the limits for new parts.
 */
export const rangeOfBands = (
  bands: Bands,
  isGap = false,
): { readonly from?: number | undefined; readonly to?: number | undefined } => {
  const from = endOfBands(bands, 'min');
  return { from: isGap ? leastGap(bands, from) : from, to: endOfBands(bands, 'max') };
};

/** From the least that any of them may be to the greatest. */
export function rangeOfAll(all: readonly Bands[], isGapped: boolean): ReturnType<typeof rangeOfBands> {
  const ranges = all.map((bands) => rangeOfBands(bands, isGapped));
  const ends = (of: 'from' | 'to'): readonly number[] => ranges.flatMap((range) => range[of] ?? []);
  const [from, to] = [ends('from'), ends('to')];
  return {
    from: from.length < all.length || from.length === 0 ? undefined : Math.min(...from),
    to: to.length < all.length || to.length === 0 ? undefined : Math.max(...to),
  };
}

/** What the limits themselves allow, from new to worn out; open where none is stated. */
export function statedRange(bands: Bands): Range {
  const [mins, maxes] = [amountsOf(bands, 'min'), amountsOf(bands, 'max')];
  return {
    from: mins.length === 0 ? Number.NEGATIVE_INFINITY : Math.min(...mins),
    to: maxes.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...maxes),
  };
}

const amountsOf = (bands: Bands, side: Side): readonly number[] =>
  BAND_NAMES.flatMap((name) => bands[name]?.[side] ?? []).map(({ amount }) => toNumber(amount));

/** Gaps open with wear and never close: one of less than half of what is allowed is no honest one. */
function leastGap(bands: Bands, from: number | undefined): number | undefined {
  const allowed = amountsOf(bands, 'min');
  const least = Math.min(...allowed);
  return least < 0 ? from : allowed.length === 0 ? 0 : least / CLOSED;
}

const CLOSED = 2;

function endOfBands(bands: Bands, side: Side): number | undefined {
  const of = (name: keyof Bands, which: Side = side): number | undefined => {
    const limit = bands[name]?.[which];
    return limit === undefined ? undefined : toNumber(limit.amount);
  };
  const [fresh, wear] = [of('new') ?? of('target'), of('wear')];
  const last = wear ?? fresh;
  if (last === undefined) return undefined;
  const [low, high] = [of('new', 'min') ?? of('target', 'min'), of('new', 'max') ?? of('target', 'max')];
  const width = low === undefined || high === undefined ? undefined : high - low;
  const span = wear === undefined || fresh === undefined ? undefined : Math.abs(wear - fresh);
  const wears = bands.wear?.min !== undefined || bands.wear?.max !== undefined;
  // Where no wear limit is stated either side may wear, and nobody has said how far.
  const unknown = Math.max(UNKNOWN_WEAR * (width ?? 0), unknownWear(last));
  const stated = wears ? width : undefined;
  // Wear that is allowed not at all happens all the same.
  const margin = span === undefined ? (stated ?? unknown) : Math.max(span, (width ?? 0) / 2);
  if (side === 'min') return last - margin;
  // Clearances, gaps and end play open up to twice what is allowed and more before anyone looks.
  return last > 0 && last < WHOLE_PART ? Math.max(last + margin, 2 * last) : last + margin;
}

/** Without a wear limit parts wear by several widths of their limits for new ones. */
const UNKNOWN_WEAR = 4;

/** Where no wear limit says what is usual: a quarter of a percent of the size, and of whole parts 0.3 mm. */
export const unknownWear = (size: number): number =>
  Math.max(0.0025 * Math.abs(size), Math.abs(size) > WHOLE_PART ? 3_000_000 : 0);
/** 25 mm: below it are clearances and shells. */
const WHOLE_PART = 250_000_000;
