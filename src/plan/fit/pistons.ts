import { compare, type Fraction, subtract } from '../../quantity/fraction.ts';
import { allocate } from './allocate/allocate.ts';
import { type Assignment, assign } from './allocate/assign.ts';
import type { Option } from './allocate/option.ts';
import { costOf, type Spread, type Wanted } from './wanted.ts';

/** A piston in stock: its size at gauge height in the base unit, and its weight where it was weighed. */
export interface Piston {
  readonly mark: string;
  readonly diameter: Fraction;
  readonly weight: Fraction | undefined;
  /** The bore that a used piston ran in, by its name: it goes back there, or nowhere. */
  readonly ranIn?: string | undefined;
}

/** A finished bore where its piston bears. */
export interface Bore<P extends Piston = Piston> extends Spread {
  readonly name: string;
  readonly size: Fraction;
  readonly wanted: Wanted;
  /** Whether a piston is of the size to which this bore was made; absent where all are. */
  readonly takes?: (piston: P) => boolean;
}

export interface PistonSet<P extends Piston = Piston> {
  /** The piston of each bore, in the order of the bores. */
  readonly pistons: readonly P[];
  readonly clearances: readonly Fraction[];
}

/**
 * A piston for every bore, the clearances as near to the middle as stock allows taken together, no two pistons of the set
 * farther apart in weight than `weightSpread`, nor from those that are in place; undefined where stock does not do.
 */
export function fitPistons<P extends Piston>(
  bores: readonly Bore<P>[],
  stock: readonly P[],
  weightSpread: Fraction | undefined,
  inPlace: readonly P[] = [],
): PistonSet<P> | undefined {
  const sets = setsBeside(inPlace, stock, weightSpread).flatMap((pistons) => {
    const found = assign(bores.map((bore) => pistons.map((piston) => costIn(bore, piston))));
    return found === undefined ? [] : [{ pistons, found }];
  });
  const [first, ...others] = sets;
  if (first === undefined) return undefined;
  const best = others.reduce((least, each) => (each.found.cost < least.found.cost ? each : least), first);
  return setOf(bores, best.pistons, best.found);
}

/** Those that have none where stock serves as many as it can, whatever pistons weigh. */
export function boresLeft<P extends Piston, B extends Bore<P>>(
  bores: readonly B[],
  stock: readonly P[],
): readonly B[] {
  const options = bores.map((bore) =>
    stock.flatMap((piston, item): readonly Option[] => {
      const cost = costIn(bore, piston);
      return cost === undefined ? [] : [{ cost, takes: [[item, 1]] }];
    }),
  );
  const served = allocate(
    options,
    stock.map(() => 1),
  );
  return bores.filter((_, index) => served.options[index] === undefined);
}

const setsBeside = <P extends Piston>(
  inPlace: readonly P[],
  stock: readonly P[],
  spread: Fraction | undefined,
): readonly (readonly P[])[] =>
  setsByWeight([...stock, ...inPlace], spread)
    .filter((set) => inPlace.every((each) => set.includes(each)))
    .map((set) => set.filter((each) => !inPlace.includes(each)));

function costIn<P extends Piston>(bore: Bore<P>, piston: P): number | undefined {
  const { name, size, wanted, takes, ...spread } = bore;
  const isItsOwn = piston.ranIn === undefined || piston.ranIn === name;
  return isItsOwn && takes?.(piston) !== false
    ? costOf(subtract(size, piston.diameter), spread, wanted)
    : undefined;
}

/** Each lightest piston with all that it may share an engine with; a piston that nobody weighed shares with none. */
export function setsByWeight<P extends Piston>(
  stock: readonly P[],
  spread: Fraction | undefined,
): readonly (readonly P[])[] {
  if (spread === undefined) return [stock];
  const weighed = stock.flatMap((piston) =>
    piston.weight === undefined ? [] : [{ piston, weight: piston.weight }],
  );
  return weighed.map((lightest) =>
    weighed
      .filter(({ weight }) => compare(weight, lightest.weight) >= 0)
      .filter(({ weight }) => compare(subtract(weight, lightest.weight), spread) <= 0)
      .map(({ piston }) => piston),
  );
}

function setOf<P extends Piston>(
  bores: readonly Bore<P>[],
  stock: readonly P[],
  { columns }: Assignment,
): PistonSet<P> {
  const pistons = columns.flatMap((column) => stock[column] ?? []);
  return {
    pistons,
    clearances: bores.flatMap(({ size }, index) => {
      const piston = pistons[index];
      return piston === undefined ? [] : [subtract(size, piston.diameter)];
    }),
  };
}
