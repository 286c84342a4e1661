import type { Registry } from '../../characteristics/registry.ts';
import { isAt } from '../../checks/history/dependsOn.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { PartAt } from '../../layout/readPart.ts';

/** What was seen in a run and nobody has dealt with since: the part was not worked on, replaced or found good again. */
export const openFound = (
  run: readonly SessionDocument[],
  engine: Engine,
  registry: Registry,
): readonly Observation[] =>
  run.flatMap(({ observations }, index) =>
    observations.filter(
      (each) => !run.slice(index + 1).some((later) => settles(later, each, engine, registry)),
    ),
  );

function settles(later: SessionDocument, seen: Observation, engine: Engine, registry: Registry): boolean {
  const { layout } = engine.document;
  const names = seen.on.map(plain);
  const places = seen.parts.flatMap(({ part, positions }) =>
    (positions.length > 0 ? positions : layout.positionsOf(part.family)).map((position) => ({
      part,
      position,
    })),
  );
  const isSame = (called: readonly string[], parts: readonly PartAt[]): boolean =>
    called.some((each) => names.includes(plain(each))) ||
    places.some(({ part, position }) =>
      parts.some((each) => isAt(part.id, position, each, registry, layout)),
    );
  return (
    later.partChanges.some(({ name, parts }) => isSame([name], parts)) ||
    later.work.some(({ on, parts }) => isSame([on.name], parts)) ||
    later.observations.some(({ on, parts, remedy }) => remedy === 'reuse' && isSame(on, parts))
  );
}

const plain = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, ' ');
