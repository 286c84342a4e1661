import { fUpperTail } from './distributions/fisherF.ts';

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
