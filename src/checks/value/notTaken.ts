import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Place } from '../../diagnostic/place.ts';
import type { PositionReading } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';

/** A reading that was not taken, and who reads its documents knows so: its `~` is there. */
export interface NotTaken {
  /** Why, in the words of its notes; empty where nobody says: then it may have been forgotten. */
  readonly reason: string;
  readonly session: SessionDocument;
  readonly place: Place;
}

/** The `~` of the first of these sessions that has one there. */
export function notTaken(
  characteristic: Characteristic,
  position: Position,
  sessions: readonly SessionDocument[],
): NotTaken | undefined {
  for (const session of sessions) {
    const reading = unreadIn(session, characteristic).find((each) => each.position === position);
    if (reading !== undefined) {
      const reason = [...new Set(reading.notes)].join('; ');
      return { reason, session, place: session.placeOf(reading.span) };
    }
  }
  return undefined;
}

/** Whether a reason is given for any of it. */
export const isLeftOutIn = (session: SessionDocument, characteristic: Characteristic): boolean =>
  unreadIn(session, characteristic).some(({ notes }) => notes.length > 0);

const unreadIn = ({ blocks }: SessionDocument, characteristic: Characteristic): readonly PositionReading[] =>
  blocks
    .filter(({ measure }) => isReadFor(measure.id, characteristic))
    .flatMap(({ positions }) => positions.filter(isUnread));

/** A taper is worked out from diameters alone: it is left out where they are. */
const isReadFor = (read: string, { id, onlyWithLimits, derivations }: Characteristic): boolean =>
  read === id || (onlyWithLimits === true && derivations.some(({ inputs }) => inputs.includes(read)));

const isUnread = ({ rows }: PositionReading): boolean => rows.flat().every((point) => point === undefined);

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
