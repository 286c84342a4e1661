import { conformanceProbability } from './conformance.ts';
import { normalCdf, normalDensity, normalQuantile } from './distributions/normal.ts';

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
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = tolerance;
  const [low, high] = [
    within((min - usual.mean) / usual.deviation),
    within((max - usual.mean) / usual.deviation),
  ];
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
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = accept;
  return normalCdf((max - size) / u) - normalCdf((min - size) / u);
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
  const guard = guardBand(limits, u, probability);
  if (guard === undefined) return undefined;
  return {
    min: min === undefined ? undefined : min + guard,
    max: max === undefined ? undefined : max - guard,
  };
}

/** How far inside its limit a reading has to lie; undefined where not even the middle is far enough from both. */
function guardBand({ min, max }: Window, u: number, probability: number): number | undefined {
  if (min === undefined || max === undefined) return u * normalQuantile(probability);
  const proves = (band: number): boolean => {
    const reading = { least: min + band, greatest: min + band, u, dof: Number.POSITIVE_INFINITY };
    return conformanceProbability({ ...reading, min, max }) >= probability;
  };
  const toTheMiddle = (max - min) / 2;
  return proves(toTheMiddle) ? leastProven(toTheMiddle, proves) : undefined;
}

/** Halves what is left between a band that is too narrow and one that proves, until no double lies between them. */
function leastProven(band: number, proves: (band: number) => boolean): number {
  let [not, is] = [0, band];
  for (;;) {
    const middle = (not + is) / 2;
    if (middle === not || middle === is) return is;
    if (proves(middle)) is = middle;
    else not = middle;
  }
}
