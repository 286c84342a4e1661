import { add, type Fraction, fraction, multiply, subtract, toNumber } from '../quantity/fraction.ts';

/** One independent source of error. */
export interface ErrorTerm {
  /** Signed standard uncertainty in the quantity's base unit; the sign tells which way the error moves the value. */
  readonly u: number;
  readonly dof: number;
  /** What found `u`, where it was found by trial: all terms of one estimate are known equally well, and by the same readings. */
  readonly estimate?: string;
  /** The instrument whose own error it is, alike in all its readings of one calibration; none for that of a single reading. */
  readonly instrument?: string;
  /** The instrument that it comes from. */
  readonly of?: string;
  /** That the reading was given as a range, and may lie anywhere in it. */
  readonly isRange?: true;
}

/** How far a reading that was given as a range reaches below and above its amount; without end above for `over 0.006`. */
export interface Range {
  readonly below: Fraction;
  readonly above: Fraction | undefined;
}

/**
 * A measured amount with its sources of error. The key names the source, so an error that two readings
 * share (one micrometer, one setting master) stands under one key and cancels or doubles by itself.
 */
export interface Value {
  /** In the quantity's base unit, exact. */
  readonly amount: Fraction;
  readonly terms: ReadonlyMap<string, ErrorTerm>;
  /** Of a reading that was given as one; what is worked out from it has its terms alone. */
  readonly range?: Range | undefined;
}

const NO_TERMS: ReadonlyMap<string, ErrorTerm> = new Map();

export const exactly = (amount: Fraction): Value => ({ amount, terms: NO_TERMS });

/**
 * A value whose terms are worked out when they are first asked for: of all the values between readings and a
 * verdict only the least and the greatest are. It is no plain object: a copy by spreading would lose its terms.
 */
class LateValue implements Value {
  readonly amount: Fraction;
  readonly range: Range | undefined;
  #terms: Value['terms'] | (() => Value['terms']);

  constructor(amount: Fraction, terms: () => Value['terms'], range?: Range) {
    this.amount = amount;
    this.range = range;
    this.#terms = terms;
  }

  get terms(): Value['terms'] {
    if (typeof this.#terms === 'function') this.#terms = this.#terms();
    return this.#terms;
  }
}

export const lateValue = (amount: Fraction, terms: () => Value['terms'], range?: Range): Value =>
  new LateValue(amount, terms, range);

/** What is uncertain of a value where its range is looked at by itself. */
export const withoutRange = ({ amount, terms }: Value): Value =>
  lateValue(amount, () => new Map([...terms].filter(([, term]) => term.isRange !== true)));

export const addValues = (a: Value, b: Value): Value =>
  lateValue(add(a.amount, b.amount), () => addTerms(a.terms, b.terms, 1));

/** x − x is exactly zero with no error left, since every source is shared. */
export const subtractValues = (a: Value, b: Value): Value =>
  lateValue(subtract(a.amount, b.amount), () => addTerms(a.terms, b.terms, -1));

export const scaleValue = (value: Value, by: Fraction): Value =>
  lateValue(multiply(value.amount, by), () => scaledTerms(value.terms, toNumber(by)));

function scaledTerms(terms: Value['terms'], factor: number): Value['terms'] {
  const scaled = new Map<string, ErrorTerm>();
  for (const [source, term] of terms) scaled.set(source, { ...term, u: term.u * factor });
  return scaled;
}

/** An amount that moves with each of some values by its slope: their errors add up so weighted. */
export const combineValues = (
  amount: Fraction,
  moving: readonly (readonly [of: Value, slope: number])[],
): Value =>
  lateValue(amount, () => {
    const terms = new Map<string, ErrorTerm>();
    for (const [{ terms: own }, slope] of moving) addInto(terms, own, slope);
    return terms;
  });

/** The mean of at least one value: exact, and an error in only one of n readings counts one n-th. */
export function meanValue(values: readonly Value[]): Value {
  const [first, ...rest] = values;
  if (first === undefined) throw new RangeError('the mean of no values');
  if (rest.length === 0) return first;
  const amount = rest.reduce((sum, each) => add(sum, each.amount), first.amount);
  return scaleValue(
    lateValue(amount, () => summedTerms(first, rest)),
    fraction(1n, BigInt(values.length)),
  );
}

function summedTerms(first: Value, rest: readonly Value[]): Value['terms'] {
  const terms = new Map(first.terms);
  for (const each of rest) addInto(terms, each.terms, 1);
  return terms;
}

/** Combined standard uncertainty: the root sum of squares of independent terms (JCGM 100:2008, 5.1.2; clause from memory). */
export function standardUncertainty(value: Value): number {
  let squares = 0;
  for (const { u } of value.terms.values()) squares += u * u;
  return Math.sqrt(squares);
}

function addTerms(
  a: ReadonlyMap<string, ErrorTerm>,
  b: ReadonlyMap<string, ErrorTerm>,
  sign: 1 | -1,
): ReadonlyMap<string, ErrorTerm> {
  if (b.size === 0) return a;
  const terms = new Map(a);
  addInto(terms, b, sign);
  return terms;
}

function addInto(terms: Map<string, ErrorTerm>, added: ReadonlyMap<string, ErrorTerm>, factor: number): void {
  for (const [source, term] of added) {
    const u = (terms.get(source)?.u ?? 0) + factor * term.u;
    if (u === 0) terms.delete(source);
    else terms.set(source, u === term.u ? term : { ...term, u });
  }
}
