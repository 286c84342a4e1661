import { fUpperTail } from './distributions/fisherF.ts';
import { mean, sum, sumOfSquares } from './sample.ts';

/** A row of an analysis of variance: sum of squares, degrees of freedom, mean square. */
export interface VarianceRow {
  readonly sumOfSquares: number;
  readonly dof: number;
  readonly meanSquare: number;
}

/** A row held against another: how many times its mean square, and how likely that is by chance. */
export interface VarianceTest {
  /** Infinity over a row without variance; null where both have none. */
  readonly f: number | null;
  readonly p: number | null;
}

export interface OneWayAnova extends VarianceTest {
  readonly between: VarianceRow;
  readonly within: VarianceRow;
  /** Between over total; null where nothing varies. */
  readonly rSquared: number | null;
  readonly residualDeviation: number;
}

/**
 * One-way analysis of variance of groups that may differ in size. Throws a RangeError for fewer than two groups,
 * an empty group, or no group with a repeat: then there is nothing to compare, or nothing to compare it with.
 */
export function oneWayAnova(groups: readonly (readonly number[])[]): OneWayAnova {
  const count = sum(groups.map((group) => group.length));
  if (groups.length < 2 || count <= groups.length) {
    throw new RangeError('an analysis of variance needs two groups, and repeats within them');
  }
  const grand = mean(groups.flat());
  const parts = groups.map((group) => group.length * (mean(group) - grand) ** 2);
  const between = varianceRow(sum(parts), groups.length - 1);
  const within = varianceRow(sum(groups.map(squaresAboutMean)), count - groups.length);
  const total = between.sumOfSquares + within.sumOfSquares;
  return {
    between,
    within,
    ...compareVariances(between, within),
    rSquared: total === 0 ? null : between.sumOfSquares / total,
    residualDeviation: Math.sqrt(within.meanSquare),
  };
}

export const varianceRow = (sumOfSquares: number, dof: number): VarianceRow => ({
  sumOfSquares,
  dof,
  meanSquare: sumOfSquares / dof,
});

export function compareVariances(row: VarianceRow, against: VarianceRow): VarianceTest {
  if (row.meanSquare === 0 && against.meanSquare === 0) return { f: null, p: null };
  const f = row.meanSquare / against.meanSquare;
  return { f, p: fUpperTail(f, row.dof, against.dof) };
}

export function squaresAboutMean(values: readonly number[]): number {
  const middle = mean(values);
  return sumOfSquares(values.map((value) => value - middle));
}
