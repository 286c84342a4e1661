import type { Axis } from './axis.ts';
import { ENGINE, type Family, STEP } from './family.ts';
import type { Layout } from './layout.ts';
import { keyOfCoordinates, type Position } from './position.ts';

/** One name for each axis of a family, as far as they are known. */
export type Coordinates = readonly (string | undefined)[];

/** What a key says of a position: some or all of its coordinates, nothing, or one of several. */
export type KeyMeaning =
  | { readonly kind: 'coordinates'; readonly coordinates: Coordinates }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'unclear'; readonly readings: readonly Coordinates[] };

export const noCoordinates = ({ axes }: Family): Coordinates => axes.map(() => undefined);

export const isComplete = (coordinates: Coordinates): coordinates is readonly string[] =>
  coordinates.every((name) => name !== undefined);

/** The position that a whole key names: by its names, by labels where they are one's own, or as it is printed. */
export function findPosition(layout: Layout, family: Family, key: string): Position | undefined {
  const meaning = readKey(layout, family, key);
  return meaning.kind === 'coordinates' && isComplete(meaning.coordinates)
    ? layout.at(family, meaning.coordinates)
    : undefined;
}

/**
 * What a key adds to the coordinates that are known: `3`, `top`, `3 top`, `ring top`, `cylinder 3 top ring`, `1E1`. An axis
 * word may stand beside a name, and must where two axes share it; names stand in any order, and without a space
 * between them where that reads in one way alone.
 */
export function readKey(
  layout: Layout,
  family: Family,
  key: string,
  known: Coordinates = noCoordinates(family),
): KeyMeaning {
  const plain = layout.at(family, [key]);
  if (plain !== undefined || family === ENGINE || family === STEP) return whole(plain);
  const found = readings({ layout, family, isSpaced: true }, key, known);
  const readingsFound = found.length > 0 ? found : readings({ layout, family, isSpaced: false }, key, known);
  const different = [...new Map(readingsFound.map((each) => [keyOfCoordinates(each), each])).values()];
  const [first, second] = different;
  if (first === undefined) return { kind: 'unknown' };
  return second === undefined
    ? { kind: 'coordinates', coordinates: first }
    : { kind: 'unclear', readings: different };
}

const whole = (position: Position | undefined): KeyMeaning =>
  position === undefined ? { kind: 'unknown' } : { kind: 'coordinates', coordinates: position.coordinates };

interface Around {
  readonly layout: Layout;
  readonly family: Family;
  readonly isSpaced: boolean;
}

/** Every way to take a text apart into names along axes that are not known yet. */
function readings(around: Around, text: string, known: Coordinates): readonly Coordinates[] {
  if (text === '') return isThere(around, known) ? [known] : [];
  return around.family.axes.flatMap((axis, index) => {
    if (known[index] !== undefined) return [];
    return namesOn(axis, around).flatMap(({ word, name }) => {
      const next = known.map((each, i) => (i === index ? name : each));
      return formsOf(word, axis).flatMap((form) => {
        const rest = restAfter(form, text, around.isSpaced);
        return rest === undefined ? [] : readings(around, rest, next);
      });
    });
  });
}

const formsOf = (word: string, axis: Axis): readonly string[] => [word, `${axis} ${word}`, `${word} ${axis}`];

function restAfter(form: string, text: string, isSpaced: boolean): string | undefined {
  if (!text.startsWith(form)) return undefined;
  const rest = text.slice(form.length);
  if (rest === '' || !isSpaced) return rest;
  return rest.startsWith(' ') ? rest.slice(1) : undefined;
}

interface Word {
  readonly word: string;
  readonly name: string;
}

/** The names along an axis, and the labels that one of them has to itself. */
function namesOn(axis: Axis, { layout }: Around): readonly Word[] {
  const names = layout.namesAlong(axis);
  const labels = [...(layout.given.labels.get(axis) ?? [])];
  const own = labels.filter(
    ([, label]) => !names.includes(label) && labels.filter(([, other]) => other === label).length === 1,
  );
  return [
    ...names.map((name) => ({ word: name, name })),
    ...own.map(([name, label]) => ({ word: label, name })),
    ...(axis === 'bank' ? sidesOf(names) : []),
  ];
}

/** The right head is head R. */
const sidesOf = (names: readonly string[]): readonly Word[] =>
  SIDES.filter(({ name, word }) => names.includes(name) && !names.includes(word));

const SIDES: readonly Word[] = [
  { name: 'L', word: 'left' },
  { name: 'R', word: 'right' },
  { name: 'left', word: 'L' },
  { name: 'right', word: 'R' },
];

/** Whether the layout has a position with these coordinates; joined names have to make a whole one. */
function isThere({ layout, family, isSpaced }: Around, coordinates: Coordinates): boolean {
  if (!isSpaced && !isComplete(coordinates)) return false;
  return layout
    .positionsOf(family)
    .some((position) =>
      coordinates.every((name, index) => name === undefined || name === position.coordinates[index]),
    );
}
