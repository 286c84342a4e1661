import { type Axis, HOLDER } from './axis.ts';
import { ENGINE, type Family, STEP } from './family.ts';
import { compareNames } from './nameOrder.ts';
import {
  coordinatesOfKey,
  keyOfCoordinates,
  type Labels,
  makePosition,
  type Position,
  WHOLE_ENGINE,
} from './position.ts';

/** What an engine document says of its layout. Names stand in the order in which they are counted. */
export interface LayoutNames {
  /** Axes that the document leaves out have no names. */
  readonly names: ReadonlyMap<Axis, readonly string[]>;
  /** Of an axis whose names differ from holder to holder: the valves by cylinder. */
  readonly onHolder: ReadonlyMap<Axis, ReadonlyMap<string, readonly string[]>>;
  /** By cylinder the crankpin that its rod runs on, and the bank that it stands in. */
  readonly ofCylinder: ReadonlyMap<Axis, ReadonlyMap<string, string>>;
  readonly labels: Labels;
}

/** The positions of an engine: each is made once. */
export class Layout {
  readonly given: LayoutNames;
  readonly #families = new Map<Family, ReadonlyMap<string, Position>>();
  readonly #lists = new Map<Family, readonly Position[]>();
  readonly #steps = new Map<string, Position>();
  readonly #wider: Layout | undefined;

  /** A layout that names less than another has the positions of that one. */
  constructor(given: Partial<LayoutNames> = {}, wider?: Layout) {
    this.#wider = wider;
    this.given = {
      names: new Map(),
      onHolder: new Map(),
      ofCylinder: new Map(),
      labels: new Map(),
      ...given,
    };
  }

  /** In the order in which they are counted; what the layout does not name has none. */
  positionsOf(family: Family): readonly Position[] {
    const known = this.#lists.get(family);
    if (known !== undefined) return known;
    const positions = [...this.#byKey(family).values()];
    this.#lists.set(family, positions);
    return positions;
  }

  /** The position with these coordinates. Steps are named freely, so every name is one. */
  at(family: Family, coordinates: readonly string[]): Position | undefined {
    const key = keyOfCoordinates(coordinates);
    return family === STEP ? this.step(key) : this.#byKey(family).get(key);
  }

  /** The one position of what there is but one of: the engine, and in most engines the head. */
  only(family: Family): Position | undefined {
    if (family.isSingle) return WHOLE_ENGINE;
    const [only, ...others] = this.positionsOf(family);
    return others.length === 0 ? only : undefined;
  }

  /** A step of an assembly, by the name that a session gives it. */
  step(name: string): Position {
    const step = this.#wider?.step(name) ?? this.#steps.get(name) ?? makePosition(STEP, [name]);
    this.#steps.set(name, step);
    return step;
  }

  /** The position that had this key, which the layout need not name any more. */
  withKey(family: Family, key: string): Position {
    const coordinates = coordinatesOfKey(key);
    return this.at(family, coordinates) ?? makePosition(family, coordinates);
  }

  /** All names along an axis, or those on one holder. */
  namesAlong(axis: Axis, holder?: string): readonly string[] {
    const onHolder = this.given.onHolder.get(axis);
    if (onHolder === undefined) return this.given.names.get(axis) ?? [];
    return holder === undefined ? [...new Set([...onHolder.values()].flat())] : (onHolder.get(holder) ?? []);
  }

  #byKey(family: Family): ReadonlyMap<string, Position> {
    const known = this.#families.get(family);
    if (known !== undefined) return known;
    const positions = family === ENGINE ? [WHOLE_ENGINE] : this.#made(family);
    const byKey = new Map(positions.map((position) => [position.key, position]));
    this.#families.set(family, byKey);
    return byKey;
  }

  #made(family: Family): readonly Position[] {
    const coordinates = family.axes.reduce<readonly (readonly string[])[]>(
      (rows, axis) =>
        rows.flatMap((row) => this.#namesAfter(row, family, axis).map((name) => [...row, name])),
      [[]],
    );
    return coordinates.map(
      (each) =>
        this.#wider?.at(family, each) ??
        makePosition(family, each, this.given.labels, this.#written(family, each)),
    );
  }

  #written({ axes }: Family, coordinates: readonly string[]): readonly string[] {
    return coordinates.map((name, index) => {
      const isShared = axes.some((axis, i) => i !== index && this.namesAlong(axis).includes(name));
      return isShared ? `${axes[index]} ${name}` : name;
    });
  }

  #namesAfter(row: readonly string[], { axes }: Family, axis: Axis): readonly string[] {
    const holder = HOLDER[axis];
    return this.namesAlong(axis, holder === undefined ? undefined : row[axes.indexOf(holder)]);
  }
}

/** In the order of the layout; what it does not name, such as steps, after that by number and name. */
export const inOrderOf =
  (layout: Layout | undefined, family: Family) =>
  (a: Position, b: Position): number => {
    const all = layout?.positionsOf(family) ?? [];
    const place = ({ key }: Position): number => {
      const index = all.findIndex((each) => each.key === key);
      return index < 0 ? all.length : index;
    };
    return place(a) - place(b) || compareNames(a.name, b.name);
  };
