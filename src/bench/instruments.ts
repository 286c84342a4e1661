import type { Characteristic } from '../characteristics/characteristic.ts';
import { fittedSize, limitsOfFitted } from '../checks/grades/madeSize.ts';
import type { Amount } from '../documents/amount.ts';
import type { Engine } from '../documents/assemble.ts';
import type { RegisteredInstrument } from '../documents/engine/instruments.ts';
import { movedAmount } from '../documents/grades/movedAmount.ts';
import { type Position, WHOLE_ENGINE } from '../layout/position.ts';
import { compare, type Fraction } from '../quantity/fraction.ts';

/**
 * What it was measured with last time, else the first registered instrument of the usual type: one whose range holds what the
 * limits of every position allow, else one that does so at the first. None where no range does.
 */
export function usualInstrument(of: Characteristic, engine: Engine): string | undefined {
  const before = engine.sessions
    .flatMap((session) => session.blocks)
    .findLast((block) => block.measure.id === of.id && block.instrument !== undefined);
  const last = engine.instruments.get(before?.instrument?.name ?? '');
  // A gauge that was set to a size shows how far it is from that: nothing is wanted of its range.
  if (last !== undefined && before?.setTo !== undefined) return last.id;
  const positions = engine.document.layout.positionsOf(of.family);
  const [first = [], ...others] = (positions.length === 0 ? [WHOLE_ENGINE] : positions).map((position) =>
    sizesAt(of, position, engine),
  );
  const able = [
    ...(last === undefined ? [] : [last]),
    ...[...engine.instruments.values()].filter(({ type }) => type === of.usual),
  ];
  const all = [first, ...others].flat();
  return (able.find((each) => reaches(each, all)) ?? able.find((each) => reaches(each, first)))?.id;
}

/** Its nominal size, and the limits of new and of worn parts: a last size is no size to be measured. */
function sizesAt(of: Characteristic, position: Position, engine: Engine): readonly Fraction[] {
  const nominal = nominalSize(of, position, engine);
  const { target, new: fresh, wear } = limitsOfFitted(engine, undefined, of, position).bands;
  const sides = [target, fresh, wear].flatMap((band) => [band?.min, band?.max]);
  return [
    ...(nominal === undefined ? [] : [nominal.amount]),
    ...sides.flatMap((side) => (side?.kind === 'amount' ? [side.amount] : [])),
  ];
}

/** The nominal size of what is measured, as large as the part that is fitted was made. */
export function nominalSize(of: Characteristic, position: Position, engine: Engine): Amount | undefined {
  const { sizes } = engine.document;
  const standard = sizes.get(of.id) ?? sizes.get(of.nominal ?? of.id);
  return standard && movedAmount(standard, fittedSize(engine, undefined, of, position).by);
}

function reaches({ range, marks = [] }: RegisteredInstrument, sizes: readonly Fraction[]): boolean {
  const [from, to] = [range?.from ?? marks[0], range?.to ?? marks.at(-1)];
  return sizes.every(
    (size) =>
      (from === undefined || compare(from, size) <= 0) && (to === undefined || compare(size, to) <= 0),
  );
}
