import type { Registry } from '../../characteristics/registry.ts';
import type { Concession } from '../../documents/session/concessions.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { ConcessionInForce } from '../judge/concessionInForce.ts';
import type { Holds } from '../value/routes.ts';

/**
 * What was conceded in a run of the engine, up to its last session, covers every later value there, until its date or
 * until the part is renewed: the latest first.
 */
export function concessionsOfRun(
  run: readonly SessionDocument[],
  last: SessionDocument,
  registry: Registry,
  isSamePart: Holds,
): readonly ConcessionInForce[] {
  return run.toReversed().flatMap((from) =>
    from.concessions.flatMap((concession) => {
      const positions = lastingPositions(concession, from, registry, isSamePart);
      if (positions.length === 0) return [];
      const isOver = concession.until !== undefined && concession.until < last.date;
      return [{ concession: { ...concession, positions }, isOwn: from === last, isOver, from }];
    }),
  );
}

function lastingPositions(
  { measure, positions }: Concession,
  from: SessionDocument,
  registry: Registry,
  isSamePart: Holds,
): Concession['positions'] {
  const characteristic = registry.find(measure.id);
  if (characteristic === undefined) return [];
  return positions.filter((position) => isSamePart(characteristic, position, from));
}
