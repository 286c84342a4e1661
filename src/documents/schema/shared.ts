import { findUnit, type Quantity, UNIT_SPELLINGS } from '../../quantity/units.ts';
import {
  type About,
  about,
  amount,
  choice,
  PATTERNS,
  type Schema,
  text,
  WORD_ITEM,
  withExample,
} from './scalars.ts';

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
  ...mapShape(properties, rest),
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
  ...rest,
});

export const list = (told: About, items: Schema): Schema => ({
  ...told,
  type: 'array',
  items,
  errorMessage: 'write a list: each item after a dash, or [a, b]',
});

/** Draft-07 ignores what stands beside `$ref`, so a reference that has a title of its own is wrapped. */
export const reference = (told: About, name: string): Schema => ({
  ...told,
  description: withExample(told),
  allOf: [{ $ref: `#/definitions/${name}` }],
});

/** A whole document of one kind. */
export const document = (
  kind: string,
  told: Pick<About, 'title' | 'description'>,
  properties: Properties,
  required: readonly string[],
  definitions: Properties = {},
): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  ...told,
  type: 'object',
  additionalProperties: false,
  required: ['kind', ...required],
  properties: { ...head(kind), ...properties },
  ...(Object.keys(definitions).length === 0 ? {} : { definitions }),
});

const head = (kind: string): Properties => ({
  kind: choice(about('Kind of document', 'Says what this document is.', kind), [kind]),
  version: choice(about('Version of the format', 'The version of this format; it may be left out.', 1), [1]),
  units,
  note,
});

export const note: Schema = text(about('Note', 'Anything worth remembering.', 'stayed on the shell'));
export const source: Schema = text(
  about(
    'Source',
    'Where the figures come from: the manual, its page, its year.',
    "Maker's manual, page 4-12",
  ),
);
export const by: Schema = text(about('By', 'Who did it: a name or initials.', 'RK'));
export const photos: Schema = {
  ...about('Photographs', "Paths inside the engine's folder.", ['photos/main-3.jpg']),
  type: 'array',
  items: text(about('Photograph', 'The path of a picture.', 'photos/main-3.jpg')),
  errorMessage: 'write a list of paths',
};

const spellingsOf = (quantity: Quantity): string[] =>
  UNIT_SPELLINGS.filter((each) => findUnit(each)?.quantity === quantity);

export const QUANTITIES: readonly Quantity[] = [
  ...new Set(UNIT_SPELLINGS.flatMap((each) => findUnit(each)?.quantity ?? [])),
];

const unitOf = (quantity: Quantity): Schema => {
  const spellings = spellingsOf(quantity);
  return choice(
    about(`Unit of ${quantity}`, `The unit of a plain number that is a ${quantity}.`, spellings[0]),
    spellings,
  );
};

const units: Schema = map(
  about('Units', 'The units of plain numbers in this document.', { length: 'in', torque: 'lbf ft' }),
  Object.fromEntries(QUANTITIES.map((each) => [each, unitOf(each)])),
);

export const decisionRule: Schema = choice(
  about(
    'Decision rule',
    'simple compares and marks what is close to a limit; guarded says undecided where the instrument cannot tell.',
    'simple',
  ),
  ['simple', 'guarded'],
);

/** Families of positions; the whole engine is a position of its own. */
export const FAMILIES = ['main', 'crankpin', 'cylinder', 'cam_bearing', 'valve'] as const;

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

export const stations: Schema = {
  ...about('Stations', 'Where along the part, as names or with the distance of each from one end.', [
    'front',
    'rear',
  ]),
  anyOf: [
    { type: 'array', minItems: 1, items: WORD_ITEM },
    {
      type: 'object',
      minProperties: 1,
      additionalProperties: amount(about('Distance', 'How far from the end this station is.', '0.25 in')),
    },
  ],
  errorMessage: 'write names such as [front, rear], or distances such as { front: 0.25 in, rear: 1.75 in }',
};

export const directions: Schema = {
  ...about(
    'Directions',
    'Where round the part: square, +45, -45 in a bore; throw, square on a pin; thrust, axial in a cylinder.',
    ['throw', 'square'],
  ),
  type: 'array',
  minItems: 1,
  items: WORD_ITEM,
  errorMessage: 'write a list of names, such as [throw, square]',
};
