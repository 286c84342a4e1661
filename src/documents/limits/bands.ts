import type { Place } from '../../diagnostic/place.ts';
import { namesIn } from '../../formula/names.ts';
import type { ParsedFormula } from '../../formula/tree.ts';
import { add, compare, type Fraction } from '../../quantity/fraction.ts';
import type { Quantity, Unit } from '../../quantity/units.ts';
import {
  type Amount,
  type DocumentContext,
  parseAmount,
  plainUnit,
  readAmount,
  report,
  type UnitsInForce,
} from '../amount.ts';
import { readFormula } from '../formulaText.ts';
import type { Measure, Measures } from '../measure.ts';
import { unknownName } from '../unknownName.ts';
import { childOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { printedRange } from './printedRange.ts';

export const BAND_NAMES = ['target', 'new', 'wear', 'last'] as const;

export type BandName = (typeof BAND_NAMES)[number];

/** One side of a band: an amount in the base unit, or a formula over sizes and readings at the position. */
export type LimitValue = LimitAmount | LimitFormula;

export interface LimitAmount {
  readonly kind: 'amount';
  readonly amount: Fraction;
  /** As typed, or as it would have been where it was moved to a service size. */
  readonly written: string;
  readonly unit: Unit;
  readonly place: Place;
}

export interface LimitFormula {
  readonly kind: 'formula';
  readonly formula: ParsedFormula;
  readonly written: string;
  /** The unit in which its lengths enter and leave. */
  readonly units: UnitsInForce;
  readonly place: Place;
  /** Of one that names nothing, and so cannot see which size is fitted. */
  readonly movedBy?: Fraction;
}

export interface Band {
  readonly min?: LimitValue;
  readonly max?: LimitValue;
}

export type Bands = Readonly<Partial<Record<BandName, Band>>>;

/** `{ min, max }`, or as the manual prints it: `0.0020 to 0.0038`. */
export function readBand(node: Node, measure: Measure, measures: Measures, context: DocumentContext): Band {
  const range = printedRange(node);
  const band =
    range !== undefined
      ? bandOf(
          printed(range[0], node, measure.quantity, context),
          printed(range[1], node, measure.quantity, context),
        )
      : bandOf(
          readLimitValue(childOf(node, 'min'), measure, measures, context),
          readLimitValue(childOf(node, 'max'), measure, measures, context),
        );
  if (!isInverted(band)) return band;
  if (measure.cycle !== undefined) return acrossZero(band, measure.cycle);
  reportInverted(band, node, context);
  return band;
}

const isInverted = ({ min, max }: Band): boolean =>
  min?.kind === 'amount' && max?.kind === 'amount' && compare(min.amount, max.amount) > 0;

/** Of an angle that comes round again: from 710 to 10 degrees. */
const acrossZero = (band: Band, cycle: Fraction): Band =>
  band.max?.kind === 'amount' ? { ...band, max: { ...band.max, amount: add(band.max.amount, cycle) } } : band;

export const bandOf = (min: LimitValue | undefined, max: LimitValue | undefined): Band => ({
  ...(min === undefined ? {} : { min }),
  ...(max === undefined ? {} : { max }),
});

function printed(
  text: string,
  node: Node,
  quantity: Quantity,
  context: DocumentContext,
): LimitValue | undefined {
  return limitOf(parseAmount(text, node.span, quantity, context), node, context);
}

export const limitOf = (
  amount: Amount | undefined,
  node: Node,
  context: DocumentContext,
): LimitValue | undefined =>
  amount && {
    kind: 'amount',
    amount: amount.amount,
    written: amount.written,
    unit: amount.unit,
    place: context.source.place(node.span),
  };

function reportInverted({ min, max }: Band, node: Node, context: DocumentContext): void {
  const message = `the least, ${min?.written}, is more than the greatest, ${max?.written}`;
  report(context, 'value', node.span, message, 'exchange them');
}

function readLimitValue(
  node: Node | undefined,
  measure: Measure,
  measures: Measures,
  context: DocumentContext,
): LimitValue | undefined {
  if (node === undefined) return undefined;
  const formula = childOf(node, 'formula');
  if (formula !== undefined) return readLimitFormula(formula, measure, measures, context);
  return limitOf(readAmount(node, measure.quantity, context), node, context);
}

/** A limit's formula may name sizes and characteristics; whether they were measured is seen when it is judged. */
function readLimitFormula(
  node: Node,
  measure: Measure,
  measures: Measures,
  context: DocumentContext,
): LimitValue | undefined {
  const formula = readFormula(node, context);
  if (formula === undefined) return undefined;
  const unknown = unknownName(formula, measures);
  const { text } = formula;
  if (unknown !== undefined) {
    return report(context, 'formula', node.span, `in the formula ${text}: ${unknown.message}`, unknown.help);
  }
  const test = namesIn(formula).find((name) => measures.find(name)?.quantity === 'pass or fail');
  if (test !== undefined) {
    const message = `in the formula ${text}: ${test} is a test, and a formula needs numbers`;
    return report(context, 'formula', node.span, message);
  }
  if (namesIn(formula).includes(measure.id)) {
    const message = `in the formula ${text}: the limit is worked out from ${measure.id}, which it limits: it moves with the reading, so that no reading is out`;
    return report(context, 'formula', node.span, message, 'write the nominal size as a number');
  }
  // Its numbers are plain numbers too: without a unit the limit could not be worked out.
  const quantities = namesIn(formula).map((name) => measures.find(name)?.quantity ?? 'length');
  const lacks = [...new Set([measure.quantity, ...quantities])].filter(
    (quantity) => plainUnit(quantity, node.span, context) === undefined,
  );
  if (lacks.length > 0) return undefined;
  return {
    kind: 'formula',
    formula,
    written: text,
    units: context.units,
    place: context.source.place(node.span),
  };
}
