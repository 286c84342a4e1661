import { type FormulaNode, type OperationNode, type Operator, type ParsedFormula, STRENGTH } from './tree.ts';

/** How the leaves and the signs are written. */
interface Writing {
  readonly name: (name: string) => string;
  readonly signs: Readonly<Record<Operator, string>>;
}

const TYPED: Readonly<Record<Operator, string>> = { '+': '+', '-': '-', '*': '*', '/': '/' };
const PRINTED: Readonly<Record<Operator, string>> = { '+': '+', '-': '−', '*': '×', '/': '/' };

/**
 * The formula as one types it, with single spaces and no spare brackets: it reads back as the same formula,
 * unless the spaces take it past the longest that is read.
 */
export const printFormula = (formula: ParsedFormula): string =>
  write(formula.root, { name: (name) => name, signs: TYPED });

/**
 * The formula for people, with numbers in the place of names: `0.0005 × 4.1250`. A name without a value
 * stays; a negative value beside a sign gets brackets.
 */
export const formatFormula = (formula: ParsedFormula, valuesAsText: ReadonlyMap<string, string>): string =>
  write(formula.root, { name: (name) => valuesAsText.get(name) ?? name, signs: PRINTED });

function write(node: FormulaNode, writing: Writing): string {
  switch (node.kind) {
    case 'number':
      return node.text;
    case 'name':
      return writing.name(node.name);
    case 'negate':
      return `${writing.signs['-']}${writePart(node.of, node.of.kind === 'operation', writing)}`;
    case 'operation':
      return writeOperation(node, writing);
    case 'call':
      return `${node.name}${bracketed(node.values.map((value) => write(value, writing)).join(', '))}`;
  }
}

/** Operators of one strength are worked from the left, so only what stands on the right needs brackets for them. */
function writeOperation({ operator, left, right }: OperationNode, writing: Writing): string {
  const before = writePart(left, strengthOf(left) < STRENGTH[operator], writing);
  const after = writePart(right, strengthOf(right) <= STRENGTH[operator], writing);
  return `${before} ${writing.signs[operator]} ${after}`;
}

const strengthOf = (node: FormulaNode): number =>
  node.kind === 'operation' ? STRENGTH[node.operator] : Number.POSITIVE_INFINITY;

function writePart(node: FormulaNode, inBrackets: boolean, writing: Writing): string {
  const text = write(node, writing);
  const isNegativeValue = node.kind === 'name' && /^[-\u2212]/.test(text);
  return inBrackets || isNegativeValue ? bracketed(text) : text;
}

const bracketed = (text: string): string => `(${text})`;
