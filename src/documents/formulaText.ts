import { parseFormula } from '../formula/parse.ts';
import { isFormulaProblem } from '../formula/problem.ts';
import type { ParsedFormula } from '../formula/tree.ts';
import { type DocumentContext, report } from './amount.ts';
import { textOf } from './yaml/access.ts';
import type { Node } from './yaml/node.ts';

/** A formula that parses, or a report of what is wrong in it. */
export function readFormula(node: Node | undefined, context: DocumentContext): ParsedFormula | undefined {
  const text = textOf(node);
  if (text === undefined || node === undefined) return undefined;
  const formula = parseFormula(text);
  return isFormulaProblem(formula) ? reportInFormula(text, formula, node, context) : formula;
}

/** What is wrong in a formula, with the whole of it. */
export function reportInFormula(
  text: string,
  { message, help }: { readonly message: string; readonly help?: string },
  node: Node,
  context: DocumentContext,
): undefined {
  return report(context, 'formula', node.span, `in the formula ${text}: ${message}`, help);
}
