import { parseFormula } from '../formula/parse.ts';
import { isFormulaProblem } from '../formula/problem.ts';
import type { ParsedFormula } from '../formula/tree.ts';
import { type Quantity, type Unit, unitNamed } from '../quantity/units.ts';
import type { Characteristic, Derivation } from './characteristic.ts';
import { formulaDerivation } from './formulaDerivation.ts';
import { type ReadFigure, read } from './readFigure.ts';

/** Our formulas count in these, whatever an engine is measured in: they fit each other. */
const UNITS = new Map(
  (['mm', 'N', 'N/mm', 'kPa', 'g', 'deg'] as const).map((name): readonly [Unit['quantity'], Unit] => {
    const unit = unitNamed(name);
    return [unit.quantity, unit];
  }),
);

interface Formula {
  /** In trade words, as `explain` shows the route. */
  readonly route: string;
  /** In the words of a shop's own formulas. */
  readonly formula: string;
  /** What its names are, as they come in it. */
  readonly from: readonly Characteristic[];
}

/** A figure of ours that is worked out by a formula; it may be read directly as well. */
export const workedOut = ({ route, formula, from, ...about }: Omit<ReadFigure, 'formula'> & Formula) =>
  read({ formula: route, ...about, derivations: [byFormula({ route, formula, from }, about.quantity)] });

/** Read when the first figure is worked out: most calls work out none. */
function byFormula({ route, formula, from }: Formula, quantity: Quantity = 'length'): Derivation {
  const inputs = from.map(({ id }) => id);
  let made: Derivation | undefined;
  const derivation = (): Derivation => {
    made ??= formulaDerivation({ quantity, units: UNITS }, parsed(formula), {
      find: (id) => from.find((each) => each.id === id),
    });
    if (made.inputs.join() !== inputs.join()) throw new RangeError(`${formula}: it takes ${made.inputs}`);
    return made;
  };
  return {
    route,
    inputs,
    places: (layout, position) => derivation().places?.(layout, position),
    compute: (grids, choice, places) => derivation().compute(grids, choice, places),
    problem: (grids, choice, places) => derivation().problem?.(grids, choice, places),
  };
}

function parsed(text: string): ParsedFormula {
  const formula = parseFormula(text);
  if (isFormulaProblem(formula)) throw new RangeError(`${text}: ${formula.message}`);
  return formula;
}

/** How far those of one engine lie apart: shown where a limit asks for it. */
export const spreadOf = (
  of: Characteristic,
  about: Pick<Characteristic, 'family' | 'source' | 'examples'> & Partial<Characteristic>,
): Characteristic =>
  workedOut({
    id: `${of.id}_spread`,
    label: `spread of ${of.label}`,
    description: `Greatest ${of.label} less the least.`,
    of: of.of,
    dependsOn: of.dependsOn,
    usual: of.usual,
    quantity: of.quantity,
    words: { above: 'uneven', below: 'even' },
    onlyWithLimits: true,
    route: `greatest ${of.label} − least`,
    formula: `spread(${of.id}[*])`,
    from: [of],
    ...about,
  });
