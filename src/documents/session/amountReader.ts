import { type Fraction, multiply, parseDecimal } from '../../quantity/fraction.ts';
import { type Quantity, toBase, unitNamed } from '../../quantity/units.ts';
import {
  type Amount,
  type DocumentContext,
  isPlainNumber,
  lastDigitOf,
  moved,
  parseAmount,
  readAmount,
  report,
} from '../amount.ts';
import type { Measure } from '../measure.ts';
import { childOf, textAt, textOf } from '../yaml/access.ts';
import type { Node, Span } from '../yaml/node.ts';
import { readOutcome, reportTestWord } from './outcome.ts';
import type { ReadAmount } from './reading.ts';

/** What the plain numbers under `in:` count. */
const SHORTHAND: Readonly<Record<string, Fraction>> = {
  tenths: toBase(parseDecimal('0.0001'), unitNamed('in')),
  thou: toBase(parseDecimal('0.001'), unitNamed('in')),
  hundredths: toBase(parseDecimal('0.01'), unitNamed('mm')),
};

/** How the numbers of a block are meant: in the document's unit, as shorthand, as deviations from a master. */
export function amountReader(block: Node, measure: Measure, context: DocumentContext): ReadAmount {
  if (measure.quantity === 'pass or fail') return (text, span) => readOutcome(text, span, context);
  const step = SHORTHAND[textAt(block, 'in') ?? ''];
  const from = startingAmount(block, measure, context);
  return (text, span) => {
    const plain = parsePlain(text, step);
    const amount =
      plain === undefined ? readNumber(text, span, measure.quantity, context) : { ...plain, span };
    return amount === undefined || from === undefined ? amount : moved(amount, from);
  };
}

/** A count is a whole number of things. */
function readNumber(
  text: string,
  span: Span,
  quantity: Quantity,
  context: DocumentContext,
): Amount | undefined {
  reportTestWord(text, span, quantity, context);
  const amount = parseAmount(text, span, quantity, context);
  if (amount === undefined || quantity !== 'count' || isCount(amount.amount)) return amount;
  return report(context, 'value', span, `${text} is not a count`, 'write a whole number, 0 or more');
}

const isCount = ({ n, d }: Fraction): boolean => n >= 0n && n % d === 0n;

function parsePlain(text: string, step: Fraction | undefined): Omit<Amount, 'span'> | undefined {
  if (step === undefined || !isPlainNumber(text)) return undefined;
  return {
    amount: multiply(parseDecimal(text), step),
    unit: unitNamed('in'),
    written: text,
    lastDigit: lastDigitOf(text, step),
  };
}

/** What the gauge was zeroed in: a size, or each journal. `base` is arithmetic only, and is neither. */
export function setToOf(
  block: Node,
  measure: Measure,
  context: DocumentContext,
): Fraction | 'journal' | undefined {
  const setTo = childOf(block, 'set_to');
  if (textOf(setTo) === 'journal') return 'journal';
  return readAmount(setTo, measure.quantity, context)?.amount;
}

function startingAmount(block: Node, measure: Measure, context: DocumentContext): Fraction | undefined {
  const setTo = childOf(block, 'set_to');
  if (textOf(setTo) === 'journal') return zeroedOnJournal(measure, setTo, context);
  return readAmount(setTo ?? childOf(block, 'base'), measure.quantity, context)?.amount;
}

/** A gauge zeroed in a micrometer locked at the journal reads the clearance itself. */
function zeroedOnJournal(measure: Measure, setTo: Node | undefined, context: DocumentContext): undefined {
  if ((measure.figure ?? 'clearance') === 'clearance' || setTo === undefined) return undefined;
  return report(
    context,
    'value',
    setTo.span,
    `a gauge that was set to the journal reads clearances, and this block measures ${measure.id}`,
    'write measure: with the clearance, such as main_bearing_clearance',
  );
}
