import { didYouMean } from '../diagnostic/suggestion.ts';
import { FUNCTION_NAMES, FUNCTIONS, type FunctionName, MOST_ROUND_PLACES } from './functions.ts';
import { type FormulaProblem, formulaProblem, type Stretch } from './problem.ts';
import type { Token } from './tokens.ts';
import { EVERY, type FormulaNode, type NameNode, referenceText } from './tree.ts';

export function tooLong(all: Stretch, most: number): FormulaProblem {
  const message = `the formula is ${all.end} characters long; ${most} is the most`;
  return formulaProblem(all, message, 'shorten it, or state the limit as a number');
}

export const isEmpty = (all: Stretch): FormulaProblem =>
  formulaProblem(all, 'the formula is empty', 'write one such as 0.0005 * bore');

export const tooManyParts = (at: Stretch, most: number): FormulaProblem =>
  formulaProblem(at, `the formula has more than ${most} parts`, 'shorten it, or state the limit as a number');

export const tooDeep = (at: Stretch, deepest: number): FormulaProblem =>
  formulaProblem(at, `brackets and signs stand more than ${deepest} deep here`, 'take the spare ones out');

/** A sign, or the end, where a number, a name or a bracket was due. */
export function noValue(found: Token): FormulaProblem {
  const where = found.kind === 'end' ? 'at the end of the formula' : `before ${found.text}`;
  return formulaProblem(found, `a value is missing ${where}`);
}

const TAKING_MORE = 'max, mean, min, round, spread or sum';

/** Something follows a whole value, and no sign stands between. */
export function leftOver(found: Token): FormulaProblem {
  if (found.text === ')') return formulaProblem(found, 'this ) closes no bracket', 'take it out');
  if (found.text === ',') {
    return formulaProblem(found, `a comma belongs between the values of ${TAKING_MORE}`);
  }
  const help = "write * to multiply; numbers are in the document's unit already";
  return formulaProblem(found, `no sign is allowed before ${found.text}`, help);
}

export const notClosed = (open: Token, found: Token): FormulaProblem =>
  found.kind === 'end' ? formulaProblem(open, 'this ( is not closed', 'add )') : leftOver(found);

export function noFunction(word: Token): FormulaProblem {
  const help = didYouMean(word.text, FUNCTION_NAMES) ?? `the functions are ${FUNCTION_NAMES.join(', ')}`;
  return formulaProblem(word, `${word.text} is not a function`, `${help}; to multiply write *`);
}

export const noBrackets = (word: Token, name: FunctionName): FormulaProblem =>
  formulaProblem(word, `${name} is a function and needs its values in brackets`, usage(name));

/** The wrong number of values, or decimals for `round` that are no small whole number; else nothing. */
export function wrongValues(
  at: Stretch,
  name: FunctionName,
  values: readonly FormulaNode[],
): FormulaProblem | undefined {
  const { fewest, most } = FUNCTIONS[name];
  if (values.length < fewest || values.length > most) {
    return formulaProblem(at, `${name} does not take ${countOf(values.length)}`, usage(name));
  }
  const [only] = values;
  if (FUNCTIONS[name].takesSeveral === true && values.length === 1 && only !== undefined) {
    if (only.kind !== 'name' || only.at === undefined) return ofOneValue(at, name, only);
  }
  const places = name === 'round' ? values[1] : undefined;
  return places === undefined || isWholePlaces(places) ? undefined : wrongPlaces(places);
}

/** `max(bore)` would be the bore itself, at each position by itself. */
function ofOneValue(at: Stretch, name: FunctionName, only: FormulaNode): FormulaProblem {
  const help =
    only.kind === 'name'
      ? `write ${name}(${referenceText({ name: only.name, at: EVERY })}) for all its positions`
      : usage(name);
  return formulaProblem(at, `${name} of one value is that value`, help);
}

/** Several positions where one value is wanted. */
export function severalAlone(node: NameNode): FormulaProblem {
  const several = referenceText(node);
  return formulaProblem(
    node,
    `${several} is several values, and one is wanted here`,
    `write max(${several}), min, mean, sum or spread of it`,
  );
}

/** Written out, not worked out: so that a bad one is found when the document is read, not when it is judged. */
const isWholePlaces = (node: FormulaNode): boolean =>
  node.kind === 'number' && /^\d\d?$/.test(node.text) && Number(node.text) <= MOST_ROUND_PLACES;

function wrongPlaces(at: Stretch): FormulaProblem {
  const message = `round keeps a whole number of decimals, 0 to ${MOST_ROUND_PLACES}, written as a number`;
  return formulaProblem(at, message, 'write one such as round(bore / 2, 4)');
}

const usage = (name: FunctionName): string => `write ${FUNCTIONS[name].usage}`;

/** Never of one: every function takes that. */
const countOf = (count: number): string => `${count === 0 ? 'no' : count} values`;
