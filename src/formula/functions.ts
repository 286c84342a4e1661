import {
  absolute,
  divide,
  type Fraction,
  fraction,
  greatest,
  least,
  mean,
  multiply,
  round,
  subtract,
  sum,
} from '../quantity/fraction.ts';
import { squareRoot } from './square-root.ts';

export type FunctionName = 'abs' | 'max' | 'mean' | 'min' | 'round' | 'spread' | 'sqrt' | 'sum';

export interface FormulaFunction {
  /** The fewest and the most values it takes. */
  readonly fewest: number;
  readonly most: number;
  /** It takes several positions at once, such as `bore[*]`; of one value alone it would say nothing. */
  readonly takesSeveral?: true;
  /** As a person writes it. */
  readonly usage: string;
  readonly apply: (first: Fraction, rest: readonly Fraction[]) => Fraction;
}

/** The most decimals that `round` keeps: far finer than any length a document can state. */
export const MOST_ROUND_PLACES = 15;

/** Greatest, least, mean, sum, and greatest less least, of values or of positions. */
export const FUNCTIONS: Readonly<Record<FunctionName, FormulaFunction>> = {
  abs: { fewest: 1, most: 1, usage: 'abs(x)', apply: absolute },
  max: ofSeveral('max', greatest),
  mean: ofSeveral('mean', mean),
  min: ofSeveral('min', least),
  round: { fewest: 1, most: 2, usage: 'round(x) or round(x, places)', apply: roundTo },
  spread: ofSeveral('spread', (values) => subtract(greatest(values), least(values))),
  sqrt: { fewest: 1, most: 1, usage: 'sqrt(x)', apply: squareRoot },
  sum: ofSeveral('sum', sum),
};

function ofSeveral(name: string, of: (values: readonly Fraction[]) => Fraction): FormulaFunction {
  return {
    fewest: 1,
    most: Number.POSITIVE_INFINITY,
    takesSeveral: true,
    usage: `${name}(a, b, …)`,
    apply: (first, rest) => of([first, ...rest]),
  };
}

export const FUNCTION_NAMES: readonly string[] = Object.keys(FUNCTIONS);

/** Own entries only: `constructor` and its like stand on every object and are no functions of ours. */
export const isFunctionName = (name: string): name is FunctionName => Object.hasOwn(FUNCTIONS, name);

/** A half goes away from zero, as on paper. The parser has checked that the places are a small whole number. */
function roundTo(value: Fraction, [places]: readonly Fraction[]): Fraction {
  const scale = fraction(10n ** (places === undefined ? 0n : round(places)));
  return divide(fraction(round(multiply(value, scale))), scale);
}
