import { didYouMean } from '../diagnostic/suggestion.ts';
import {
  absolute,
  add,
  divide,
  type Fraction,
  multiply,
  negate,
  subtract,
  toDecimal,
} from '../quantity/fraction.ts';
import { FUNCTIONS } from './functions.ts';
import { type FormulaProblem, formulaProblem, isFormulaProblem, type Stretch } from './problem.ts';
import {
  type CallNode,
  type FormulaNode,
  type NameNode,
  type OperationNode,
  type Operator,
  type ParsedFormula,
  referenceText,
} from './tree.ts';

/** What each reference stands for by its text, in the document's own unit: of several positions the values of all. */
export type FormulaValues = ReadonlyMap<string, Fraction | readonly Fraction[]>;

/** What each part of a formula came to. */
export type PartResults = Map<FormulaNode, Fraction>;

/**
 * Some 1,200 digits: more than the fifty readings that fit a formula multiply up to, and little enough that
 * the slowest formula stays within a few milliseconds.
 */
const HUGE = 1n << 4096n;

type Result = Fraction | FormulaProblem;

interface Work {
  readonly values: FormulaValues;
  readonly parts: PartResults | undefined;
}

/**
 * Works the formula out in exact fractions, in lowest terms; only a root that is not rational is rounded, to 30 digits.
 * Lengths enter and leave as plain numbers in the document's unit. A name without a value, a division by
 * zero and the root of a negative number are problems with a place, never an infinity and never thrown.
 * What the parts came to is put into `parts`.
 */
export function evaluateFormula(formula: ParsedFormula, values: FormulaValues, parts?: PartResults): Result {
  const result = evaluateNode(formula.root, { values, parts });
  return isFormulaProblem(result) ? result : lowestTerms(result);
}

function evaluateNode(node: FormulaNode, work: Work): Result {
  const result = workOut(node, work);
  if (isFormulaProblem(result)) return result;
  if (!isHandy(result)) return tooManyDigits(node);
  work.parts?.set(node, result);
  return result;
}

function workOut(node: FormulaNode, work: Work): Result {
  switch (node.kind) {
    case 'number':
      return node.value;
    case 'name': {
      const [first] = valuesOf(node, work.values);
      return first ?? noValueFor(node, work.values);
    }
    case 'negate': {
      const of = evaluateNode(node.of, work);
      return isFormulaProblem(of) ? of : negate(of);
    }
    case 'operation':
      return operate(node, work);
    case 'call':
      return call(node, work);
  }
}

/** All that a reference stands for; none where there is no value for it. */
export function valuesOf(node: NameNode, values: FormulaValues): readonly Fraction[] {
  const found = values.get(referenceText(node)) ?? [];
  return 'n' in found ? [found] : found;
}

const OPERATIONS: Readonly<Record<Operator, (a: Fraction, b: Fraction) => Fraction>> = {
  '+': add,
  '-': subtract,
  '*': multiply,
  '/': divide,
};

function operate(node: OperationNode, work: Work): Result {
  const left = evaluateNode(node.left, work);
  if (isFormulaProblem(left)) return left;
  const right = evaluateNode(node.right, work);
  if (isFormulaProblem(right)) return right;
  if (node.operator === '/' && right.n === 0n) {
    return formulaProblem(node.right, 'this divides by zero', 'divide by something that cannot come to zero');
  }
  return OPERATIONS[node.operator](left, right);
}

function call(node: CallNode, work: Work): Result {
  const known: Fraction[] = [];
  for (const each of node.values) {
    const value = evaluateNode(each, work);
    if (isFormulaProblem(value)) return value;
    known.push(...(each.kind === 'name' ? valuesOf(each, work.values) : [value]));
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

function noValueFor(node: NameNode, values: FormulaValues): FormulaProblem {
  const wanted = referenceText(node);
  return formulaProblem(node, `there is no value for ${wanted}`, didYouMean(wanted, values.keys()));
}

const tooManyDigits = (at: Stretch): FormulaProblem =>
  formulaProblem(at, 'the numbers here run to more than a thousand digits', 'use fewer or shorter numbers');

const isHandy = ({ n, d }: Fraction): boolean => n < HUGE && n > -HUGE && d < HUGE;

function lowestTerms(value: Fraction): Fraction {
  let [divisor, rest] = [value.d, absolute(value).n];
  while (rest !== 0n) [divisor, rest] = [rest, divisor % rest];
  return { n: value.n / divisor, d: value.d / divisor };
}
