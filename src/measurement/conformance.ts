import { normalQuantile } from './distributions/normal.ts';
import { tCdf, twoSidedT } from './distributions/studentT.ts';
import { sum, sumOfSquares } from './sample.ts';

/** A measured value that may be a span (least to greatest), with its limits: all in one unit. */
export interface MeasuredSpan {
  readonly least: number;
  readonly greatest: number;
  /** Standard uncertainty, in the same unit. */
  readonly u: number;
  /** Degrees of freedom of `u`: above zero, Infinity where it is known well. */
  readonly dof: number;
  readonly min?: number | undefined;
  readonly max?: number | undefined;
}

/**
 * The probability that what was measured lies inside its limits, least and greatest alike (JCGM 106:2012 clause 7,
 * clause from memory): F((max − greatest)/u) − F((min − least)/u), F Student's t, an absent max counting 1 and an
 * absent min 0. Without uncertainty it is 1 or 0, and a value on its limit is inside.
 */
export function conformanceProbability({ least, greatest, u, dof, min, max }: MeasuredSpan): number {
  if (!(u >= 0)) throw new RangeError(`a standard uncertainty is not negative, as ${u} is`);
  if (u === 0) return (min === undefined || least >= min) && (max === undefined || greatest <= max) ? 1 : 0;
  const from = min === undefined ? Number.NEGATIVE_INFINITY : (min - least) / u;
  const to = max === undefined ? Number.POSITIVE_INFINITY : (max - greatest) / u;
  // Far below its min both terms are nearly one: the same difference of the mirrored tails keeps its digits.
  const probability = from > 0 ? tCdf(-from, dof) - tCdf(-to, dof) : tCdf(to, dof) - tCdf(from, dof);
  // A span wider than its limits would count as less than nothing.
  return Math.max(0, probability);
}

/**
 * The factor from a standard to an expanded uncertainty: Student's t, two-sided. The degrees of freedom are
 * truncated to a whole number first (JCGM 100:2008 G.4.1), and are at least one; infinitely many give 1.960 at 95 %.
 */
export function expandedFactor(dof: number, confidence = 0.95): number {
  if (Number.isNaN(dof)) throw new RangeError('the degrees of freedom are not a number');
  return twoSidedT(confidence, Math.max(1, Math.floor(dof)));
}

/** Measurement capability index of a two-sided limit, tolerance = max − min (JCGM 106:2012 7.6): tolerance / 4u. */
export const capability = (tolerance: number, u: number): number => tolerance / (4 * u);

/**
 * The most that can be said of a part lies in the middle of its limits, where its conformance probability is
 * 2Φ(2C) − 1. That reaches 95 % at C = 0.97998 only: below it no reading can prove a part inside.
 */
export const LEAST_CAPABILITY = 0.98;

/** The greatest uncertainty with which a reading between these limits can still be proven inside. */
export const coarsestUncertainty = (tolerance: number): number => tolerance / (2 * normalQuantile(0.975));

/** One contribution to a combined standard uncertainty: its size, its degrees of freedom, and the estimate that both come from. */
export interface UncertaintyTerm {
  readonly u: number;
  readonly dof: number;
  readonly estimate?: string | undefined;
}

/**
 * Effective degrees of freedom of a root sum of squares, by Welch–Satterthwaite (JCGM 100:2008 G.4.1):
 * u_c⁴ / Σ(u_i⁴ / ν_i). Terms known well drop out; Infinity when all do. It holds for estimates that are independent:
 * one deviation found by a study and met in two readings is one estimate, whose squares add up before they count.
 */
export function welchSatterthwaite(terms: readonly UncertaintyTerm[]): number {
  // Most are: nearly all terms are stated, and known as well as can be.
  if (terms.every(({ dof }) => dof === Number.POSITIVE_INFINITY)) return Number.POSITIVE_INFINITY;
  const variance = sumOfSquares(terms.map(({ u }) => u));
  if (variance === 0) return Number.POSITIVE_INFINITY;
  // Shares of the whole instead of fourth powers, which would overflow or vanish in some units.
  const shareOf = ({ u }: UncertaintyTerm): number => (u * u) / variance;
  const together = new Map<string | UncertaintyTerm, number>();
  for (const term of terms)
    together.set(estimateOf(term), (together.get(estimateOf(term)) ?? 0) + shareOf(term));
  const shareWithOthers = (term: UncertaintyTerm): number => together.get(estimateOf(term)) ?? Number.NaN;
  return 1 / sum(terms.map((term) => (shareOf(term) * shareWithOthers(term)) / term.dof));
}

const estimateOf = (term: UncertaintyTerm): string | UncertaintyTerm => term.estimate ?? term;
