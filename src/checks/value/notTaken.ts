import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Place } from '../../diagnostic/place.ts';
import type { PositionReading } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { relate } from '../../layout/relate.ts';

/** A reading that was not taken, and who reads its documents knows so: its `~` is there. */
export interface NotTaken {
  /** The id of the characteristic that was not read: the value may only be worked out from it. */
  readonly of: string;
  /** Why, in the words of its notes; empty where nobody says: then it may have been forgotten. */
  readonly reason: string;
  readonly session: SessionDocument;
  readonly place: Place;
}

/** The `~` of the first of these sessions that has one there, or at each place that it is worked out from. */
export function notTaken(
  characteristic: Characteristic,
  position: Position,
  sessions: readonly SessionDocument[],
  layout: Layout,
): NotTaken | undefined {
  for (const session of sessions) {
    const unread = firstOfEach(
      unreadIn(session, characteristic).filter((each) => isBehind(each.position, position, layout)),
    );
    const [first] = unread;
    if (first === undefined) continue;
    const isKnown =
      unread.every(({ notes }) => notes.length > 0) && isAllSpokenOf(first, position, sessions, layout);
    const reason = isKnown ? [...new Set(unread.flatMap(({ notes }) => notes))].join('; ') : '';
    return { of: first.of, reason, session, place: session.placeOf(first.span) };
  }
  return undefined;
}

interface Unread extends PositionReading {
  /** The id of what was not read. */
  readonly of: string;
}

/** A share of pressures is of the whole engine, and they are of its cylinders. */
const isBehind = (read: Position, position: Position, layout: Layout): boolean =>
  read === position || relate(layout, position, read.family)?.includes(read) === true;

const firstOfEach = (unread: readonly Unread[]): readonly Unread[] =>
  unread.filter((each, index) => unread.findIndex((other) => other.position === each.position) === index);

/** A place that nobody wrote down may have been forgotten. */
function isAllSpokenOf(
  { of, position: { family } }: Unread,
  position: Position,
  sessions: readonly SessionDocument[],
  layout: Layout,
): boolean {
  if (family === position.family) return true;
  const spoken = sessions.flatMap(({ blocks }) =>
    blocks.flatMap(({ measure, positions }) => (measure.id === of ? positions : [])),
  );
  return (relate(layout, position, family) ?? []).every((each) =>
    spoken.some((one) => one.position === each),
  );
}

/** Whether a reason is given for any of it. */
export const isLeftOutIn = (session: SessionDocument, characteristic: Characteristic): boolean =>
  unreadIn(session, characteristic).some(({ notes }) => notes.length > 0);

const unreadIn = ({ blocks }: SessionDocument, characteristic: Characteristic): readonly Unread[] =>
  blocks
    .filter(({ measure }) => isReadFor(measure.id, characteristic))
    .flatMap(({ measure, positions }) =>
      positions.filter(isUnread).map((each) => ({ ...each, of: measure.id })),
    );

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
