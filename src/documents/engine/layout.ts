/** The rows of like places that a characteristic is measured at. */
export const FAMILIES = ['main', 'crankpin', 'cylinder', 'valve', 'cam bearing', 'engine', 'step'] as const;

export type Family = (typeof FAMILIES)[number];

/** The one position of what is measured once an engine. */
export const WHOLE_ENGINE = 'engine';

export interface Layout {
  /** Names, in the order in which they are counted. Families that the engine document leaves out are empty. */
  readonly positions: ReadonlyMap<Family, readonly string[]>;
  /** Which crankpin a cylinder's rod runs on. */
  readonly pinOfCylinder: ReadonlyMap<string, string>;
  /** What people call a position, shown beside its name. */
  readonly labels: ReadonlyMap<Family, ReadonlyMap<string, string>>;
}

export const positionsOf = (layout: Layout, family: Family): readonly string[] =>
  layout.positions.get(family) ?? [];

/** The same, and the one position of what is measured once an engine. */
export const everyPositionOf = (layout: Layout, family: Family): readonly string[] =>
  family === 'engine' ? [WHOLE_ENGINE] : positionsOf(layout, family);

export const labelOf = (layout: Layout, family: Family, position: string): string | undefined =>
  layout.labels.get(family)?.get(position);

/**
 * The position that a key names: itself, or the one position that carries it as a label.
 * Steps are named freely, so every key is one.
 */
export function findPosition(layout: Layout, family: Family, key: string): string | undefined {
  if (family === 'step') return key;
  if (family === 'engine') return key === WHOLE_ENGINE ? key : undefined;
  if (positionsOf(layout, family).includes(key)) return key;
  const labelled = [...(layout.labels.get(family) ?? [])].filter(([, label]) => label === key);
  return labelled.length === 1 ? labelled[0]?.[0] : undefined;
}

/** Positions sort as numbers where they are numbers: 2 before 10, and 1L before 1R. */
export function comparePositions(a: string, b: string): number {
  const plain = PLAIN.test(a + b) ? comparePlain(a, b) : 0;
  if (plain !== 0 || a === b) return plain;
  collator ??= new Intl.Collator('en', { numeric: true });
  return collator.compare(a, b);
}

/** Letters of one case, digits and spaces stand in the order of their codes; a longer number would be rounded. */
const PLAIN = /^(?!.*\d{16})(?:[a-z\d ]*|[A-Z\d ]*)$/;

/** By the first number or character that is not the same. */
function comparePlain(a: string, b: string): number {
  const [x, y] = [a.match(PARTS) ?? [], b.match(PARTS) ?? []];
  const differing = x.findIndex((part, index) => part !== y[index]);
  const at = differing < 0 ? x.length : differing;
  const [s = '', t = ''] = [x[at], y[at]];
  if (/^\d/.test(s) && /^\d/.test(t)) return Number(s) - Number(t);
  return s === t ? 0 : s < t ? -1 : 1;
}

const PARTS = /\d+|\D/g;

/** In the order of the layout; what it does not name, such as steps, after that by number and name. */
export const inOrderOf =
  (layout: Layout | undefined, family: Family) =>
  (a: string, b: string): number => {
    const names = layout === undefined ? [] : positionsOf(layout, family);
    const place = (name: string): number => {
      const index = names.indexOf(name);
      return index < 0 ? names.length : index;
    };
    return place(a) - place(b) || comparePositions(a, b);
  };

/** Made when a name first asks for it: that takes 6 ms, and most names are plain. */
let collator: Intl.Collator | undefined;

/** The position of one family that belongs to a position of another, or undefined where the layout does not say. */
export function positionAcross(
  layout: Layout,
  from: Family,
  position: string,
  to: Family,
): string | undefined {
  if (from === to) return position;
  if (from === 'cylinder' && to === 'crankpin') return layout.pinOfCylinder.get(position);
  return undefined;
}
