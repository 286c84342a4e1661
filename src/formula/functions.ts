import {
  absolute,
  divide,
  type Fraction,
  fraction,
  greatest,
  least,
  multiply,
  round,
} from '../quantity/fraction.ts';
import { squareRoot } from './square-root.ts';

export type FunctionName = 'abs' | 'max' | 'min' | 'round' | 'sqrt';

export interface FormulaFunction {
  /** The fewest and the most values it takes. */
  readonly fewest: number;
  readonly most: number;
  /** As a person writes it. */
  readonly usage: string;
  readonly apply: (first: Fraction, rest: readonly Fraction[]) => Fraction;
}

/** The most decimals that `round` keeps: far finer than any length a document can state. */
export const MOST_ROUND_PLACES = 15;

export const FUNCTIONS: Readonly<Record<FunctionName, FormulaFunction>> = {
  abs: { fewest: 1, most: 1, usage: 'abs(x)', apply: absolute },
  max: {
    fewest: 1,
    most: Number.POSITIVE_INFINITY,
    usage: 'max(a, b, …)',
    apply: (first, rest) => greatest([first, ...rest]),
  },
  min: {
    fewest: 1,
    most: Number.POSITIVE_INFINITY,
    usage: 'min(a, b, …)',
    apply: (first, rest) => least([first, ...rest]),
  },
  round: { fewest: 1, most: 2, usage: 'round(x) or round(x, places)', apply: roundTo },
  sqrt: { fewest: 1, most: 1, usage: 'sqrt(x)', apply: squareRoot },
};

export const FUNCTION_NAMES: readonly string[] = Object.keys(FUNCTIONS);

/** Own entries only: `constructor` and its like stand on every object and are no functions of ours. */
export const isFunctionName = (name: string): name is FunctionName => Object.hasOwn(FUNCTIONS, name);

/** A half goes away from zero, as on paper. The parser has checked that the places are a small whole number. */
function roundTo(value: Fraction, [places]: readonly Fraction[]): Fraction {
  const scale = fraction(10n ** (places === undefined ? 0n : round(places)));
  return divide(fraction(round(multiply(value, scale))), scale);
}
