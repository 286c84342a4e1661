import { inFlow } from '../writing/inFlow.ts';
import { PATTERNS } from './patterns.ts';
import { type About, type Schema, withExample } from './scalars.ts';

/** What a schema needs to know of a characteristic, to offer it by name. */
export interface Offered {
  readonly id: string;
  readonly label: string;
  readonly quantity: string;
  readonly description: string;
}

export type Properties = Readonly<Record<string, Schema>>;

/** A map with known keys and no others. */
export const map = (told: About, properties: Properties, rest: Schema = {}): Schema => ({
  ...told,
  description: withExample(told),
  ...mapShape(properties, { errorMessage: keysHelp(told), ...rest }),
});

export const mapShape = (properties: Properties, rest: Schema = {}): Schema => ({
  type: 'object',
  additionalProperties: false,
  properties,
  ...rest,
});

/** A map whose keys are names that the shop chooses: positions, instruments, people. */
export const named = (told: About, value: Schema, rest: Schema = {}): Schema => ({
  ...told,
  type: 'object',
  minProperties: 1,
  additionalProperties: value,
  errorMessage: keysHelp(told),
  ...rest,
});

const keysHelp = ({ examples }: About): string =>
  `write keys and their values, such as ${inFlow(examples[0])}`;

export const list = (told: About, items: Schema): Schema => ({
  ...told,
  type: 'array',
  items,
  errorMessage: `write a list, each item after a dash, such as - ${inFlow([told.examples[0]].flat()[0])}`,
});

/** Draft-07 ignores what stands beside `$ref`, so a reference that has a title of its own is wrapped. */
export const reference = (told: About, name: string): Schema => ({
  ...told,
  description: withExample(told),
  allOf: [{ $ref: `#/definitions/${name}` }],
});

/** The ids the registry knows are offered by name; the pattern lets a shop's own stand beside them. */
export const keyedByCharacteristic = (
  told: About,
  offered: readonly Offered[],
  value: Schema,
  more: Properties = {},
): Schema => ({
  ...told,
  type: 'object',
  additionalProperties: false,
  properties: { ...more, ...Object.fromEntries(offered.map((each) => [each.id, tellOf(each)])) },
  patternProperties: { [PATTERNS.identifier]: value },
  errorMessage: keysHelp(told),
});

const tellOf = ({ label, description }: Offered): Schema => ({ title: label, description });

/** A characteristic as a value. The pattern stands first: it alone decides, the list is there to be offered. */
export const measure = (told: About, offered: readonly Offered[]): Schema => ({
  ...told,
  description: withExample(told),
  anyOf: [
    { type: 'string', pattern: PATTERNS.identifier },
    { enum: offered.map(({ id }) => id), enumDescriptions: offered.map(({ label }) => label) },
  ],
  errorMessage: "write a characteristic's id in small letters, digits and _, such as main_journal_diameter",
});
