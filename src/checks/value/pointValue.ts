import type { Point, ReadingBlock } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import { type Repeats, readingTerms } from '../../measurement/readingTerms.ts';
import { standardDeviation } from '../../measurement/sample.ts';
import { takenToTemperature, type Warmth } from '../../measurement/temperature.ts';
import { lateValue, type Value } from '../../measurement/value.ts';
import { type Fraction, subtract, toNumber } from '../../quantity/fraction.ts';
import type { BlockError } from './blockError.ts';

/** Where a point was read, and with what. */
export interface PointSource {
  readonly block: ReadingBlock;
  readonly position: Position;
  readonly session: SessionDocument;
  readonly instrument: Instrument;
  readonly setter: Instrument | undefined;
  readonly warmth: Warmth | undefined;
  /** What its instruments are known to show beyond the truth. */
  readonly error: BlockError | undefined;
}

/** What was read at a point, with all sources of error that are stated of it. */
export function pointValue(point: Point, source: PointSource): Value {
  const { warmth } = source;
  const read = lateValue(trueAmount(point, source), () => termsOf(point, source), point.range);
  if (warmth === undefined) return read;
  const moved = takenToTemperature(read, warmth);
  return lateValue(moved.amount, () => moved.terms, point.range);
}

const trueAmount = ({ amount }: Point, { error }: PointSource): Fraction =>
  error === undefined ? amount : subtract(amount, error(amount));

const termsOf = (
  point: Point,
  { block, position, session, instrument, setter }: PointSource,
): Value['terms'] =>
  readingTerms(
    instrument,
    {
      amount: point.amount,
      id: `${session.path}#${point.pointer}`,
      block: `${session.path}#/readings/${block.index}`,
      zeroedAt:
        block.setTo === 'journal' ? `${session.path}#/readings/${block.index} ${position.key}` : undefined,
      setAt: typeof block.setTo === 'object' ? block.setTo : undefined,
      on: block.date ?? session.date,
      range: point.range,
      repeats: repeatsOf(point),
    },
    setter,
  );

const repeatsOf = ({ repeats = [] }: Point): Repeats | undefined =>
  repeats.length < 2
    ? undefined
    : { count: repeats.length, deviation: standardDeviation(repeats.map(toNumber)) };
