import { didYouMean } from '../diagnostic/suggestion.ts';
import { add, divide, type Fraction, multiply, negate, subtract, toDecimal } from '../quantity/fraction.ts';
import { FUNCTIONS } from './functions.ts';
import { type FormulaProblem, formulaProblem, isFormulaProblem, type Stretch } from './problem.ts';
import type { CallNode, FormulaNode, NameNode, OperationNode, Operator, ParsedFormula } from './tree.ts';

/** What each name stands for, in the document's own unit. */
export type FormulaValues = ReadonlyMap<string, Fraction>;

/**
 * Some 1,200 digits: more than the fifty readings that fit a formula multiply up to, and little enough that
 * the slowest formula stays within a few milliseconds.
 */
const HUGE = 1n << 4096n;

type Result = Fraction | FormulaProblem;

/**
 * Works the formula out in exact fractions, in lowest terms; only a root that is not rational is rounded, to 30 digits.
 * Lengths enter and leave as plain numbers in the document's unit. A name without a value, a division by
 * zero and the root of a negative number are problems with a place, never an infinity and never thrown.
 */
export function evaluateFormula(formula: ParsedFormula, values: FormulaValues): Result {
  const result = evaluateNode(formula.root, values);
  return isFormulaProblem(result) ? result : lowestTerms(result);
}

function evaluateNode(node: FormulaNode, values: FormulaValues): Result {
  const result = workOut(node, values);
  return isFormulaProblem(result) || isHandy(result) ? result : tooManyDigits(node);
}

function workOut(node: FormulaNode, values: FormulaValues): Result {
  switch (node.kind) {
    case 'number':
      return node.value;
    case 'name':
      return values.get(node.name) ?? noValueFor(node, values);
    case 'negate': {
      const of = evaluateNode(node.of, values);
      return isFormulaProblem(of) ? of : negate(of);
    }
    case 'operation':
      return operate(node, values);
    case 'call':
      return call(node, values);
  }
}

const OPERATIONS: Readonly<Record<Operator, (a: Fraction, b: Fraction) => Fraction>> = {
  '+': add,
  '-': subtract,
  '*': multiply,
  '/': divide,
};

function operate(node: OperationNode, values: FormulaValues): Result {
  const left = evaluateNode(node.left, values);
  if (isFormulaProblem(left)) return left;
  const right = evaluateNode(node.right, values);
  if (isFormulaProblem(right)) return right;
  if (node.operator === '/' && right.n === 0n) {
    return formulaProblem(node.right, 'this divides by zero', 'divide by something that cannot come to zero');
  }
  return OPERATIONS[node.operator](left, right);
}

function call(node: CallNode, values: FormulaValues): Result {
  const known: Fraction[] = [];
  for (const each of node.values) {
    const value = evaluateNode(each, values);
    if (isFormulaProblem(value)) return value;
    known.push(value);
  }
  const [first, ...rest] = known;
  if (first === undefined) throw new RangeError(`${node.name} was read without a value`);
  return node.name === 'sqrt' && first.n < 0n
    ? negativeRoot(node, first)
    : FUNCTIONS[node.name].apply(first, rest);
}

function negativeRoot(at: Stretch, value: Fraction): FormulaProblem {
  const shown = toDecimal(value, 12).replace(/\.?0+$/, '');
  const message = `this takes the square root of a negative number, ${shown}`;
  return formulaProblem(at, message, 'turn the difference round, or use abs(x)');
}

const noValueFor = (node: NameNode, values: FormulaValues): FormulaProblem =>
  formulaProblem(node, `there is no value for ${node.name}`, didYouMean(node.name, values.keys()));

const tooManyDigits = (at: Stretch): FormulaProblem =>
  formulaProblem(at, 'the numbers here run to more than a thousand digits', 'use fewer or shorter numbers');

const isHandy = ({ n, d }: Fraction): boolean => n < HUGE && n > -HUGE && d < HUGE;

function lowestTerms({ n, d }: Fraction): Fraction {
  let [divisor, rest] = [d, n < 0n ? -n : n];
  while (rest !== 0n) [divisor, rest] = [rest, divisor % rest];
  return { n: n / divisor, d: d / divisor };
}
