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
export const map = (described: About, properties: Properties, rest: Schema = {}): Schema => ({
  ...described,
  description: withExample(described),
  ...mapShape(properties, { errorMessage: keysHelp(described), ...rest }),
});

export const mapShape = (properties: Properties, rest: Schema = {}): Schema => ({
  type: 'object',
  additionalProperties: false,
  properties,
  ...rest,
});

/** A map whose keys are names that the shop chooses: positions, instruments, people. */
export const named = (described: About, value: Schema, rest: Schema = {}): Schema => ({
  ...described,
  type: 'object',
  minProperties: 1,
  additionalProperties: value,
  errorMessage: keysHelp(described),
  ...rest,
});

const keysHelp = ({ examples }: About): string =>
  `write keys and their values, such as ${inFlow(examples[0])}`;

export const list = (described: About, items: Schema): Schema => ({
  ...described,
  type: 'array',
  items,
  errorMessage: `write a list, each item after a dash, such as - ${inFlow([described.examples[0]].flat()[0])}`,
});

/** Draft-07 ignores what stands beside `$ref`, so a reference that has a title of its own is wrapped. */
export const reference = (described: About, name: string): Schema => ({
  ...described,
  description: withExample(described),
  allOf: [{ $ref: `#/definitions/${name}` }],
});

/** The ids the registry knows are offered by name; the pattern lets a shop's own stand beside them. */
export const keyedByCharacteristic = (
  described: About,
  offered: readonly Offered[],
  value: Schema,
  more: Properties = {},
): Schema => ({
  ...described,
  type: 'object',
  additionalProperties: false,
  properties: { ...more, ...Object.fromEntries(offered.map((each) => [each.id, reportOf(each)])) },
  patternProperties: { [PATTERNS.identifier]: value },
  errorMessage: keysHelp(described),
});

const reportOf = ({ label, description }: Offered): Schema => ({ title: label, description });

/** A characteristic as a value. The pattern stands first: it alone decides, the list is there to be offered. */
export const measure = (described: About, offered: readonly Offered[]): Schema => ({
  ...described,
  description: withExample(described),
  anyOf: [
    { type: 'string', pattern: PATTERNS.identifier },
    { enum: offered.map(({ id }) => id), enumDescriptions: offered.map(({ label }) => label) },
  ],
  errorMessage: "write a characteristic's id in small letters, digits and _, such as main_journal_diameter",
});
