import {
  type FormulaNode,
  type OperationNode,
  type Operator,
  type ParsedFormula,
  referenceText,
  STRENGTH,
} from './tree.ts';

/** How a reference is written. */
type NameText = (reference: string) => string;

const SIGNS: Readonly<Record<Operator, string>> = { '+': '+', '-': '−', '*': '×', '/': '/' };

/**
 * The formula for people, with numbers in the place of names: `0.0005 × 4.1250`. A name without a value
 * stays; a negative value beside a sign gets brackets.
 */
export const formatFormula = (formula: ParsedFormula, valuesAsText: ReadonlyMap<string, string>): string =>
  write(formula.root, (name) => valuesAsText.get(name) ?? name);

function write(node: FormulaNode, nameText: NameText): string {
  switch (node.kind) {
    case 'number':
      return node.text;
    case 'name':
      return nameText(referenceText(node));
    case 'negate':
      return `${SIGNS['-']}${writePart(node.of, node.of.kind === 'operation', nameText)}`;
    case 'operation':
      return writeOperation(node, nameText);
    case 'call':
      return `${node.name}${bracketed(node.values.map((value) => write(value, nameText)).join(', '))}`;
  }
}

/** Operators of one strength are worked from the left, so only what stands on the right needs brackets for them. */
function writeOperation({ operator, left, right }: OperationNode, nameText: NameText): string {
  const before = writePart(left, strengthOf(left) < STRENGTH[operator], nameText);
  const after = writePart(right, strengthOf(right) <= STRENGTH[operator], nameText);
  return `${before} ${SIGNS[operator]} ${after}`;
}

const strengthOf = (node: FormulaNode): number =>
  node.kind === 'operation' ? STRENGTH[node.operator] : Number.POSITIVE_INFINITY;

function writePart(node: FormulaNode, inBrackets: boolean, nameText: NameText): string {
  const text = write(node, nameText);
  const isNegativeValue = node.kind === 'name' && /^[-\u2212]/.test(text);
  return inBrackets || isNegativeValue ? bracketed(text) : text;
}

const bracketed = (text: string): string => `(${text})`;
