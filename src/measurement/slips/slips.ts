import {
  add,
  compare,
  divide,
  type Fraction,
  fraction,
  multiply,
  parseDecimal,
  subtract,
  toDecimal,
  toNumber,
} from '../../quantity/fraction.ts';
import { unitNamed } from '../../quantity/units.ts';
import type { ByEye, InstrumentType } from '../instrument.ts';
import { forgottenPoint, slipsOfFigures, wholeNumber } from './figureSlips.ts';
import { amountOf, asWritten, decimalsIn, type Slip, type WrittenNumber } from './writtenNumber.ts';

const INCH = unitNamed('in').factor;
const MILLIMETRE = unitNamed('mm').factor;

/** What a number was read from: a thimble is read a turn out, a strip on its other scale. */
export interface ReadFrom {
  readonly instrument?: InstrumentType | ByEye | undefined;
  /** A diameter, of which a radius may have been written. */
  readonly isDiameter?: boolean;
  /** The printed steps of a strip. */
  readonly marks?: readonly Fraction[] | undefined;
  /** Its finest step. */
  readonly resolution?: Fraction | undefined;
}

type Step = readonly [Fraction, string];

const inches = (text: string): Fraction => multiply(parseDecimal(text), INCH);
const millimetres = (text: string): Fraction => multiply(parseDecimal(text), MILLIMETRE);

/** Steps that a person reads past: on the thimble, and from one micrometer of a set to the next. */
const INCH_STEPS: readonly Step[] = [
  [inches('0.025'), '25 thousandths out, one turn of a micrometer'],
  [INCH, 'one inch out'],
];
const METRIC_STEPS: readonly Step[] = [
  [millimetres('0.5'), '0.5 mm out, one turn of a micrometer'],
  [millimetres('25'), '25 mm out, the next micrometer of a set'],
];
/** The long hand of a dial goes round more than once. */
const INCH_TURN: Step = [inches('0.1'), '100 thousandths out, one turn of the dial'];
const METRIC_TURN: Step = [millimetres('1'), '1 mm out, one turn of the dial'];

/** What has neither thimble nor hand to be read a turn out. */
const WITHOUT_TURN: ReadonlySet<InstrumentType | ByEye | undefined> = new Set([
  'caliper',
  'feeler gauge',
  'gauging strip',
]);

/** Those that lie on a mark of the strip, where any does. */
export function likelierOnStrip(slips: readonly Slip[], { marks = [] }: ReadFrom): readonly Slip[] {
  const isOnMark = ({ intended }: Slip): boolean =>
    marks.some((mark) => Math.abs(toNumber(intended) / toNumber(mark) - 1) < NEAR_A_MARK);
  const onMarks = slips.filter(isOnMark);
  return onMarks.length > 0 ? onMarks : slips;
}

/**
 * Whether the instrument can show what was meant: it lies on a step, or is written no finer than one. What was read in another
 * unit was read from another scale, and who writes between two steps goes by halves of them.
 */
export function canBeShown(
  { intended, written }: Slip,
  number: WrittenNumber,
  { resolution }: ReadFrom,
): boolean {
  if (resolution === undefined || written.includes(' ')) return true;
  const isOnStep = (amount: Fraction): boolean => {
    const { n, d } = divide(subtract(amount, number.start), resolution);
    return n % d === 0n;
  };
  if (isOnStep(intended) || !isOnStep(amountOf(number))) return true;
  const figure = fraction(1n, 10n ** BigInt(decimalsIn(written.replace(/(\.\d*?)0+$/, '$1'))));
  return compare(multiply(number.unit, figure), resolution) >= 0;
}

/** The two scales of a strip are rounded to each other: 0.051 mm is 0.00201 in. */
const NEAR_A_MARK = 0.03;

/** Every number that a usual slip of the pen could have turned into this one. The list is of common practice, no source. */
export function slipsOf(number: WrittenNumber, from: ReadFrom = {}): readonly Slip[] {
  const isInch = isPowerOfTen(divide(INCH, number.unit));
  return [
    ...wholeNumber(number, isInch),
    ...slipsOfFigures(number),
    ...forgottenPoint(number),
    ...stepsOf(from, isInch).flatMap(([step, words]) => stepped(number, step, words)),
    ...otherUnit(number, isInch, from),
    ...otherSign(number),
    ...(from.isDiameter === true ? radius(number) : []),
  ];
}

function stepsOf({ instrument }: ReadFrom, isInch: boolean): readonly Step[] {
  const turn = isInch ? INCH_TURN : METRIC_TURN;
  if (instrument === 'dial indicator') return [turn];
  return WITHOUT_TURN.has(instrument) ? [] : isInch ? INCH_STEPS : METRIC_STEPS;
}

function stepped(number: WrittenNumber, step: Fraction, words: string): readonly Slip[] {
  const places = decimalsIn(number.digits);
  return [step, multiply(step, fraction(-1))].map((by) => {
    const intended = add(amountOf(number), by);
    return {
      words,
      intended,
      written: toDecimal(divide(subtract(intended, number.start), number.unit), places),
    };
  });
}

/** A deviation from a master is small in either unit, and is left alone. */
function otherUnit(
  { digits, start }: WrittenNumber,
  isInch: boolean,
  { instrument }: ReadFrom,
): readonly Slip[] {
  if (start.n !== 0n) return [];
  const [unit, name, words] = isInch
    ? [MILLIMETRE, 'mm', 'millimetres written as inches']
    : [INCH, 'in', 'inches written as millimetres'];
  const said =
    instrument === 'gauging strip' ? `read on the strip's ${isInch ? 'millimetre' : 'inch'} scale` : words;
  return [{ words: said, intended: multiply(parseDecimal(digits), unit), written: `${digits} ${name}` }];
}

/** Below zero by the sign alone, or a deviation from a master to the other side. */
function otherSign(number: WrittenNumber): readonly Slip[] {
  const { digits, start } = number;
  const size = digits.replace(/^[-+]/, '');
  if (digits.startsWith('-')) return asWritten(number, size, 'the sign');
  return start.n === 0n ? [] : asWritten(number, `-${size}`, 'the sign');
}

function radius(number: WrittenNumber): readonly Slip[] {
  const doubled = toDecimal(multiply(parseDecimal(number.digits), fraction(2)), decimalsIn(number.digits));
  return number.start.n === 0n ? asWritten(number, doubled, 'a radius for a diameter') : [];
}

/** Of inches and their tenths, thousandths and ten-thousandths. */
const isPowerOfTen = (ratio: Fraction): boolean => /^10*$/.test(`${toNumber(ratio)}`);
