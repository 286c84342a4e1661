import type { DecisionRule } from '../../documents/engine/shop.ts';
import type { BandName } from '../../documents/limits/bands.ts';
import { conformanceProbability, type MeasuredSpan } from '../../measurement/conformance.ts';
import { add, compare, type Fraction, negate, subtract, toNumber } from '../../quantity/fraction.ts';
import {
  type Bands,
  decidingLimits,
  SIDES,
  type Side,
  type SidedLimits,
  type SideLimit,
} from './sideLimit.ts';
import { type PointRange, standing } from './spans.ts';

export type Verdict =
  | 'ok'
  | 'off target'
  | 'worn'
  | 'undecided'
  | 'out'
  | 'accepted'
  | 'missing'
  | 'left out';

type Ends = Pick<Judged, 'least' | 'greatest' | 'spans'>;

/** What is judged: the ends of what was measured, and how far they can be trusted. */
export interface Judged {
  readonly least: Fraction;
  readonly greatest: Fraction;
  /** Standard uncertainty and degrees of freedom. */
  readonly u: number;
  readonly dof: number;
  /** Expanded uncertainty, 95 %. */
  readonly expanded: number;
  /** Of a reading that was given as a range: then the uncertainty is what is left besides. */
  readonly spans?: readonly PointRange[] | undefined;
}

export interface Judgement {
  /** Null where no limit decides. */
  readonly verdict: Verdict | null;
  readonly deciding: SidedLimits;
  /** That the value lies inside, under the guarded rule. */
  readonly probability: number | null;
  /** A deciding limit lies within the expanded uncertainty. */
  readonly marginal: boolean;
  /** The limit that the verdict speaks of, and how far the value lies beyond it. */
  readonly past: Past | undefined;
}

export interface Past {
  readonly side: Side;
  readonly limit: SideLimit;
  /** Positive, in the base unit. */
  readonly by: Fraction;
}

const NONE: SidedLimits = { min: undefined, max: undefined };

export function judge(
  value: Judged,
  bands: Bands,
  order: readonly BandName[],
  rule: DecisionRule,
): Judgement {
  const deciding = decidingLimits(bands, order);
  const plain = { deciding, probability: null, marginal: isMarginal(value, deciding) };
  const out = beyond(value, deciding);
  const better = (): Pick<Judgement, 'verdict' | 'past'> => insideVerdict(value, bands, deciding);
  if (deciding.min === undefined && deciding.max === undefined) {
    return { ...plain, ...(bands.target === undefined ? { verdict: null, past: undefined } : better()) };
  }
  // A range says nothing of where in it the part lies.
  if (out === undefined && sideAcross(value, deciding) !== undefined)
    return { ...plain, verdict: 'undecided', past: undefined };
  if (rule === 'simple') {
    return { ...plain, ...(out === undefined ? better() : { verdict: 'out', past: out }) };
  }
  const probability = probabilityInside(value, deciding);
  // Where the tolerance is far below u, even a value in the middle of it is unlikely to be inside. It lies beyond no
  // limit and proves none passed: the instrument cannot tell, and that is undecided.
  if (probability <= OUTSIDE && out !== undefined)
    return { ...plain, probability, verdict: 'out', past: out };
  if (probability < INSIDE) return { ...plain, probability, verdict: 'undecided', past: out };
  return { ...plain, probability, ...better() };
}

/** A test that failed anywhere is out, whatever any limit says; it has none. */
export const judgeTest = ({ least }: Pick<Judged, 'least'>): Judgement => ({
  verdict: least.n === 0n ? 'out' : 'ok',
  deciding: NONE,
  probability: null,
  marginal: false,
  past: undefined,
});

/** ISO 14253-1:2017 (wording from memory): proven inside from 95 % conformance probability, outside up to 5 %. */
const INSIDE = 0.95;
const OUTSIDE = 0.05;

const probabilityInside = (value: Judged, { min, max }: SidedLimits): number =>
  conformanceProbability({
    ...endsOf(value),
    u: value.u,
    dof: value.dof,
    ...(min === undefined ? {} : { min: toNumber(min.amount) }),
    ...(max === undefined ? {} : { max: toNumber(max.amount) }),
  });

