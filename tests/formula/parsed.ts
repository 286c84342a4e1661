import { evaluateFormula } from '../../src/formula/evaluate.ts';
import { parseFormula } from '../../src/formula/parse.ts';
import { type FormulaProblem, isFormulaProblem } from '../../src/formula/problem.ts';
import type { ParsedFormula } from '../../src/formula/tree.ts';
import { type Fraction, parseDecimal } from '../../src/quantity/fraction.ts';

/** The formula, where a test is about something that a bad formula would hide. */
export function parsed(text: string): ParsedFormula {
  const formula = parseFormula(text);
  if (isFormulaProblem(formula)) throw new Error(`${text}: ${formula.message}`);
  return formula;
}

/** What is wrong with a text; undefined where nothing is. */
export function problemWith(text: string): FormulaProblem | undefined {
  const formula = parseFormula(text);
  return isFormulaProblem(formula) ? formula : undefined;
}

export const valuesOf = (texts: Readonly<Record<string, string>>): ReadonlyMap<string, Fraction> =>
  new Map(Object.entries(texts).map(([name, text]) => [name, decimal(text)]));

export const work = (
  text: string,
  values: Readonly<Record<string, string>> = {},
): Fraction | FormulaProblem => evaluateFormula(parsed(text), valuesOf(values));

function decimal(text: string): Fraction {
  const { n, d } = parseDecimal(text.replace('-', ''));
  return { n: text.startsWith('-') ? -n : n, d };
}
