import type { Observation } from '../../../documents/session/observations.ts';
import type { Position } from '../../../layout/position.ts';
import { positionsMeant } from '../../../layout/readPart.ts';
import { relateOne } from '../../../layout/relate.ts';
import type { Job } from '../job.ts';
import { byName } from '../seen.ts';

type Known = Parameters<typeof byName>[1];

/** What of a job is done at some of the places of its part. */
export function atPlaces(job: Job, isMeant: (place: Position) => boolean, engine: Known): Job {
  const { layout } = engine.document;
  const { part, rows, found, cut } = job;
  const isHere = (position: Position): boolean =>
    isMeant((part && relateOne(layout, position, part.family)) ?? position);
  const seenHere = (seen: Observation): readonly Observation[] => {
    const parts = seen.parts.flatMap((each) => {
      const meant = positionsMeant(each, layout);
      const positions = meant.filter(isHere);
      if (positions.length === 0) return [];
      return positions.length === meant.length ? [each] : [{ ...each, positions }];
    });
    return parts.length === 0 ? [] : [{ ...seen, parts }];
  };
  return {
    ...job,
    rows: rows.filter(({ position }) => isHere(position)),
    found: found.flatMap((whole) => byName(whole, engine)).flatMap(seenHere),
    cut: cut && {
      ...cut,
      groups: cut.groups.flatMap((group) => {
        const places = group.places.filter(({ position }) => isHere(position));
        return places.length === 0 ? [] : [{ ...group, places }];
      }),
    },
  };
}
