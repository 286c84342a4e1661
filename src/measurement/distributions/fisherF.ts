import { incompleteBeta } from './beta.ts';
import { requireDof } from './studentT.ts';

/**
 * The probability that F with `top` and `bottom` degrees of freedom (above zero, finite) is above `f`: the p of an analysis
 * of variance. It keeps its digits however small.
 */
export function fUpperTail(f: number, top: number, bottom: number): number {
  for (const dof of [top, bottom]) {
    requireDof(dof);
    if (dof === Number.POSITIVE_INFINITY) throw new RangeError('F needs finite degrees of freedom');
  }
  const { x, y } = shares(f, top, bottom);
  return incompleteBeta(x, y, top / 2, bottom / 2).above;
}

/** top·f / (top·f + bottom) and what it lacks to one; f may be infinite. */
function shares(f: number, top: number, bottom: number): { readonly x: number; readonly y: number } {
  const ratio = (top / bottom) * f;
  return { x: 1 / (1 + 1 / ratio), y: 1 / (1 + ratio) };
}
