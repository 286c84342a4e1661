import { parseDecimal } from '../quantity/fraction.ts';
import { FUNCTIONS, type FunctionName, isFunctionName } from './functions.ts';
import { type FormulaProblem, isFormulaProblem } from './problem.ts';
import {
  isEmpty,
  leftOver,
  noBrackets,
  noFunction,
  notClosed,
  noValue,
  severalAlone,
  tooDeep,
  tooLong,
  tooManyParts,
  wrongValues,
} from './refusals.ts';
import { cutIntoTokens, type Token } from './tokens.ts';
import {
  type FormulaNode,
  isOperator,
  isSeveral,
  type NameNode,
  type ParsedFormula,
  partsOf,
  STRENGTH,
} from './tree.ts';

/** Formulas may come from a stranger: these bound the work and the call depth before any of it is done. */
export const LONGEST_FORMULA = 200;
export const MOST_NODES = 100;
/** Brackets, functions and minus signs within each other; a long sum is not deep. */
export const DEEPEST_NESTING = 20;

/**
 * Reads a formula such as `0.0005 * bore`: numbers, names, + − * /, brackets, a minus before a value, and
 * the functions. A name may say which positions it means: `bore[*]`, `bore[1]`. Nothing is looked up or worked out, and nothing is thrown, whatever the text.
 */
export function parseFormula(text: string): ParsedFormula | FormulaProblem {
  const all = { start: 0, end: text.length };
  if (text.length > LONGEST_FORMULA) return tooLong(all, LONGEST_FORMULA);
  const tokens = cutIntoTokens(text);
  if (isFormulaProblem(tokens)) return tokens;
  if (tokens.length === 0) return isEmpty(all);
  const root = new Parser(tokens, { kind: 'end', text: '', start: text.length, end: text.length }).whole();
  if (isFormulaProblem(root)) return root;
  const alone = severalOutOfPlace(root);
  return alone === undefined ? { text, root } : severalAlone(alone);
}

/** The first reference to several values that no function takes together. */
function severalOutOfPlace(node: FormulaNode): NameNode | undefined {
  if (isSeveral(node)) return node;
  const isTaken = node.kind === 'call' && FUNCTIONS[node.name].takesSeveral === true;
  for (const part of partsOf(node)) {
    const found = isTaken && isSeveral(part) ? undefined : severalOutOfPlace(part);
    if (found !== undefined) return found;
  }
  return undefined;
}

type Result = FormulaNode | FormulaProblem;

/** Precedence climbing over the tokens; each method takes the tokens it understands or gives a problem. */
class Parser {
  readonly #tokens: readonly Token[];
  readonly #end: Token;
  #index = 0;
  #nodes = 0;

  constructor(tokens: readonly Token[], end: Token) {
    this.#tokens = tokens;
    this.#end = end;
  }

  whole(): Result {
    const root = this.#expression(0, 0);
    return isFormulaProblem(root) || this.#next().kind === 'end' ? root : leftOver(this.#next());
  }

  #expression(weakest: number, depth: number): Result {
    let left = this.#operand(depth);
    while (!isFormulaProblem(left)) {
      const operator = this.#next().text;
      if (!isOperator(operator) || STRENGTH[operator] < weakest) return left;
      this.#take();
      const right = this.#expression(STRENGTH[operator] + 1, depth);
      if (isFormulaProblem(right)) return right;
      left = this.#keep({ kind: 'operation', operator, left, right, start: left.start, end: right.end });
    }
    return left;
  }

  #operand(depth: number): Result {
    const token = this.#next();
    if (depth > DEEPEST_NESTING) return tooDeep(token, DEEPEST_NESTING);
    this.#take();
    if (token.text === '(') return this.#bracketed(token, depth + 1);
    if (token.text === '-') return this.#negated(token, depth + 1);
    if (token.kind === 'name') return this.#named(token, depth);
    if (token.kind !== 'number') return noValue(token);
    return this.#keep({ ...token, kind: 'number', value: parseDecimal(token.text) });
  }

  #bracketed(open: Token, depth: number): Result {
    const inner = this.#expression(0, depth);
    if (isFormulaProblem(inner)) return inner;
    const close = this.#take();
    return close.text === ')' ? { ...inner, start: open.start, end: close.end } : notClosed(open, close);
  }

  #negated(minus: Token, depth: number): Result {
    const of = this.#operand(depth);
    return isFormulaProblem(of) ? of : this.#keep({ kind: 'negate', of, start: minus.start, end: of.end });
  }

  #named(word: Token, depth: number): Result {
    const called = word.at === undefined && this.#next().text === '(';
    if (called) return isFunctionName(word.text) ? this.#call(word, word.text, depth + 1) : noFunction(word);
    if (isFunctionName(word.text)) return noBrackets(word, word.text);
    const { text: name, start, end } = word;
    return this.#keep(
      word.at === undefined
        ? { kind: 'name', name, start, end }
        : { kind: 'name', name, at: word.at, start, end },
    );
  }

  #call(word: Token, name: FunctionName, depth: number): Result {
    const open = this.#take();
    const values: FormulaNode[] = [];
    if (this.#next().text !== ')') {
      for (let more = true; more; more = this.#comma()) {
        const value = this.#expression(0, depth);
        if (isFormulaProblem(value)) return value;
        values.push(value);
      }
    }
    const close = this.#take();
    if (close.text !== ')') return notClosed(open, close);
    const at = { start: word.start, end: close.end };
    return wrongValues(at, name, values) ?? this.#keep({ kind: 'call', name, values, ...at });
  }

  #comma(): boolean {
    const found = this.#next().text === ',';
    if (found) this.#take();
    return found;
  }

  #keep(node: FormulaNode): Result {
    this.#nodes += 1;
    if (this.#nodes <= MOST_NODES) return node;
    return tooManyParts(node, MOST_NODES);
  }

  #next(): Token {
    return this.#tokens[this.#index] ?? this.#end;
  }

  #take(): Token {
    const token = this.#next();
    this.#index += 1;
    return token;
  }
}
