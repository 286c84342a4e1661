import type { OwnCharacteristic } from '../documents/engine/ownCharacteristic.ts';
import type { Measures } from '../documents/measure.ts';
import type { InstrumentType } from '../measurement/instrument.ts';
import type { Quantity } from '../quantity/units.ts';
import type { Characteristic } from './characteristic.ts';
import { formulaDerivation } from './formulaDerivation.ts';

/** What is assumed where the shop does not say what it measures with. */
const USUAL: Partial<Record<Quantity, InstrumentType>> = {
  length: 'caliper',
  torque: 'torque wrench',
  force: 'spring scale',
  pressure: 'pressure gauge',
  mass: 'balance',
  angle: 'protractor',
  temperature: 'thermometer',
};

/** A shop's own characteristic, with the formula as its one derivation where it has one. */
export function ownCharacteristic(
  own: OwnCharacteristic,
  measures: Pick<Measures, 'find'>,
  [of, ...dependsOn]: readonly string[],
): Characteristic {
  const { id, label, quantity, family, formula, outcomes, words, after, cycle } = own;
  return {
    id,
    label,
    description: `${label}, added by the shop.`,
    quantity,
    family,
    of,
    dependsOn,
    usual: own.instrument ?? USUAL[quantity] ?? 'other',
    formula: formula?.text ?? 'read directly',
    derivations: formula === undefined ? [] : [formulaDerivation(own, formula, measures)],
    words: { above: words.above ?? 'over', below: words.below ?? 'under' },
    source: 'added by the shop',
    examples: [],
    ...(outcomes === undefined ? {} : { outcomes }),
    ...(after === undefined ? {} : { after }),
    ...(cycle === undefined ? {} : { cycle }),
  };
}
