import type { Place } from '../../diagnostic/place.ts';
import { pointsOf, type WorkDone } from '../../documents/session/reading.ts';
import type { Position } from '../../layout/position.ts';
import type { SessionView } from '../judge/row.ts';
import { workAfter } from './work.ts';

/** A reading from before work on its part: kept, and not judged. */
export interface SteppedBack {
  readonly measure: string;
  /** The characteristic's label. */
  readonly label: string;
  readonly position: Position;
  readonly written: readonly string[];
  /** The first work that came after it. */
  readonly work: WorkDone;
  readonly place: Place;
}

export function steppedBackIn({ engine, registry, session }: SessionView): readonly SteppedBack[] {
  if (session.work.length === 0) return [];
  const { layout } = engine.document;
  return session.blocks.flatMap((block) => {
    const characteristic = registry.find(block.measure.id);
    if (characteristic === undefined) return [];
    return block.positions.flatMap((reading) => {
      const { position, span } = reading;
      const work = workAfter(session, block, position, characteristic, registry, layout);
      const written = pointsOf(reading).map((point) => point.written);
      if (work === undefined || written.length === 0) return [];
      const { id, label } = characteristic;
      return [{ measure: id, label, position, written, work, place: session.placeOf(span) }];
    });
  });
}
