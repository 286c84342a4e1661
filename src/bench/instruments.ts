import type { Characteristic } from '../characteristics/characteristic.ts';
import type { Engine } from '../documents/assemble.ts';
import type { RegisteredInstrument } from '../documents/engine/instruments.ts';
import { limitsInForce } from '../documents/limits/precedence.ts';
import { WHOLE_ENGINE } from '../layout/position.ts';
import { compare, type Fraction } from '../quantity/fraction.ts';

/** What it was measured with last time, else the first registered instrument of the usual type whose range fits. */
export function usualInstrument(of: Characteristic, engine: Engine): string | undefined {
  const before = engine.sessions
    .flatMap((session) => session.blocks)
    .findLast((block) => block.measure.id === of.id && block.instrument !== undefined);
  if (before?.instrument !== undefined && engine.instruments.has(before.instrument.name)) {
    return before.instrument.name;
  }
  const size = nominalSize(of.id, engine) ?? limitedSize(of, engine);
  return [...engine.instruments.values()].find((each) => each.type === of.usual && reaches(each, size))?.id;
}

/** About how large it is, by any limit on it. */
function limitedSize(of: Characteristic, engine: Engine): Fraction | undefined {
  const [position = WHOLE_ENGINE] = engine.document.layout.positionsOf(of.family);
  const { bands } = limitsInForce(engine.limits, engine.document.layout, of, position);
  const sides = Object.values(bands).flatMap(({ min, max }) => [min, max]);
  return sides.flatMap((side) => (side?.kind === 'amount' ? [side.amount] : []))[0];
}

/** The nominal size of what is measured, in the base unit. */
export const nominalSize = (measure: string, { sizes }: Engine): Fraction | undefined =>
  sizes.get(measure) ?? sizes.get(sharedName(measure));

/** The same as it is written. */
export const nominalText = (measure: string, { document: { sizes } }: Engine): string | undefined =>
  (sizes.get(measure) ?? sizes.get(sharedName(measure)))?.written;

/** Cylinders and pistons are made to one size, which an engine states as `bore`. */
const sharedName = (measure: string): string =>
  measure === 'cylinder_bore' || measure === 'piston_diameter' ? 'bore' : measure;

const reaches = ({ range }: RegisteredInstrument, size: Fraction | undefined): boolean =>
  range === undefined ||
  size === undefined ||
  (compare(range.from, size) <= 0 && compare(size, range.to) <= 0);
