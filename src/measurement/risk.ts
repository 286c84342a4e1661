import { conformanceProbability } from './conformance.ts';
import { normalCdf, normalDensity } from './distributions/normal.ts';

/** How parts of one kind measure as a rule, before any of them is measured. */
export interface UsualParts {
  readonly mean: number;
  /** Standard deviation, above zero. */
  readonly deviation: number;
}

export interface Window {
  readonly min?: number | undefined;
  readonly max?: number | undefined;
}

/** Shares of all parts: bad ones that are accepted, and good ones that are rejected. */
export interface Risks {
  /** The consumer's risk. */
  readonly badAccepted: number;
  /** The producer's risk. */
  readonly goodRejected: number;
}

/** A reading, drawn towards what such parts are as a rule (JCGM 106:2012 clause 6, normal by normal; clause from memory). */
export function drawnTowards(
  reading: number,
  u: number,
  { mean, deviation }: UsualParts,
): { readonly value: number; readonly u: number } {
  const share = deviation ** 2 / (deviation ** 2 + u ** 2);
  return { value: mean + share * (reading - mean), u: Math.sqrt(share) * u };
}

/**
 * The global risks of JCGM 106:2012 clause 9 (from memory): over all parts as they usually are, each measured with the standard
 * uncertainty `u` and accepted where it is read inside `accept`. Undefined stands for a rule that accepts nothing.
 */
export function globalRisks(
  usual: UsualParts,
  u: number,
  tolerance: Window,
  accept: Window | undefined,
): Risks {
  const [low, high] = [tolerance.min, tolerance.max].map((limit, index) =>
    limit === undefined ? (index === 0 ? -FAR : FAR) : within((limit - usual.mean) / usual.deviation),
  ) as [number, number];
  const isAccepted = (z: number): number => acceptance(usual.mean + z * usual.deviation, u, accept);
  return {
    badAccepted: integral(-FAR, low, isAccepted) + integral(high, FAR, isAccepted),
    goodRejected: integral(low, high, (z) => 1 - isAccepted(z)),
  };
}

/** In deviations: beyond it there are no parts. */
const FAR = 9;
const within = (z: number): number => Math.min(FAR, Math.max(-FAR, z));

function acceptance(size: number, u: number, accept: Window | undefined): number {
  if (accept === undefined) return 0;
  const below = accept.max === undefined ? 1 : normalCdf((accept.max - size) / u);
  const above = accept.min === undefined ? 0 : normalCdf((accept.min - size) / u);
  return Math.max(0, below - above);
}

/** Simpson's rule over the share of parts that lie at each place. */
function integral(from: number, to: number, weight: (z: number) => number): number {
  const steps = 1000;
  const width = (to - from) / steps;
  let sum = 0;
  for (let step = 0; step <= steps; step += 1) {
    const z = from + step * width;
    const factor = step === 0 || step === steps ? 1 : step % 2 === 0 ? 2 : 4;
    sum += factor * normalDensity(z) * weight(z);
  }
  return (sum * width) / 3;
}

/** Where a reading proves a part inside its limits with this probability; undefined where none can. */
export function provenWindow(limits: Window, u: number, probability: number): Window | undefined {
  const { min, max } = limits;
  const proves = (reading: number): boolean =>
    conformanceProbability({
      least: reading,
      greatest: reading,
      u,
      dof: Number.POSITIVE_INFINITY,
      min,
      max,
    }) >= probability;
  // With one limit a reading far from it is proven.
  const middle = ((min ?? (max ?? 0) - 20 * u) + (max ?? (min ?? 0) + 20 * u)) / 2;
  if (!proves(middle)) return undefined;
  return {
    min: min === undefined ? undefined : firstProven(min, middle, proves),
    max: max === undefined ? undefined : firstProven(max, middle, proves),
  };
}

function firstProven(limit: number, proven: number, proves: (reading: number) => boolean): number {
  let [not, is] = [limit, proven];
  for (let step = 0; step < 50; step += 1) {
    const middle = (not + is) / 2;
    if (proves(middle)) is = middle;
    else not = middle;
  }
  return is;
}
