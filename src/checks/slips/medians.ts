import type { Characteristic } from '../../characteristics/characteristic.ts';
import { pointsOf } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import { median } from '../../measurement/sample.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { blocksOf } from '../value/blocksOf.ts';

/** The middle of what a session read of a characteristic at each position. */
export function mediansIn(session: SessionDocument, { id }: Characteristic): ReadonlyMap<Position, number> {
  const amounts = new Map<Position, number[]>();
  for (const { positions } of blocksOf(session).get(id) ?? []) {
    for (const reading of positions) {
      const all = amounts.get(reading.position) ?? [];
      all.push(...pointsOf(reading).map((point) => toNumber(point.amount)));
      amounts.set(reading.position, all);
    }
  }
  return new Map([...amounts].flatMap(([at, all]) => (all.length === 0 ? [] : [[at, median(all)] as const])));
}
