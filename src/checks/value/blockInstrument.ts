import { type Characteristic, isExact } from '../../characteristics/characteristic.ts';
import type { Engine } from '../../documents/assemble.ts';
import { instrumentOn } from '../../documents/engine/instrumentOn.ts';
import { type Point, pointsOf, type ReadingBlock } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { assumedInstrument } from '../../measurement/assumed.ts';
import { anUnnamed, BY_EYE, type Instrument, isBare, isWithoutSteps } from '../../measurement/instrument.ts';
import { type Fraction, least } from '../../quantity/fraction.ts';
import type { Quantity } from '../../quantity/units.ts';

/** Whose register counts, and of which day. */
export interface Used {
  readonly engine: Engine;
  readonly session: Pick<SessionDocument, 'date'>;
}

/** What a block was measured with: as registered, or assumed by type where the register does not know it. */
export function blockInstrument(
  characteristic: Characteristic,
  block: ReadingBlock,
  point: Point,
  { engine, session }: Used,
): Instrument {
  const registered =
    block.instrument &&
    instrumentOn(engine.instruments.get(block.instrument.name), block.date ?? session.date);
  const { usual, quantity } = characteristic;
  const step = (): Fraction => stepOf(point, block);
  const isWithoutError = usual === BY_EYE || isExact(characteristic);
  if (registered !== undefined)
    return isWithoutError ? registered : asRead(registered, quantity, point, step);
  if (isWithoutError) return withoutError(block.instrument?.name ?? usual);
  const assume = (id: string): Instrument => assumedInstrument(id, usual, quantity, point.amount, step());
  // Without a name two blocks may have had two instruments: their errors must not cancel.
  return block.instrument === undefined
    ? { ...assume(anUnnamed(usual)), isNameless: true }
    : assume(block.instrument.name);
}

/** A bare name is as good as any of its type. Nobody writes digits that a scale, or a pack of leaves, does not show. */
function asRead(
  registered: Instrument,
  quantity: Quantity,
  { amount }: Point,
  step: () => Fraction,
): Instrument {
  if (isBare(registered))
    return {
      ...assumedInstrument(registered.id, registered.type, quantity, amount, step()),
      ...registered,
      ...{ assumed: true, isRegistered: true },
    };
  return isWithoutSteps(registered) ? { ...registered, resolution: step() } : registered;
}

const withoutError = (id: string): Instrument => ({ id, type: 'other', assumed: false });

/** A bare 0 says nothing of the scale that it was read from: what stands beside it does. */
function stepOf({ amount, lastDigit }: Point, block: ReadingBlock): Fraction {
  if (amount.n !== 0n) return lastDigit;
  const known = finestSteps.get(block);
  if (known !== undefined) return known;
  const steps = block.positions.flatMap(pointsOf).map((each) => each.lastDigit);
  const finest = least([lastDigit, ...steps]);
  finestSteps.set(block, finest);
  return finest;
}

const finestSteps = new WeakMap<ReadingBlock, Fraction>();

/** What the gauge was set with, and whose error its readings therefore carry. */
export function setterOf(
  block: ReadingBlock,
  point: Point,
  { engine, session }: Used,
): Instrument | undefined {
  if (block.setTo === 'journal') return lockedSetter(block, engine);
  if (block.setWith === undefined) return isSetToUnnamed(block, engine) ? masterOf(block, point) : undefined;
  const { name } = block.setWith;
  return (
    instrumentOn(engine.instruments.get(name), block.date ?? session.date) ??
    assumedInstrument(name, 'micrometer', block.measure.quantity, point.amount, stepOf(point, block))
  );
}

/**
 * A gauge zeroed in a micrometer that is locked at the journal reads the clearance itself: the micrometer's own error has
 * cancelled, and nobody read its scale. What is left is how well it closes on the journal.
 */
function lockedSetter({ setWith }: ReadingBlock, engine: Engine): Instrument | undefined {
  const setter = setWith && engine.instruments.get(setWith.name);
  if (setter?.repeatability === undefined) return undefined;
  const { maxError: _, calibration: __, resolution: ___, ...locked } = setter;
  return locked;
}

/**
 * Whether a gauge was zeroed in something of a stated size that no `set_with` names. What is assumed of a gauge that is
 * not registered holds its setting already.
 */
export const isSetToUnnamed = ({ setTo, setWith, instrument }: ReadingBlock, engine: Engine): boolean =>
  setWith === undefined &&
  setTo !== undefined &&
  setTo !== 'journal' &&
  instrument !== undefined &&
  engine.instruments.has(instrument.name);

const masterOf = (block: ReadingBlock, { amount, lastDigit }: Point): Instrument => ({
  ...assumedInstrument(
    anUnnamed('setting master'),
    'setting master',
    block.measure.quantity,
    amount,
    lastDigit,
  ),
  isNameless: true,
});
