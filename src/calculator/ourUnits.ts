import type { MathJsInstance } from 'mathjs';
import { toNumber } from '../quantity/fraction.ts';
import { type Quantity, UNITS, type Unit } from '../quantity/units.ts';

/** One of the base unit of a quantity, in words of the calculator. */
const BASES: Readonly<Partial<Record<Quantity, string>>> = {
  length: '1e-10 m',
  torque: '1 N m',
  force: '1 N',
  'spring rate': '1 N/mm',
  pressure: '1 kPa',
  volume: '1 cm^3',
  mass: '1 g',
  angle: '1 deg',
  time: '1 h',
  speed: '6 deg/s',
  roughness: '1 um',
  viscosity: '1 mm^2/s',
  flow: '1 litre/minute',
};

/** Parts of names that are more than one word. */
const PARTS = [
  ['mm2', '1 mm^2'],
  ['cm2', '1 cm^2'],
  ['ozf', '0.0625 lbf'],
] as const;

/** Two names of ours that mean something else to the calculator: `min` is the least of several, `in` a conversion. */
export const inItsWords = (expression: string): string =>
  expression.replace(/\/\s*min\b(?!\s*\()/g, '/minute').replace(/\b(lbf|ozf|kgf) +in\b/g, '$1 inch');

/** Every unit of documents that is one word: where the calculator has none, or a rounded one, it gets ours. */
export function addOurUnits(math: MathJsInstance): void {
  for (const [name, definition] of PARTS) math.createUnit(name, definition);
  for (const each of UNITS) {
    const base = BASES[each.quantity];
    if (base === undefined || !/^[a-zA-Z][a-zA-Z0-9]*$/.test(each.name)) continue;
    if (isAlike(each, base, math)) continue;
    const definition = math.multiply(math.unit(base), toNumber(each.factor));
    math.createUnit(
      each.name,
      { definition: math.format(definition, { precision: 17 }) },
      { override: true },
    );
  }
}

/** Doubles of one factor that was rounded but once. */
const SAME = 1e-14;

function isAlike({ name, factor }: Unit, base: string, math: MathJsInstance): boolean {
  try {
    const ratio = math.divide(math.unit(1, name), math.unit(base));
    return typeof ratio === 'number' && Math.abs(ratio / toNumber(factor) - 1) < SAME;
  } catch {
    return false;
  }
}
