import { compare, type Fraction, greatest, least, toNumber } from '../quantity/fraction.ts';
import { type FormulaValues, type PartResults, valuesOf } from './evaluate.ts';
import type { FunctionName } from './functions.ts';
import {
  type CallNode,
  type FormulaNode,
  type NameNode,
  type OperationNode,
  type Operator,
  type ParsedFormula,
  referenceText,
} from './tree.ts';

/** By the text of each reference, how fast the result moves with each of its values: the partial derivatives. */
export type Slopes = ReadonlyMap<string, readonly number[]>;

/**
 * The slopes of a formula that has been worked out: from the result down, each part hands on its slope by the rules of
 * differentiation. `round` moves with what it rounds: its steps hide an error and do not take it away. A root of
 * zero has no slope; what comes of it is not finite.
 */
export function slopesOf(formula: ParsedFormula, values: FormulaValues, parts: PartResults): Slopes {
  const slopes = new Map<string, readonly number[]>();
  handDown(formula.root, [1], { values, parts, slopes });
  return slopes;
}

interface Descent {
  readonly values: FormulaValues;
  readonly parts: PartResults;
  readonly slopes: Map<string, readonly number[]>;
}

/** One slope for each value of a reference, else one alone. */
function handDown(node: FormulaNode, slopes: readonly number[], descent: Descent): void {
  if (node.kind === 'name') addSlopes(node, slopes, descent);
  else for (const slope of slopes) handDownOne(node, slope, descent);
}

function handDownOne(node: Exclude<FormulaNode, NameNode>, slope: number, descent: Descent): void {
  if (node.kind === 'negate') handDown(node.of, [-slope], descent);
  if (node.kind === 'operation') handDownOperation(node, slope, descent);
  if (node.kind === 'call') handDownCall(node, slope, descent);
}

function addSlopes(node: NameNode, added: readonly number[], { slopes }: Descent): void {
  const text = referenceText(node);
  const known = slopes.get(text);
  slopes.set(
    text,
    added.map((each, index) => each + (known?.[index] ?? 0)),
  );
}

function handDownOperation({ operator, left, right }: OperationNode, slope: number, descent: Descent): void {
  const [a, b] = [toNumber(resultOf(left, descent)), toNumber(resultOf(right, descent))];
  const [byLeft, byRight] = slopesOfOperation(operator, a, b);
  handDown(left, [slope * byLeft], descent);
  handDown(right, [slope * byRight], descent);
}

function slopesOfOperation(operator: Operator, a: number, b: number): readonly [number, number] {
  switch (operator) {
    case '+':
      return [1, 1];
    case '-':
      return [1, -1];
    case '*':
      return [b, a];
    case '/':
      return [1 / b, -a / b / b];
  }
}

function resultOf(node: FormulaNode, { parts }: Descent): Fraction {
  const found = parts.get(node);
  if (found === undefined) throw new RangeError(`the formula was not worked out at ${node.start}`);
  return found;
}

function handDownCall(node: CallNode, slope: number, descent: Descent): void {
  const taken = node.values.map((each) => valuesTaken(each, descent));
  const shares = SHARES[node.name](taken.flat()).map((share) => share * slope);
  let from = 0;
  for (const [index, each] of node.values.entries()) {
    const to = from + (taken[index]?.length ?? 0);
    handDown(each, shares.slice(from, to), descent);
    from = to;
  }
}

const valuesTaken = (node: FormulaNode, descent: Descent): readonly Fraction[] =>
  node.kind === 'name' ? valuesOf(node, descent.values) : [resultOf(node, descent)];

/**
 * How much of a call's slope each of its values gets. Of values that are alike the first is the greatest and the last
 * the least, so that a spread of none keeps its errors.
 */
const SHARES: Readonly<Record<FunctionName, (values: readonly Fraction[]) => readonly number[]>> = {
  abs: (values) => values.map(({ n }) => (n < 0n ? -1 : 1)),
  max: (values) => oneAt(greatestAt(values), values),
  mean: (values) => values.map(() => 1 / values.length),
  min: (values) => oneAt(leastAt(values), values),
  round: (values) => oneAt(0, values),
  spread: (values) => {
    const [top, bottom] = [greatestAt(values), leastAt(values)];
    return values.map((_, index) => Number(index === top) - Number(index === bottom));
  },
  sqrt: (values) => values.map((value) => 1 / (2 * Math.sqrt(toNumber(value)))),
  sum: (values) => values.map(() => 1),
};

const greatestAt = (values: readonly Fraction[]): number => values.findIndex(isLike(greatest(values)));

const leastAt = (values: readonly Fraction[]): number => values.findLastIndex(isLike(least(values)));

const isLike =
  (wanted: Fraction) =>
  (value: Fraction): boolean =>
    compare(value, wanted) === 0;

const oneAt = (at: number, values: readonly Fraction[]): readonly number[] =>
  values.map((_, index) => Number(index === at));