function endsOf({ least, greatest, spans }: Judged): Pick<MeasuredSpan, 'least' | 'greatest'> {
  if (spans === undefined) return { least: toNumber(least), greatest: toNumber(greatest) };
  return {
    least: Math.min(...spans.map(({ from }) => toNumber(from))),
    greatest: Math.max(
      ...spans.map(({ to }) => (to === undefined ? Number.POSITIVE_INFINITY : toNumber(to))),
    ),
  };
}

/** The side whose limit lies inside a range that was read. */
export const sideAcross = ({ spans = [] }: Pick<Judged, 'spans'>, limits: SidedLimits): Side | undefined =>
  SIDES.find((side) => {
    const limit = limits[side];
    return limit !== undefined && spans.some((span) => standing(span, side, limit.amount) === 'across');
  });

/** Of a value inside its deciding limits: worn beyond `new` where `wear` decided, else off its target. */
function insideVerdict(
  value: Judged,
  bands: Bands,
  deciding: SidedLimits,
): Pick<Judgement, 'verdict' | 'past'> {
  const middle = { least: value.least, greatest: value.greatest };
  const worn = beyond(middle, {
    min: deciding.min !== undefined && deciding.min.band !== 'new' ? bands.new?.min : undefined,
    max: deciding.max !== undefined && deciding.max.band !== 'new' ? bands.new?.max : undefined,
  });
  if (worn !== undefined) return { verdict: 'worn', past: worn };
  const off = beyond(middle, bands.target ?? NONE);
  return off === undefined ? { verdict: 'ok', past: undefined } : { verdict: 'off target', past: off };
}

/** The limit that a value lies farthest beyond. */
const beyond = (value: Ends, { min, max }: SidedLimits): Past | undefined =>
  farther(pastOf(value, 'min', min), pastOf(value, 'max', max));

/** The limits that a value lies beyond, the farthest first; exactly on a limit is inside it. */
export function passedLimits(value: Ends, limits: SidedLimits): readonly Past[] {
  const passed = SIDES.flatMap((side) => pastOf(value, side, limits[side]) ?? []);
  return passed.sort((a, b) => compare(b.by, a.by));
}

const pastOf = (value: Ends, side: Side, limit: SideLimit | undefined): Past | undefined =>
  limit !== undefined && isBeyond(value, side, limit)
    ? { side, limit, by: beyondBy(value, side, limit) }
    : undefined;

const farther = (a: Past | undefined, b: Past | undefined): Past | undefined =>
  a === undefined || b === undefined ? (a ?? b) : compare(b.by, a.by) > 0 ? b : a;

const isBeyond = (value: Ends, side: Side, limit: SideLimit): boolean =>
  value.spans === undefined
    ? beyondBy(value, side, limit).n > 0n
    : value.spans.some((span) => standing(span, side, limit.amount) === 'beyond');

/** How far a value lies beyond the limit that it is worst by; negative inside. */
export const distanceBeyond = (value: Ends, limits: SidedLimits): Fraction | undefined =>
  SIDES.flatMap((side) => {
    const limit = limits[side];
    return limit === undefined ? [] : [beyondBy(value, side, limit)];
  }).sort((a, b) => compare(b, a))[0];

const beyondBy = (value: Ends, side: Side, limit: SideLimit): Fraction =>
  side === 'max' ? subtract(value.greatest, limit.amount) : add(limit.amount, negate(value.least));

const isMarginal = (value: Judged, limits: SidedLimits): boolean =>
  SIDES.some((side) => {
    const limit = limits[side];
    return limit !== undefined && distances(value, side, limit).some((each) => each < value.expanded);
  });

/** Of a range how far its ends lie from a limit. */
const distances = (value: Judged, side: Side, limit: SideLimit): readonly number[] => {
  const ends = value.spans?.flatMap(({ from, to = from }) => [from, to]);
  const gaps = ends?.map((end) => subtract(end, limit.amount)) ?? [beyondBy(value, side, limit)];
  return gaps.map((gap) => Math.abs(toNumber(gap)));
};
