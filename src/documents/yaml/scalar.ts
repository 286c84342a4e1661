/** A plain scalar that is refused: other readers of YAML, or other people, take it for something else. */
export interface Ambiguous {
  /** What it most likely means, so that nothing else complains about it. */
  readonly value: number;
  readonly why: string;
  /** `05`: fine as bench shorthand, which only its surroundings can tell. */
  readonly leadingZero: boolean;
}

export type PlainValue = string | number | boolean | null;

/** A double keeps 15 significant digits of any decimal. */
const MOST_DIGITS = 15;

/** A digit, a sign or a point: nothing else begins a number. */
const MAY_BE_NUMBER = /^[-+.\d]/;
const NUMBER = /^[-+]?((0|[1-9]\d*)(\.\d+)?|\.\d+)$/;
const LEADING_ZERO = /^[-+]?0\d+$/;
export const WHY_NO_LEADING_ZERO = 'some readers take a leading zero for base eight';

const WORDS: ReadonlyMap<string, boolean | null> = new Map<string, boolean | null>([
  ['', null],
  ['~', null],
  ['null', null],
  ['Null', null],
  ['NULL', null],
  ['true', true],
  ['True', true],
  ['TRUE', true],
  ['false', false],
  ['False', false],
  ['FALSE', false],
]);

/**
 * Forms that one reader of YAML or another takes for a number, underscores left out; NUMBER has been tried before.
 * None of them has two ways to match the same digits: on a long text that would take for ever.
 */
const AMBIGUOUS: readonly (readonly [RegExp, string])[] = [
  [LEADING_ZERO, WHY_NO_LEADING_ZERO],
  [/^[-+]?\d+\.$/, 'its decimals are missing'],
  [/^[-+]?0\d+\.\d+$/, 'its whole part has a leading zero'],
  [/^[-+]?0o[0-7]+$/i, 'it is in base eight'],
  [/^[-+]?0x[0-9a-f]+$/i, 'it is in base sixteen'],
  [/^[-+]?0b[01]+$/i, 'it is in base two'],
  [/^[-+]?(\d+(\.\d*)?|\.\d+)e[-+]?\d+$/i, 'it has an exponent'],
  [/^[-+]?\d+(:[0-5]?\d)+(\.\d*)?$/, 'some readers take the colon for base sixty'],
  [/^[-+]?\.inf$/i, 'it stands for infinity'],
  [/^[-+]?\.nan$/i, 'it stands for "not a number"'],
];

/**
 * What a scalar written without quotes means. Numbers are decimals without an exponent; `yes`, `no`, `on`, `off`,
 * `y` and `n` are text, whatever YAML 1.1 made of them.
 */
export function readPlain(source: string): PlainValue | Ambiguous {
  if (!MAY_BE_NUMBER.test(source)) {
    const word = WORDS.get(source);
    return word === undefined ? source : word;
  }
  if (!NUMBER.test(source)) return readUnusual(source);
  const value = Number(source);
  if (source.length <= MOST_DIGITS) return value;
  const digits = significantDigits(source);
  if (digits > MOST_DIGITS) {
    return ambiguous(value, `it has ${digits} significant digits, and a number keeps ${MOST_DIGITS}`);
  }
  return value === 0 && digits > 0 ? ambiguous(value, 'it is too small to be kept') : value;
}

function readUnusual(source: string): string | Ambiguous {
  const bare = source.replaceAll('_', '');
  if (NUMBER.test(bare)) return ambiguous(Number(bare), 'some readers drop the underscore');
  for (const [form, why] of AMBIGUOUS) {
    if (form.test(bare))
      return ambiguous(Number.parseFloat(bare), why, form.test(source) && form === LEADING_ZERO);
  }
  return source;
}

function ambiguous(value: number, why: string, leadingZero = false): Ambiguous {
  return { value: Number.isFinite(value) ? value : 0, why, leadingZero };
}

const significantDigits = (source: string): number => source.replace(/^[-+]?[0.]*|\./g, '').length;
