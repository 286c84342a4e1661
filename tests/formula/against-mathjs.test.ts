import fc from 'fast-check';
import { all, type BigNumber, type Complex, create, type MathNode } from 'mathjs';
import { expect, it } from 'vitest';
import { type FormulaProblem, isFormulaProblem } from '../../src/formula/problem.ts';
import type { Fraction } from '../../src/quantity/fraction.ts';
import { runs } from '../propertyRuns.ts';
import { tried } from '../tries.ts';
import { work } from './parsed.ts';
import { formulaText } from './random-formula.ts';

const VALUES = { bore: '4.1250', stroke: '5', wear: '-0.0003', cap_2: '0' };

/** Both work out decimals, not doubles; comparisons in the other library allow for a difference unless told not to. */
const STRICT = { relTol: 1e-60, absTol: 1e-60 };
if (all === undefined) throw new Error('the other library came without its functions');
const exact = create(all, { number: 'Fraction', ...STRICT });
const fine = create(all, { number: 'BigNumber', precision: 64, ...STRICT });

// It takes minus zero for a negative number under a root; adding zero takes the sign off.
const root = fine.sqrt;
fine.import(
  { sqrt: (value: BigNumber | Complex) => root(fine.add(value, 0) as BigNumber) },
  { override: true },
);

const readings = <T>(convert: (text: string) => T): Record<string, T> =>
  Object.fromEntries(Object.entries(VALUES).map(([name, text]) => [name, convert(text)]));
const EXACT_READINGS = readings((text) => exact.fraction(text));
const FINE_READINGS = readings((text) => fine.bignumber(text));

const RUNS = runs(32_000);
const texts = new Set(fc.sample(formulaText, RUNS));
const results: readonly (readonly [string, Fraction | FormulaProblem])[] = [...texts].map((text) => [
  text,
  work(text, VALUES),
]);

const worked = results.flatMap(([text, ours]) => (isFormulaProblem(ours) ? [] : [[text, ours] as const]));

/** The other library only has roots and rounding for decimals of a fixed length. */
const isRational = (text: string): boolean => !/sqrt|round/.test(text);

/** It gives an infinity or a complex number where we refuse, and may lose either again: so each part is asked. */
function hasNoAnswer(text: string): boolean {
  let found = false;
  fine.parse(text).traverse((node: MathNode) => {
    if (node instanceof fine.OperatorNode && node.fn === 'divide') found ||= signOf(node.args[1]) === 0;
    if (node instanceof fine.FunctionNode && node.fn.name === 'sqrt') found ||= signOf(node.args[0]) === -1;
  });
  return found;
}

/** Minus one, zero or one; not a number for what is itself without an answer. */
function signOf(node: MathNode | undefined): number {
  try {
    const value = node?.evaluate(FINE_READINGS);
    return fine.isBigNumber(value) ? Math.sign(value.toNumber()) : Number.NaN;
  } catch {
    return Number.NaN; // It throws where a complex number is compared; that root is found by itself.
  }
}

it('what divides by zero or takes the root of a negative is refused, and nothing else', () => {
  const differences = results.filter(([text, ours]) => isFormulaProblem(ours) !== hasNoAnswer(text));
  expect(differences).toEqual([]);
  tried(results.length);
  expect(results.length).toBeGreaterThan(0.6 * RUNS.numRuns);
  expect(results.length - worked.length).toBeGreaterThan(0.015 * RUNS.numRuns);
});

it('sums, products and quotients are the same fractions that another library finds', () => {
  const rational = worked.filter(([text]) => isRational(text));
  const differences = rational.filter(([text, ours]) => {
    const theirs = exact.evaluate(text, EXACT_READINGS);
    return theirs.toFraction() !== (ours.d === 1n ? `${ours.n}` : `${ours.n}/${ours.d}`);
  });
  expect(differences).toEqual([]);
  expect(rational.length).toBeGreaterThan(0.075 * RUNS.numRuns);
});

it('roots and roundings agree with another library to fourteen digits and more', () => {
  const others = worked.filter(([text]) => !isRational(text));
  const differences = others.filter(([text, ours]) => {
    const theirs = fine.bignumber(fine.evaluate(text, FINE_READINGS));
    const off = fine.bignumber(`${ours.n}`).div(`${ours.d}`).minus(theirs).abs();
    return off.gt(theirs.abs().times('1e-14'));
  });
  expect(differences).toEqual([]);
  expect(others.length).toBeGreaterThan(0.3 * RUNS.numRuns);
});
