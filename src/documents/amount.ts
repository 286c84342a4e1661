import { type Diagnostic, type DocumentCode, diagnostic } from '../diagnostic/diagnostic.ts';
import { add, divide, type Fraction, fraction, parseDecimal } from '../quantity/fraction.ts';
import { findUnit, fromBase, type Quantity, toBase, type Unit, unitsOf } from '../quantity/units.ts';
import { withArticle } from '../quantity/words.ts';
import { scalarOf } from './yaml/access.ts';
import type { Node, SourceText, Span } from './yaml/node.ts';

/** The unit in which a document's plain numbers of a quantity are. */
export type UnitsInForce = ReadonlyMap<Quantity, Unit>;

/** What every reader of one document shares. */
export interface DocumentContext {
  readonly source: SourceText;
  readonly units: UnitsInForce;
  /** Problems found so far; readers add to it and go on. */
  readonly problems: Diagnostic[];
}

export interface Amount {
  /** In the quantity's base unit, exact. */
  readonly amount: Fraction;
  readonly unit: Unit;
  /** The digits as typed, with the unit where one was typed. */
  readonly written: string;
  /** One step of the last digit written, in the base unit. */
  readonly lastDigit: Fraction;
  readonly span: Span;
}

export function report(
  context: DocumentContext,
  code: DocumentCode,
  span: Span,
  message: string,
  help?: string,
): undefined {
  context.problems.push(diagnostic(code, context.source.place(span), message, help));
}

const PLAIN = /^[-+]?(?:\d+(?:\.\d+)?|\.\d+)$/;
export const isPlainNumber = (text: string): boolean => PLAIN.test(text);
const WITH_UNIT = /^([-+]?(?:\d+(?:\.\d+)?|\.\d+)) ?(\D.*)$/;

/** A number in the document's unit, or text with its own; undefined with a report where it is neither. */
export function readAmount(
  node: Node | undefined,
  quantity: Quantity,
  context: DocumentContext,
): Amount | undefined {
  const scalar = scalarOf(node);
  if (scalar === undefined) return undefined;
  const text = typeof scalar.value === 'string' ? scalar.value : scalar.source;
  return parseAmount(text, scalar.span, quantity, context);
}

/** As `readAmount`, of text that stands inside a longer scalar. */
export function parseAmount(
  text: string,
  span: Span,
  quantity: Quantity,
  context: DocumentContext,
): Amount | undefined {
  if (isPlainNumber(text)) {
    const unit = plainUnit(quantity, span, context);
    return unit === undefined ? undefined : measured(text, text, unit, span, context);
  }
  const [, digits, unitName] = WITH_UNIT.exec(text) ?? [];
  const unit = unitName === undefined ? undefined : findUnit(unitName.trim(), quantity);
  if (digits === undefined || unit === undefined) return undefined;
  if (unit.quantity !== quantity) {
    const wanted = unitsOf(quantity).map((each) => each.name);
    return report(
      context,
      'wrong-quantity',
      span,
      `${text} is ${withArticle(unit.quantity)}, and ${withArticle(quantity)} is wanted here`,
      wanted.length === 1 ? `write it in ${wanted[0]}` : `write it in one of: ${wanted.join(', ')}`,
    );
  }
  return measured(digits, `${digits} ${unit.name}`, unit, span, context);
}

/** The unit of plain numbers; a quantity that has but one unit needs no saying. */
export function plainUnit(quantity: Quantity, span: Span, context: DocumentContext): Unit | undefined {
  const all = unitsOf(quantity);
  const unit = context.units.get(quantity) ?? (all.length === 1 ? all[0] : undefined);
  if (unit !== undefined) return unit;
  return report(
    context,
    'no-unit',
    span,
    `a plain number, and no document states the unit of ${withArticle(quantity)}`,
    `write the unit beside it, or \`units: { ${quantity}: ${all[0]?.name} }\` in this document, the engine's or shop.yaml`,
  );
}

function measured(
  digits: string,
  written: string,
  unit: Unit,
  span: Span,
  context: DocumentContext,
): Amount | undefined {
  const amount = toBase(parseDecimal(digits), unit);
  if (unit.quantity === 'length' && amount.n % amount.d !== 0n) {
    return report(
      context,
      'too-fine',
      span,
      `${written} is finer than a tenth of a nanometre, the finest length that is kept`,
      'write the digits that the instrument shows',
    );
  }
  return {
    amount: wholeWhereItCan(amount),
    unit,
    written,
    lastDigit: lastDigitOf(digits, unit.factor),
    span,
  };
}

/** Lengths are whole numbers of base units; a denominator of 1 keeps later sums cheap. */
const wholeWhereItCan = (amount: Fraction): Fraction =>
  amount.n % amount.d === 0n ? fraction(amount.n / amount.d) : amount;

/** What one step of the last digit is worth where one whole is worth `unit`. */
export function lastDigitOf(digits: string, unit: Fraction): Fraction {
  const point = digits.indexOf('.');
  const places = point < 0 ? 0 : digits.length - point - 1;
  return divide(unit, fraction(10n ** BigInt(places)));
}

/** The same amount moved by another, as a gauge's deviation is from its master. */
export const moved = (deviation: Amount, by: Fraction): Amount => ({
  ...deviation,
  amount: wholeWhereItCan(add(deviation.amount, by)),
});

/** As written, with the unit also where it was left to the document. */
export const withUnit = ({ written, unit }: Amount): string =>
  isPlainNumber(written) ? `${written} ${unit.name}` : written;

export const inUnit = (amount: Fraction, unit: Unit): Fraction => fromBase(amount, unit);
