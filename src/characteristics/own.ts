import type { UnitsInForce } from '../documents/amount.ts';
import type { OwnCharacteristic } from '../documents/engine/shop.ts';
import type { Measures } from '../documents/measure.ts';
import { evaluateFormula } from '../formula/evaluate.ts';
import { namesIn } from '../formula/names.ts';
import { type FormulaProblem, isFormulaProblem } from '../formula/problem.ts';
import type { ParsedFormula } from '../formula/tree.ts';
import type { InstrumentType } from '../measurement/instrument.ts';
import { addValues, exactly, meanValue, scaleValue, type Value } from '../measurement/value.ts';
import { divide, type Fraction, fraction, subtract } from '../quantity/fraction.ts';
import { fromBase, type Quantity, toBase, type Unit, unitsOf } from '../quantity/units.ts';
import type { Characteristic, Derivation, DerivationChoice } from './characteristic.ts';
import { type Grid, type Measured, valuesOf } from './grid.ts';

const USUAL: Partial<Record<Quantity, InstrumentType>> = {
  length: 'caliper',
  torque: 'torque wrench',
  pressure: 'pressure gauge',
};

/** A shop's own characteristic, with the formula as its one derivation where it has one. */
export const ownCharacteristic = (
  own: OwnCharacteristic,
  ours: Measures,
  [of, ...dependsOn]: readonly string[],
): Characteristic => ({
  id: own.id,
  label: own.label,
  description: `${own.label}, added by the shop.`,
  quantity: own.quantity,
  family: own.family,
  of,
  dependsOn,
  usual: USUAL[own.quantity] ?? 'other',
  formula: own.formula?.text ?? 'read directly',
  derivations: own.formula === undefined ? [] : [derivationOf(own, own.formula, ours)],
  words: { above: 'over', below: 'under' },
  source: 'added by the shop',
  examples: [],
});

function derivationOf(own: OwnCharacteristic, formula: ParsedFormula, ours: Measures): Derivation {
  const inputs = namesIn(formula).filter((name) => ours.find(name) !== undefined);
  const units = [...inputs.map((name) => ours.find(name)?.quantity ?? 'length'), own.quantity].map(
    (quantity) => unitIn(own.units, quantity),
  );
  return {
    route: formula.text,
    inputs,
    compute: (grids, choice) => byFormula(formula, inputs, units, grids, choice),
    problem: (grids, choice) => {
      const result = resultOf(formula, inputs, units, choice, meansOf(grids));
      return result !== undefined && isFormulaProblem(result) ? result : undefined;
    },
  };
}

const unitIn = (units: UnitsInForce, quantity: Quantity): Unit | undefined =>
  units.get(quantity) ?? (unitsOf(quantity).length === 1 ? unitsOf(quantity)[0] : undefined);

const meansOf = (grids: readonly Grid[]): readonly Value[] => grids.map((grid) => meanValue(valuesOf(grid)));

/** The formula over amounts, in the unit that it leaves in; undefined where a number has no unit. */
function resultOf(
  formula: ParsedFormula,
  names: readonly string[],
  units: readonly (Unit | undefined)[],
  choice: DerivationChoice,
  inputs: readonly { readonly amount: Fraction }[],
): Fraction | FormulaProblem | undefined {
  const values = new Map<string, Fraction>();
  const lengthUnit = units.find((unit) => unit?.quantity === 'length') ?? units.at(-1);
  if (lengthUnit !== undefined) {
    for (const [name, size] of choice.sizes ?? []) values.set(name, fromBase(size, lengthUnit));
  }
  for (const [index, name] of names.entries()) {
    const [input, unit] = [inputs[index], units[index]];
    if (input === undefined || unit === undefined) return undefined;
    values.set(name, fromBase(input.amount, unit));
  }
  return evaluateFormula(formula, values);
}

/** The formula over the means, and its error by the slope in each of them (JCGM 100:2008, 5.1.3). */
function byFormula(
  formula: ParsedFormula,
  names: readonly string[],
  units: readonly (Unit | undefined)[],
  grids: readonly Grid[],
  choice: DerivationChoice,
): Measured | undefined {
  const out = units.at(-1);
  const means = meansOf(grids);
  const at = (amounts: readonly Fraction[]): Fraction | undefined => {
    const result = resultOf(
      formula,
      names,
      units,
      choice,
      amounts.map((amount) => ({ amount })),
    );
    return result === undefined || isFormulaProblem(result) || out === undefined
      ? undefined
      : toBase(result, out);
  };
  const amount = at(means.map((mean) => mean.amount));
  if (amount === undefined) return undefined;
  const value = means.reduce<Value>((sum, mean, index) => {
    const slope = slopeIn(index, means, at);
    return slope === undefined ? sum : addValues(sum, withoutAmount(scaleValue(mean, slope)));
  }, exactly(amount));
  return { least: value, mean: value, greatest: value };
}

const withoutAmount = ({ terms }: Value): Value => ({ amount: fraction(0), terms });

/** How fast the result moves with one input: the difference over a small step to both sides. */
function slopeIn(
  index: number,
  means: readonly Value[],
  at: (amounts: readonly Fraction[]) => Fraction | undefined,
): Fraction | undefined {
  const step = fraction(1, 1000);
  const moved = (by: Fraction): Fraction | undefined =>
    at(means.map((mean, i) => (i === index ? subtract(mean.amount, by) : mean.amount)));
  const [up, down] = [moved(fraction(-step.n, step.d)), moved(step)];
  return up === undefined || down === undefined
    ? undefined
    : divide(subtract(up, down), fraction(2n * step.n, step.d));
}
