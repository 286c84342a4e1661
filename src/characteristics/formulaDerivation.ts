import type { OwnCharacteristic } from '../documents/engine/ownCharacteristic.ts';
import type { Measures } from '../documents/measure.ts';
import { evaluateFormula, type FormulaValues, type PartResults } from '../formula/evaluate.ts';
import { namesIn, referencesIn, type UsedReference } from '../formula/names.ts';
import { type FormulaProblem, formulaProblem, isFormulaProblem } from '../formula/problem.ts';
import { slopesOf } from '../formula/slopes.ts';
import type { ParsedFormula } from '../formula/tree.ts';
import type { Layout } from '../layout/layout.ts';
import type { Position } from '../layout/position.ts';
import { reach } from '../layout/reach.ts';
import { combineValues, meanValue, type Value } from '../measurement/value.ts';
import { type Fraction, fraction, multiply, toNumber } from '../quantity/fraction.ts';
import { fromBase, type Quantity, toBase, type Unit, unitsOf } from '../quantity/units.ts';
import type { Derivation, InputPlace } from './characteristic.ts';
import { type Grid, type Measured, valuesOf } from './grid.ts';

/** What a formula's result is, and the units in which its amounts enter and leave. */
type Result = Pick<OwnCharacteristic, 'quantity' | 'units'>;

/** What its names are measured as. */
type Known = Pick<Measures, 'find'>;

/** A figure that is worked out by a formula: a shop's own, or one of ours. */
export function formulaDerivation(own: Result, formula: ParsedFormula, measures: Known): Derivation {
  const inputs = namesIn(formula).filter((name) => measures.find(name) !== undefined);
  const references = referencesIn(formula).filter(({ name }) => inputs.includes(name));
  const worker = new FormulaWorker(own, formula, inputs, measures);
  return {
    route: formula.text,
    inputs,
    places: (layout, position) => placesOf(references, measures, layout, position),
    compute: (grids, choice, places = []) => worker.measured(grids, places, choice.sizes),
    problem: (grids, choice, places = []) => worker.problem(grids, places, choice.sizes),
  };
}

/** Where each reference lies; undefined where one of them lies nowhere, as at the end of a row the next does. */
function placesOf(
  references: readonly UsedReference[],
  measures: Known,
  layout: Layout,
  position: Position,
): readonly InputPlace[] | undefined {
  const places: InputPlace[] = [];
  for (const { name, at, text } of references) {
    const measure = measures.find(name);
    const reached = measure && reach(layout, position, measure.family, at);
    if (reached?.kind !== 'positions' || reached.positions.length === 0) return undefined;
    places.push(...reached.positions.map((each) => ({ id: name, position: each, reference: text })));
  }
  return places;
}

/** Works a formula out with what was read, in the units of the document that states it. */
class FormulaWorker {
  readonly #own: Result;
  readonly #formula: ParsedFormula;
  readonly #inputs: readonly string[];
  readonly #measures: Known;

  constructor(own: Result, formula: ParsedFormula, inputs: readonly string[], measures: Known) {
    this.#own = own;
    this.#formula = formula;
    this.#inputs = inputs;
    this.#measures = measures;
  }

  /** The formula over the means, and its error by its slope in each of them (JCGM 100:2008, 5.1.2). */
  measured(grids: readonly Grid[], places: readonly InputPlace[], sizes: Sizes): Measured | undefined {
    const means = grids.map((grid) => meanValue(valuesOf(grid)));
    const result = this.#result(means, places, sizes);
    if (isFormulaProblem(result)) return undefined;
    const value = combineValues(
      result.amount,
      means.map((mean, index) => [mean, result.slopes[index] ?? 0]),
    );
    const lastDigit = this.#lastDigit(value.amount);
    return { least: value, mean: value, greatest: value, ...(lastDigit === undefined ? {} : { lastDigit }) };
  }

  /** Of a figure of another quantity than its readings, and of nominal sizes alone, the digits say nothing of it. */
  #lastDigit(amount: Fraction): Fraction | undefined {
    const { quantity } = this.#own;
    const read = this.#inputs.map((name) => this.#measures.find(name)?.quantity);
    if (read.length > 0 && read.every((each) => each === quantity)) return undefined;
    const unit = this.#unitOf(quantity);
    if (quantity === 'percent') return multiply(unit.factor, A_TENTH);
    const size = Math.abs(toNumber(amount) / toNumber(unit.factor));
    const digits = quantity === 'length' || quantity === 'mass' ? 5 : 4;
    const step = Math.min(0, (size === 0 ? 0 : Math.floor(Math.log10(size))) + 1 - digits);
    return multiply(unit.factor, fraction(1n, 10n ** BigInt(-step)));
  }

  problem(grids: readonly Grid[], places: readonly InputPlace[], sizes: Sizes): FormulaProblem | undefined {
    const means = grids.map((grid) => meanValue(valuesOf(grid)));
    const result = this.#result(means, places, sizes);
    return isFormulaProblem(result) ? result : undefined;
  }

  #result(
    means: readonly Value[],
    places: readonly InputPlace[],
    sizes: Sizes,
  ): FormulaProblem | { readonly amount: Fraction; readonly slopes: readonly number[] } {
    const values = this.#values(means, places, sizes);
    const parts: PartResults = new Map();
    const result = evaluateFormula(this.#formula, values, parts);
    if (isFormulaProblem(result)) return result;
    const unit = this.#unitOf(this.#own.quantity);
    const byReference = slopesOf(this.#formula, values, parts);
    const seen = new Map<string, number>();
    const slopes = places.map(({ id, reference = id }) => {
      const at = seen.get(reference) ?? 0;
      seen.set(reference, at + 1);
      const slope = byReference.get(reference)?.[at] ?? 0;
      return (slope * toNumber(unit.factor)) / toNumber(this.#unitOfMeasure(id).factor);
    });
    return slopes.every(Number.isFinite) ? { amount: toBase(result, unit), slopes } : noSlope(this.#formula);
  }

  /** By the text of each reference, in the document's units; nominal sizes beside them. */
  #values(means: readonly Value[], places: readonly InputPlace[], sizes: Sizes): FormulaValues {
    const values = new Map<string, Fraction | Fraction[]>();
    for (const [name, size] of sizes ?? []) values.set(name, fromBase(size, this.#unitOf('length')));
    const read = new Map<string, Fraction[]>();
    for (const [index, { id, reference = id }] of places.entries()) {
      const mean = means[index];
      if (mean === undefined) continue;
      const value = fromBase(mean.amount, this.#unitOfMeasure(id));
      read.set(reference, [...(read.get(reference) ?? []), value]);
    }
    return new Map([...values, ...read]);
  }

  #unitOfMeasure(id: string): Unit {
    return this.#unitOf(this.#measures.find(id)?.quantity ?? 'length');
  }

  /** A formula whose units nothing states is refused when its document is read. */
  #unitOf(quantity: Quantity): Unit {
    const unit = this.#own.units.get(quantity) ?? unitsOf(quantity)[0];
    if (unit === undefined) throw new RangeError(`${quantity} has no unit`);
    return unit;
  }
}

/** Nobody weighs a share more finely. */
const A_TENTH = fraction(1, 10);

type Sizes = ReadonlyMap<string, Fraction> | undefined;

const noSlope = ({ root }: ParsedFormula): FormulaProblem =>
  formulaProblem(root, 'its error cannot be worked out, since it takes the root of zero');
