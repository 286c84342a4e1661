import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Place } from '../../diagnostic/place.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';

/** A reading that was not taken, and the notes that stand in its place. */
export function notTaken(
  characteristic: Characteristic,
  position: Position,
  { blocks, placeOf }: SessionDocument,
): { readonly notes: readonly string[]; readonly place: Place } | undefined {
  const reading = blocks
    .filter(({ measure }) => measure.id === characteristic.id)
    .flatMap(({ positions }) => positions)
    .find((each) => each.position === position && each.notes.length > 0);
  return reading && { notes: reading.notes, place: placeOf(reading.span) };
}

/** A shaft that lies in its supports there is not missing a reading of its runout. */
export const supportsOf = (
  { id }: Characteristic,
  sessions: readonly SessionDocument[],
): ReadonlySet<Position> =>
  new Set(
    sessions.flatMap(({ blocks }) =>
      blocks.flatMap(({ measure, supportedOn }) => (measure.id === id ? supportedOn : [])),
    ),
  );
