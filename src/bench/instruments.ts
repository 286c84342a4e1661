import type { Characteristic } from '../characteristics/characteristic.ts';
import { fittedSize, limitsOfFitted } from '../checks/grades/madeSize.ts';
import type { Amount } from '../documents/amount.ts';
import type { Engine } from '../documents/assemble.ts';
import type { RegisteredInstrument } from '../documents/engine/instruments.ts';
import { movedAmount } from '../documents/grades/movedAmount.ts';
import { type Position, WHOLE_ENGINE } from '../layout/position.ts';
import { compare, type Fraction } from '../quantity/fraction.ts';

/** What it was measured with last time, else the first registered instrument of the usual type whose range fits. */
export function usualInstrument(of: Characteristic, engine: Engine): string | undefined {
  const before = engine.sessions
    .flatMap((session) => session.blocks)
    .findLast((block) => block.measure.id === of.id && block.instrument !== undefined);
  if (before?.instrument !== undefined && engine.instruments.has(before.instrument.name)) {
    return before.instrument.name;
  }
  const [position = WHOLE_ENGINE] = engine.document.layout.positionsOf(of.family);
  const size = nominalSize(of, position, engine)?.amount ?? limitedSize(of, position, engine);
  return [...engine.instruments.values()].find((each) => each.type === of.usual && reaches(each, size))?.id;
}

/** About how large it is, by any limit on it. */
function limitedSize(of: Characteristic, position: Position, engine: Engine): Fraction | undefined {
  const { bands } = limitsOfFitted(engine, undefined, of, position);
  const sides = Object.values(bands).flatMap(({ min, max }) => [min, max]);
  return sides.flatMap((side) => (side?.kind === 'amount' ? [side.amount] : []))[0];
}

/** The nominal size of what is measured, as large as the part that is fitted was made. */
export function nominalSize(of: Characteristic, position: Position, engine: Engine): Amount | undefined {
  const { sizes } = engine.document;
  const standard = sizes.get(of.id) ?? sizes.get(of.nominal ?? of.id);
  return standard && movedAmount(standard, fittedSize(engine, undefined, of, position).by);
}

const reaches = ({ range }: RegisteredInstrument, size: Fraction | undefined): boolean =>
  range === undefined ||
  size === undefined ||
  (compare(range.from, size) <= 0 && compare(size, range.to) <= 0);
