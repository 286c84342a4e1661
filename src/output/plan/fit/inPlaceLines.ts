import { tableName } from '../../../layout/naming.ts';
import type { InPlace } from '../../../plan/fit/inPlace.ts';

/** `1, 3: fitted in trial 2026-03-05, and inside: not chosen again`; a line a session. */
export const inPlaceLines = (places: readonly InPlace[]): readonly string[] =>
  [...new Set(places.map(({ fittedIn }) => fittedIn))].map((session) => {
    const names = places
      .filter(({ fittedIn }) => fittedIn === session)
      .map(({ position }) => tableName(position))
      .join(', ');
    const where = names === '' ? '' : `${names}: `;
    return `${where}fitted in ${session.stage} ${session.date}, and inside: not chosen again`;
  });
