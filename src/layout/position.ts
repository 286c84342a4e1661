import type { Axis } from './axis.ts';
import { ENGINE, type Family } from './family.ts';

/**
 * A place at which something is measured. A layout makes each of its positions once, so that they can be told apart
 * with `===`; those of two layouts are the same where their keys are.
 */
export interface Position {
  readonly family: Family;
  /** One name for each axis of the family. */
  readonly coordinates: readonly string[];
  /** The same for the same coordinates; of one axis the name itself. */
  readonly key: string;
  /** Each coordinate as a document writes it: with its axis where another axis of the family shares the name. */
  readonly written: readonly string[];
  /** As a table prints it whose heading says the family: `3`, `3 top`. */
  readonly name: string;
  /** What people call it, shown beside its name. */
  readonly label: string | undefined;
}

export type Labels = ReadonlyMap<Axis, ReadonlyMap<string, string>>;

export function makePosition(
  family: Family,
  coordinates: readonly string[],
  labels: Labels = new Map(),
  written: readonly string[] = coordinates,
): Position {
  const called = coordinates.map((name, index) => labels.get(axisAt(family, index))?.get(name));
  return {
    family,
    coordinates,
    key: keyOfCoordinates(coordinates),
    written,
    name: written.join(' '),
    label: called.some((label) => label !== undefined)
      ? coordinates.map((name, index) => called[index] ?? name).join(' ')
      : undefined,
  };
}

/** In no name: documents refuse control characters. */
const SEPARATOR = '\u001f';

export const keyOfCoordinates = (coordinates: readonly (string | undefined)[]): string =>
  coordinates.join(SEPARATOR);

export const coordinatesOfKey = (key: string): readonly string[] => key.split(SEPARATOR);

function axisAt(family: Family, index: number): Axis {
  const axis = family.axes[index];
  if (axis === undefined) throw new RangeError(`a ${family.name} has no coordinate ${index + 1}`);
  return axis;
}

/** The one position of what is measured once an engine. */
export const WHOLE_ENGINE: Position = makePosition(ENGINE, ['engine']);

/** With the axes: `cylinder 3 top ring`. Words stand before their axis, numbers and codes after it. */
export const fullName = ({ family, coordinates }: Position): string => spoken(family, coordinates);

/** The same of the coordinates that are known. */
export const spoken = (family: Family, coordinates: readonly (string | undefined)[]): string =>
  coordinates
    .flatMap((name, index) => {
      const axis = axisAt(family, index);
      if (name === undefined) return [];
      return /^[a-z]/.test(name) ? `${name} ${axis}` : `${axis} ${name}`;
    })
    .join(' ');

/** `{ cylinder: "3", ring: "top" }`. */
export const coordinatesByAxis = ({ family, coordinates }: Position): Readonly<Record<string, string>> =>
  Object.fromEntries(coordinates.map((name, index) => [axisAt(family, index), name]));
