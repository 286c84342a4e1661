import { fraction, ZERO } from '../../quantity/fraction.ts';
import { type Quantity, unitsOf } from '../../quantity/units.ts';
import { withArticle } from '../../quantity/words.ts';
import { type Amount, type DocumentContext, report } from '../amount.ts';
import type { Span } from '../yaml/node.ts';

/** What a test comes to: a pass counts one, a fail none. */
export const OUTCOMES = ['pass', 'fail'] as const;

/** As a reading: the test was left out on purpose, as `~` says of a number. */
export const NOT_DONE = 'not done';

export const TEST_WORDS: readonly string[] = [...OUTCOMES, NOT_DONE];

const [UNIT] = unitsOf('pass or fail');

/** What was read of a test; undefined where it was not done. */
export function readOutcome(text: string, span: Span, context: DocumentContext): Amount | undefined {
  const isPass = text === 'pass';
  if (UNIT !== undefined && (isPass || text === 'fail')) {
    return { amount: isPass ? fraction(1) : ZERO, unit: UNIT, written: text, lastDigit: fraction(1), span };
  }
  if (text === NOT_DONE) return undefined;
  return report(
    context,
    'value',
    span,
    `${text} is not a result of a test`,
    `write ${TEST_WORDS.join(', ')}`,
  );
}

/** `pass` where a number is wanted. */
export function reportTestWord(
  text: string,
  span: Span,
  quantity: Quantity,
  context: DocumentContext,
): undefined {
  if (!TEST_WORDS.includes(text)) return undefined;
  const help = text === NOT_DONE ? 'write ~ with a note' : 'write the number that was read';
  return report(
    context,
    'value',
    span,
    `${text} is the result of a test, and this is ${withArticle(quantity)}`,
    help,
  );
}
