import { PATTERNS } from './patterns.ts';

/** A JSON Schema in the draft-07 vocabulary, as plain data. */
export interface Schema {
  readonly [keyword: string]: unknown;
}

/** What an editor says of a key: a title, a sentence, and values that would be right there. */
export interface About {
  readonly title: string;
  readonly description: string;
  readonly examples: readonly unknown[];
}

export const about = (title: string, description: string, ...examples: readonly unknown[]): About => ({
  title,
  description,
  examples,
});

/** `errorMessage` is what an editor shows, and the help our own diagnostics give, when the value is refused. */
const scalar = (described: About, errorMessage: string, rest: Schema): Schema => ({
  ...described,
  description: withExample(described),
  ...rest,
  errorMessage,
});

export function withExample({ description, examples }: About): string {
  const first = examples[0];
  const shown = typeof first === 'string' || typeof first === 'number' || typeof first === 'boolean';
  return shown ? `${description} Example: ${first}` : description;
}

const TEXT: Schema = { type: 'string', pattern: PATTERNS.notBlank };
const NUMBER_TYPE: Schema = { type: 'number' };
const NOTHING: Schema = { type: 'null' };
const matching = (pattern: string): Schema => ({ type: 'string', pattern });

export const text = (described: About): Schema =>
  scalar(described, 'write it as text, in quotes if it is digits', TEXT);

/** A name that may be nothing but digits: a position, a mark, a serial number. */
export const word = (described: About): Schema =>
  scalar(described, 'write a name or a number', { anyOf: [TEXT, NUMBER_TYPE] });

export const words = (described: About): Schema =>
  scalar(described, 'write a list of names, such as [1, 2, 3]', {
    type: 'array',
    minItems: 1,
    items: WORD_ITEM,
  });

export const wordOrWords = (described: About): Schema =>
  wordOr(described, 'write a name, or a list of names such as [1, 2, 3]', {
    type: 'array',
    minItems: 1,
    items: WORD_ITEM,
  });

export const wordOr = (described: About, errorMessage: string, other: Schema): Schema =>
  scalar(described, errorMessage, { anyOf: [TEXT, NUMBER_TYPE, other] });

export const WORD_ITEM: Schema = { anyOf: [TEXT, NUMBER_TYPE], errorMessage: 'write a name or a number' };

export const texts = (described: About): Schema =>
  scalar(described, 'write a list: one line a thing, each after a dash', {
    type: 'array',
    minItems: 1,
    items: { ...TEXT, errorMessage: 'write it as text, in quotes if it is digits' },
  });

/** A coefficient of expansion, as a share for one degree. */
export const coefficient = (described: About): Schema =>
  scalar(
    described,
    'write a share of the length for one degree, such as 19.4e-6 per degC',
    matching(PATTERNS.coefficient),
  );

export const flag = (described: About): Schema =>
  scalar(described, 'write true or false', { type: 'boolean' });

export const date = (described: About): Schema =>
  scalar(described, 'write the date as year-month-day, such as 2026-02-03', matching(PATTERNS.date));

export const choice = (described: About, values: readonly (string | number)[]): Schema =>
  scalar(described, `write ${values.length > 1 ? 'one of ' : ''}${values.join(', ')}`, { enum: values });

export const count = (described: About): Schema =>
  scalar(described, 'write a whole number from 1 to 100', { type: 'integer', minimum: 1, maximum: 100 });

/** A number in the document's units, or text that carries its own unit. */
export const amount = (described: About): Schema => scalar(inUnits(described), AMOUNT_HELP, AMOUNT_SHAPE);

export const percentOrAmount = (described: About): Schema =>
  scalar(described, 'write a number, a number with its unit such as 0.0001 in, or a percentage such as 4 %', {
    anyOf: [NUMBER_TYPE, matching(PATTERNS.withUnit)],
  });

export const AMOUNT_HELP = 'write a number, or a number with its unit such as 0.0635 mm';
const AMOUNT_SHAPE: Schema = { anyOf: [NUMBER_TYPE, matching(PATTERNS.withUnit)] };

/** An item of a list of amounts; `~` stands for one not taken. */
export const AMOUNT_ITEM: Schema = { ...AMOUNT_SHAPE, errorMessage: AMOUNT_HELP };

export const AMOUNT_OR_NOTHING: readonly Schema[] = [NUMBER_TYPE, matching(PATTERNS.withUnit), NOTHING];

export const amountOrNothing = (described: About): Schema =>
  scalar(inUnits(described), `${AMOUNT_HELP}, or ~ where none was taken`, { anyOf: AMOUNT_OR_NOTHING });

/** The branches of a reading at one point that are not a map or a list. */
export const READING_SCALARS: readonly Schema[] = [NUMBER_TYPE, matching(PATTERNS.readingText), NOTHING];

export const amountOrRange = (described: About): Schema =>
  scalar(inUnits(described), 'write a number, a number with its unit, or a range such as 58 to 69', {
    anyOf: [NUMBER_TYPE, matching(PATTERNS.withUnitOrRange)],
  });

export const RANGE_TEXT: Schema = matching(PATTERNS.range);

export const grade = (described: About): Schema =>
  scalar(described, 'write std, or a size with under or over, such as 0.010 under', matching(PATTERNS.grade));

export const positiveNumber = (described: About): Schema =>
  scalar(described, 'write a number above 0', { type: 'number', exclusiveMinimum: 0 });

const inUnits = (described: About): About => ({
  ...described,
  description: `${described.description} In the document's units, or with its own unit.`,
});
