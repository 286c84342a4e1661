import type { Engine } from '../../documents/assemble.ts';
import { type PositionReading, pointsOf, type ReadingBlock } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { TighteningLog } from '../../documents/tightening/tightened.ts';
import { compare, type Fraction } from '../../quantity/fraction.ts';

/** Which readings are asked about: of some days, and of sizes in a part of the instrument's range. */
export interface Suspicion {
  readonly instrument: string;
  readonly has: (day: string) => boolean;
  /** In the base unit; both ends count. */
  readonly range?: { readonly from: Fraction; readonly to: Fraction } | undefined;
}

/** Readings of a block that carry the instrument's error, or would but for how the gauge was zeroed. */
export interface Taken {
  readonly session: SessionDocument;
  readonly block: ReadingBlock;
  readonly positions: readonly PositionReading[];
  /** Undefined where the readings are its own. */
  readonly gaugeSetWithIt: string | undefined;
}

/** Every reading that was taken with an instrument, or with a gauge that was set with it. */
export const takenWith = ({ sessions }: Engine, suspicion: Suspicion): readonly Taken[] =>
  sessions.flatMap((session) => session.blocks.flatMap((block) => takenIn(block, session, suspicion) ?? []));

function takenIn(
  block: ReadingBlock,
  session: SessionDocument,
  { instrument, has, range }: Suspicion,
): Taken | undefined {
  const isGauge = block.instrument?.name === instrument;
  if (!isGauge && block.setWith?.name !== instrument) return undefined;
  if (!has(block.date ?? session.date)) return undefined;
  const positions = block.positions.filter((reading) =>
    pointsOf(reading).some(({ amount }) => isWithin(amount, range)),
  );
  if (positions.length === 0) return undefined;
  const gaugeSetWithIt = isGauge ? undefined : (block.instrument?.name ?? 'a gauge without a name');
  return { session, block, positions, gaugeSetWithIt };
}

export const isWithin = (amount: Fraction, range: Suspicion['range']): boolean =>
  range === undefined || (compare(amount, range.from) >= 0 && compare(amount, range.to) <= 0);

/** A joint that was tightened with it. */
export interface TightenedWith {
  readonly session: SessionDocument;
  readonly log: TighteningLog;
}

export const tightenedWith = (
  { sessions }: Engine,
  { instrument, has }: Suspicion,
): readonly TightenedWith[] =>
  sessions.flatMap((session) =>
    session.tightened
      .filter((log) => log.with?.name === instrument && has(log.date ?? session.date))
      .map((log) => ({ session, log })),
  );
