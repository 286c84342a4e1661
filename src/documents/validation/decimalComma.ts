import { quoted } from '../../diagnostic/quoted.ts';
import type { ListNode, Node, ScalarNode, Span } from '../yaml/node.ts';
import type { Report } from '../yaml/problem.ts';

/** Two neighbours that a comma may have made out of one number. */
interface Halves {
  readonly whole: Span;
  readonly decimals: Span;
}

type Numeral = ScalarNode & { readonly value: number };

const WHOLE = /^[-+]?\d+$/;
const DIGITS = /^\d+$/;

/** Readings of one position are alike; whole numbers this many times apart are the halves of something else. */
const FAR_APART = 100;

/**
 * In `{ min: 0,0020 }` the decimals become a key without a value. `parsedValue` is what the parser gave for the
 * key's value: null when not even a colon stands there.
 */
export function splitByComma(
  key: string,
  keySpan: Span,
  parsedValue: unknown,
  before: Node | undefined,
  text: string,
): Halves | undefined {
  if (parsedValue !== null || before === undefined) return undefined;
  if (!isNumeral(before) || !WHOLE.test(before.source)) return undefined;
  // With a unit behind the digits, as in `2,5 thou`.
  const hasUnit = /^\d+ ?\p{L}.*$/u.test(key);
  if (!hasUnit && !DIGITS.test(key)) return undefined;
  const between = text.slice(before.span.end, keySpan.start);
  // With a space between, a name such as `1L` may stand there without its value.
  return (hasUnit ? /^,$/ : /^,\s*$/).test(between) ? { whole: before.span, decimals: keySpan } : undefined;
}

export function reportSplitNumber(
  { whole, decimals }: Halves,
  text: string,
  report: Report,
  otherwise = '',
): void {
  const [left, right] = [text.slice(whole.start, whole.end), text.slice(decimals.start, decimals.end)];
  const span = { start: whole.start, end: decimals.end };
  const message = `${quoted(`${left},${right}`)} is read as two things, ${left} and ${right}`;
  report('decimal-comma', span, message, `write a decimal point: ${left}.${right}${otherwise}`);
}

const OR_A_SPACE = '; or a space after the comma, if these are two readings';

/**
 * A list of readings. Flagged are: a whole number beside readings with a decimal point; without any point, two whole
 * numbers with a bare comma between them (`3,2478`); and whole numbers a hundred times apart (`3, 2478`).
 */
export function checkReadingList(list: ListNode, text: string, report: Report): void {
  const numerals = list.items.filter(isNumeral);
  const pointed = numerals.some(({ source }) => source.includes('.'));
  let found = false;
  for (let i = 0; i < numerals.length; i++) {
    const [item, next] = [numerals[i], numerals[i + 1]];
    if (item === undefined || !WHOLE.test(item.source)) continue;
    if (
      next !== undefined &&
      DIGITS.test(next.source) &&
      text.slice(item.span.end, next.span.start) === ','
    ) {
      reportSplitNumber({ whole: item.span, decimals: next.span }, text, report, OR_A_SPACE);
      found = true;
      i += 1;
    } else if (pointed) reportPointless(item, report);
  }
  if (!pointed && !found && areFarApart(numerals)) reportFarApart(list, report);
}

const isNumeral = (node: Node): node is Numeral =>
  node.kind === 'scalar' && node.plain && typeof node.value === 'number';

function areFarApart(numerals: readonly Numeral[]): boolean {
  const sizes = numerals.map(({ value }) => Math.abs(value));
  return sizes.length > 1 && Math.max(...sizes) >= FAR_APART * Math.max(1, Math.min(...sizes));
}

function reportPointless({ source, span }: ScalarNode, report: Report): void {
  const message = `${source} has no decimal point beside readings that have one`;
  report(
    'decimal-comma',
    span,
    message,
    `write 3.2478, not 3,2478; a whole number with its point too: ${source}.0`,
  );
}

function reportFarApart({ span }: ListNode, report: Report): void {
  const message = `these whole numbers are more than ${FAR_APART} times apart: a comma may stand for a decimal point`;
  report(
    'decimal-comma',
    span,
    message,
    'write 3.2478, not 3, 2478; if both are readings, give each a point: 3.0',
  );
}
