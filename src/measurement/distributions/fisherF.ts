import { betaPower, incompleteBeta } from './beta.ts';
import { requireProbability } from './normal.ts';
import { requireDof } from './studentT.ts';
import { positiveQuantile, type Tails } from './tails.ts';

/** The probability that F with `top` and `bottom` degrees of freedom (above zero, finite) is at most `f`. */
export const fCdf = (f: number, top: number, bottom: number): number => fTails(f, top, bottom).below;

/** The probability that F is above `f`: the p of an analysis of variance. It keeps its digits however small. */
export const fUpperTail = (f: number, top: number, bottom: number): number => fTails(f, top, bottom).above;

/** The f below which F lies with probability `p`, 0 ≤ p ≤ 1. */
export function fQuantile(p: number, top: number, bottom: number): number {
  requireProbability(p);
  const distribution = {
    tails: (f: number): Tails => fTails(f, top, bottom),
    density: (f: number): number => {
      const { x, y } = shares(f, top, bottom);
      return betaPower(x, y, top / 2, bottom / 2) / f;
    },
  };
  return positiveQuantile(distribution, { below: p, above: 1 - p });
}

function fTails(f: number, top: number, bottom: number): Tails {
  for (const dof of [top, bottom]) {
    requireDof(dof);
    if (dof === Number.POSITIVE_INFINITY) throw new RangeError('F needs finite degrees of freedom');
  }
  if (f <= 0) return { below: 0, above: 1 };
  const { x, y } = shares(f, top, bottom);
  return incompleteBeta(x, y, top / 2, bottom / 2);
}

/** top·f / (top·f + bottom) and what it lacks to one; f may be infinite. */
function shares(f: number, top: number, bottom: number): { readonly x: number; readonly y: number } {
  const ratio = (top / bottom) * f;
  return { x: 1 / (1 + 1 / ratio), y: 1 / (1 + ratio) };
}
