import type { Fraction } from '../quantity/fraction.ts';
import type { FunctionName } from './functions.ts';
import type { Stretch } from './problem.ts';

export type Operator = '+' | '-' | '*' | '/';

export interface NumberNode extends Stretch {
  readonly kind: 'number';
  /** The digits as written. */
  readonly text: string;
  readonly value: Fraction;
}

export interface NameNode extends Stretch, Reference {
  readonly kind: 'name';
}

/** `bore`, or with the positions that are meant: `bore[*]`, `bore[3]`, `bore[next]`. */
export interface Reference {
  readonly name: string;
  readonly at?: string;
}

/** What stands for a reference where values are looked up. */
export const referenceText = ({ name, at }: Reference): string =>
  at === undefined ? name : `${name}[${at}]`;

export const EVERY = '*';
export const NEIGHBOURS = 'neighbours';

/** Several values at once, whatever the layout. */
export const isSeveral = (node: FormulaNode): node is NameNode =>
  node.kind === 'name' && (node.at === EVERY || node.at === NEIGHBOURS);

export interface NegateNode extends Stretch {
  readonly kind: 'negate';
  readonly of: FormulaNode;
}

export interface OperationNode extends Stretch {
  readonly kind: 'operation';
  readonly operator: Operator;
  readonly left: FormulaNode;
  readonly right: FormulaNode;
}

export interface CallNode extends Stretch {
  readonly kind: 'call';
  readonly name: FunctionName;
  readonly values: readonly FormulaNode[];
}

/** Brackets leave no node of their own: they widen the stretch of what they enclose. */
export type FormulaNode = NumberNode | NameNode | NegateNode | OperationNode | CallNode;

export interface ParsedFormula {
  readonly text: string;
  readonly root: FormulaNode;
}

/** How tightly an operator binds; the tighter is worked first. */
export const STRENGTH: Readonly<Record<Operator, number>> = { '+': 1, '-': 1, '*': 2, '/': 2 };

export const isOperator = (text: string): text is Operator => Object.hasOwn(STRENGTH, text);

/** What a node is made of, in the order written. */
export function partsOf(node: FormulaNode): readonly FormulaNode[] {
  switch (node.kind) {
    case 'negate':
      return [node.of];
    case 'operation':
      return [node.left, node.right];
    case 'call':
      return node.values;
    default:
      return [];
  }
}
