import { NAMED_AXES } from '../../layout/axis.ts';
import { findUnit, QUANTITIES, type Quantity, UNIT_SPELLINGS } from '../../quantity/units.ts';
import { type About, about, choice, type Schema, text } from './scalars.ts';
import { map, type Properties } from './shared.ts';

/** A whole document of one kind. */
export const document = (
  kind: string,
  described: Pick<About, 'title' | 'description'>,
  properties: Properties,
  required: readonly string[],
  definitions: Properties = {},
): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  ...described,
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

export const note: Schema = text(about('Note', 'Anything worth remembering.', 'read at the wide end'));
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
  UNIT_SPELLINGS.filter((each) => findUnit(each, quantity)?.quantity === quantity);

/** Plain numbers, counts and tests have no unit to be stated. */
const WITH_UNITS: readonly Quantity[] = QUANTITIES.filter((each) => spellingsOf(each).length > 0);

const unitOf = (quantity: Quantity): Schema => {
  const spellings = spellingsOf(quantity);
  return choice(
    about(`Unit of ${quantity}`, `The unit of plain numbers of ${quantity}.`, spellings[0]),
    spellings,
  );
};

const units: Schema = map(
  about('Units', 'The units of plain numbers in this document.', { length: 'in', torque: 'lbf ft' }),
  Object.fromEntries(WITH_UNITS.map((each) => [each, unitOf(each)])),
);

export const decisionRule: Schema = choice(
  about(
    'Decision rule',
    'simple compares and marks what is close to a limit; guarded says undecided where the instrument cannot tell.',
    'simple',
  ),
  ['simple', 'guarded'],
);

/** Families of positions, by their last axis; the whole engine is a position of its own. */
export const FAMILIES: readonly string[] = NAMED_AXES.map(({ label }) => label);
