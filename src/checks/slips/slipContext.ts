import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { ReadingBlock } from '../../documents/session/reading.ts';
import { expandedFactor } from '../../measurement/conformance.ts';
import type { ReadFrom } from '../../measurement/slips/slips.ts';
import { amountOf, decimalsIn, type WrittenNumber } from '../../measurement/slips/writtenNumber.ts';
import { decimalsFor, formatAmount } from '../../quantity/format.ts';
import { fraction, toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, isCovered } from '../finding.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { type ReadingPoint, readingPointsOfBlock } from '../value/readingPoints.ts';
import { writtenNumbers } from '../value/writtenNumbers.ts';
import type { Expectations } from './plausible.ts';

/** What every look for slips goes by. */
export interface SlipContext {
  readonly view: SessionView;
  readonly expectations: Expectations;
  /** All lengths of the session that are open to doubt, in its order. */
  readonly points: readonly DoubtedPoint[];
  readonly unitFor: (row: Pick<Row, 'characteristic'>) => Unit;
}

/** A length that is still open to doubt; one that was put right, and a range, are not. */
export interface DoubtedPoint extends ReadingPoint {
  readonly characteristic: Characteristic;
}

export const doubtedPoints = ({ session, registry }: SessionView): readonly DoubtedPoint[] =>
  session.blocks.flatMap((block) => {
    const characteristic = registry.find(block.measure.id);
    if (characteristic?.quantity !== 'length') return [];
    return readingPointsOfBlock(
      block,
      ({ settled, range }) => settled === undefined && range === undefined,
    ).map((point) => ({ ...point, characteristic }));
  });

/** Points of which nothing was said yet, by what they have in common. */
export function openPoints<Key>(
  points: readonly DoubtedPoint[],
  said: readonly Finding[],
  keyOf: (point: DoubtedPoint) => Key,
): ReadonlyMap<Key, readonly DoubtedPoint[]> {
  const open = new Map<Key, DoubtedPoint[]>();
  for (const point of points) {
    if (isCovered(point.characteristic.id, point.reading.position, said)) continue;
    const key = keyOf(point);
    const others = open.get(key);
    if (others === undefined) open.set(key, [point]);
    else others.push(point);
  }
  return open;
}

/** Nearer than this many expanded uncertainties a slip cannot be told from wear. */
export const LEAST_SLIP = 5;

/** Of one reading: what its repeats scatter is what a slip among them makes. */
export function expandedOf(
  { block, reading, point, characteristic }: DoubtedPoint,
  context: SlipContext,
): number {
  const routes = context.expectations.rows(characteristic, reading.position).flatMap((row) => row.routes);
  const own = routes.find(({ route }) => route.block === block) ?? routes[0];
  if (own === undefined) return 2 * toNumber(point.lastDigit);
  const terms = [...own.route.measured.least.terms].filter(([source]) => !source.startsWith('spread'));
  return expandedFactor(Number.POSITIVE_INFINITY) * Math.hypot(...terms.map(([, { u }]) => u));
}

export const readFrom = (
  { block, characteristic }: { readonly block: ReadingBlock; readonly characteristic: Characteristic },
  { engine }: SessionView,
): ReadFrom => {
  const instrument = block.instrument && engine.instruments.get(block.instrument.name);
  return {
    instrument: instrument?.type ?? characteristic.usual,
    isDiameter: characteristic.figure === 'size',
    marks: instrument?.marks,
    resolution: instrument?.resolution,
  };
};

/** The decimals that its like were written with, at most. */
export const usualDecimals = ({ block }: { readonly block: ReadingBlock }): number =>
  Math.max(
    0,
    ...block.positions.flatMap(({ rows }) =>
      rows.flatMap((row) =>
        row.flatMap((point) =>
          point === undefined ? [] : writtenNumbers(point).map(({ digits }) => decimalsIn(digits)),
        ),
      ),
    ),
  );

export const amountIn = (number: WrittenNumber): number => toNumber(amountOf(number));

export function lengthText(
  amount: number,
  { characteristic, point }: DoubtedPoint,
  { unitFor }: SlipContext,
): string {
  const unit = unitFor({ characteristic });
  return formatAmount(fraction(Math.round(amount)), unit, decimalsFor(point.lastDigit, unit));
}
