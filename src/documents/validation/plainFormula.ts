import { namesIn } from '../../formula/names.ts';
import { parseFormula } from '../../formula/parse.ts';
import { isFormulaProblem } from '../../formula/problem.ts';

/** What to type where a formula was written as plain text, by what the help for such a value offers; undefined elsewhere. */
export function plainFormula(text: string, help: string): string | undefined {
  if (help.includes('{ formula:')) return isFormula(text) ? `write ${formulaKey(text)}` : undefined;
  if (!help.includes('{ min:')) return undefined;
  const ends = text.split(' to ');
  const [low, high] = ends;
  if (low === undefined || ends.length > 2 || !ends.some(isFormula)) return undefined;
  return high === undefined
    ? `write { max: ${formulaKey(low)} }, the same with min, or both`
    : `write { min: ${endOf(low)}, max: ${endOf(high)} }`;
}

const endOf = (text: string): string => (isFormula(text) ? formulaKey(text) : text);

const formulaKey = (text: string): string => `{ formula: "${bare(text)}" }`;

/** The key itself may have been put in quotes. */
const bare = (text: string): string => /^\{? *formula: *(.*?) *\}?$/.exec(text)?.[1] ?? text;

/** Something is worked out in it of what has a name; `n/a` is none. */
function isFormula(text: string): boolean {
  const formula = parseFormula(bare(text));
  if (isFormulaProblem(formula) || formula.root.kind === 'name') return false;
  const names = namesIn(formula);
  return names.length > 0 && names.every(({ length }) => length > 2);
}
