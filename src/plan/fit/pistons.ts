import { compare, type Fraction, subtract } from '../../quantity/fraction.ts';
import { type Assignment, assign } from './assign.ts';
import { type ClearanceWanted, costOf } from './shells.ts';

/** A piston in stock: its size at gauge height in the base unit, and its weight where it was weighed. */
export interface StockPiston {
  readonly mark: string;
  readonly diameter: Fraction;
  readonly weight: Fraction | undefined;
}

export interface PistonSet {
  /** The piston of each bore, in the order of the bores. */
  readonly pistons: readonly StockPiston[];
  readonly clearances: readonly Fraction[];
}

/**
 * A piston for every bore, the clearances as near to the middle as stock allows taken together, no two pistons of the set
 * farther apart in weight than `weightSpread`; undefined where stock does not do.
 */
export function fitPistons(
  bores: readonly Fraction[],
  stock: readonly StockPiston[],
  wanted: ClearanceWanted,
  weightSpread: Fraction | undefined,
): PistonSet | undefined {
  const sets = setsByWeight(stock, weightSpread).flatMap((pistons) => {
    const found = assign(
      bores.map((bore) => pistons.map(({ diameter }) => costOf(subtract(bore, diameter), wanted))),
    );
    return found === undefined ? [] : [{ pistons, found }];
  });
  const [first, ...others] = sets;
  if (first === undefined) return undefined;
  const best = others.reduce((least, each) => (each.found.cost < least.found.cost ? each : least), first);
  return setOf(bores, best.pistons, best.found);
}

/** Each lightest piston with all that it may share an engine with; a piston that nobody weighed shares with none. */
function setsByWeight(
  stock: readonly StockPiston[],
  spread: Fraction | undefined,
): readonly (readonly StockPiston[])[] {
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

function setOf(
  bores: readonly Fraction[],
  stock: readonly StockPiston[],
  { columns }: Assignment,
): PistonSet {
  const pistons = columns.flatMap((column) => stock[column] ?? []);
  return {
    pistons,
    clearances: bores.flatMap((bore, index) => {
      const piston = pistons[index];
      return piston === undefined ? [] : [subtract(bore, piston.diameter)];
    }),
  };
}
