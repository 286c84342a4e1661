import { TEST_WORDS } from '../../documents/session/outcome.ts';
import { findUnit, type Quantity } from '../../quantity/units.ts';
import { withArticle } from '../../quantity/words.ts';
import type { GaugeZero } from '../sessionText.ts';
import { completeDigits, type Expectation } from './trailingDigits.ts';

/** A line as a reading. */
export type TypedReading =
  | {
      readonly ok: true;
      /** As a session writes it. */
      readonly text: string;
      /** It is not what was typed, so it is shown in full before it is kept. */
      readonly completed: boolean;
    }
  | { readonly ok: false; readonly why: string };

export interface TypedFor {
  readonly quantity: Quantity;
  readonly zero: GaugeZero | undefined;
  readonly expected: Expectation | undefined;
  /** Torque after a step is one number; other points may hold ranges. */
  readonly takesRanges: boolean;
}

const DIGITS = '[-+]?(?:\\d+(?:[.,]\\d+)?|[.,]\\d+)';
const AMOUNT = new RegExp(`^(${DIGITS}) ?(%|[A-Za-z][A-Za-z0-9 /-]*)?$`);
const RANGE = new RegExp(`^(${DIGITS}) ?(?:to|-|–) ?(${DIGITS})$`);
const UNDER = new RegExp(`^(?:under|<) ?(${DIGITS})$`);
const OVER = new RegExp(`^(?:over|>) ?(${DIGITS})$`);
const GO = new RegExp(`^go (${DIGITS}) no ?(?:go )?(${DIGITS})$`);

/**
 * What a line means as a reading: a number with or without a unit, the last digits of one, a range of a strip or of
 * feelers. Digits stay as typed; signs and zeros that only gauges put before a number go, a decimal comma becomes a point.
 */
export function readTyped(line: string, about: TypedFor): TypedReading {
  if (about.quantity === 'pass or fail') return readResult(line);
  const [, digits, unit] = AMOUNT.exec(line) ?? [];
  if (digits !== undefined) return readAmount(digits, unit?.trim(), about);
  if (!about.takesRanges) return notUnderstood(line);
  const [, under] = UNDER.exec(line) ?? [];
  if (under !== undefined) return whole(`under ${plain(under)}`, line);
  const [, over] = OVER.exec(line) ?? [];
  if (over !== undefined) return whole(`over ${plain(over)}`, line);
  const [, low, high] = RANGE.exec(line) ?? [];
  if (low !== undefined && high !== undefined)
    return range(`${plain(low)} to ${plain(high)}`, low, high, line);
  const [, go, noGo] = GO.exec(line) ?? [];
  if (go === undefined || noGo === undefined) return notUnderstood(line);
  return range(`{ go: ${plain(go)}, no_go: ${plain(noGo)} }`, go, noGo, line);
}

const readResult = (line: string): TypedReading =>
  TEST_WORDS.includes(line)
    ? whole(line, line)
    : refused(`${line} is not a result of a test: type ${TEST_WORDS.join(', ')}`);

function readAmount(digits: string, unit: string | undefined, about: TypedFor): TypedReading {
  if (about.zero !== undefined && unit === undefined) return deviation(digits);
  const found = unit === undefined ? undefined : findUnit(unit, about.quantity);
  if (unit !== undefined && found === undefined) return refused(`${unit} is not a unit known here`);
  if (found !== undefined && found.quantity !== about.quantity) {
    return refused(`${unit} is a unit of ${found.quantity}, and this is ${withArticle(about.quantity)}`);
  }
  const text = plain(digits);
  if (found !== undefined) return whole(`${text} ${found.name}`, `${digits} ${unit}`);
  const completed = about.expected === undefined ? undefined : completeDigits(digits, about.expected);
  if (completed !== undefined) return { ok: true, text: completed, completed: true };
  if (looksLikeTail(digits, about.expected))
    return refused(`${digits} alone could be several numbers: type more of it`);
  return whole(text, digits);
}

/** Digits that nobody would mean as a whole number where three or four decimals are read. */
const looksLikeTail = (digits: string, expected: Expectation | undefined): boolean =>
  expected !== undefined &&
  expected.decimals >= 2 &&
  /^\d{1,3}$/.test(digits) &&
  Number(digits) > 2 * Math.abs(Number(expected.reference.n) / Number(expected.reference.d));

/** A gauge's deviation keeps its sign and its zeros: `+7`, `05`. */
const deviation = (digits: string): TypedReading => whole(digits.replace(',', '.'), digits);

/** A comma that was read as a decimal point is worth showing; a sign or a zero that went is not. */
const whole = (text: string, typed: string): TypedReading => ({
  ok: true,
  text,
  completed: typed.includes(','),
});

function range(text: string, low: string, high: string, line: string): TypedReading {
  if (Number(plain(low)) >= Number(plain(high)))
    return refused(`in ${line} the second number is not greater than the first`);
  return { ok: true, text, completed: false };
}

/** `+003.2478` as gauges send it, `3,2478`, `.0025`. */
const plain = (digits: string): string =>
  digits
    .replace(',', '.')
    .replace(/^\+/, '')
    .replace(/^(-?)0+(?=\d)/, '$1');

const refused = (why: string): TypedReading => ({ ok: false, why });

const notUnderstood = (line: string): TypedReading =>
  refused(`${line} is neither a reading nor a command (? lists them)`);
