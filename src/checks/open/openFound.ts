import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { isAt } from '../history/dependsOn.ts';

/**
 * What was seen in sessions of an engine and nobody has dealt with since: the part was not worked on, machined, replaced,
 * fitted new, or found fit for use.
 */
export const openFound = (
  sessions: readonly SessionDocument[],
  engine: Engine,
  registry: Registry,
): readonly Observation[] =>
  sessions.flatMap((session, index) => {
    if (session.observations.length === 0) return [];
    const done = [...doneIn(session), ...sessions.slice(index + 1).flatMap(doneLater)];
    return session.observations.filter(
      (each) => each.remedy !== 'reuse' && !isSettled(each, done, engine, registry),
    );
  });

/** What was done to a part, by the name that was written and by what that means. */
interface Done {
  readonly names: readonly string[];
  readonly parts: readonly PartAt[];
}

/** In the session in which it was seen: what is said to be machined or fitted there was so before. Only of known parts. */
const doneIn = ({ partChanges, work }: SessionDocument): readonly Done[] => [
  ...partChanges.filter(({ how }) => how === 'replaced').map(({ parts }) => ({ names: [], parts })),
  ...work.map(({ parts }) => ({ names: [], parts })),
];

const doneLater = ({ partChanges, work, observations }: SessionDocument): readonly Done[] => [
  ...partChanges
    .filter(({ how, isFresh }) => how !== 'fitted' || isFresh)
    .map(({ name, parts }) => ({ names: [name], parts })),
  ...work.map(({ on, parts }) => ({ names: [on.name], parts })),
  ...observations.filter(({ remedy }) => remedy === 'reuse').map(({ on, parts }) => ({ names: on, parts })),
];

/** Of several positions each has to be dealt with. */
function isSettled(
  { on, parts }: Observation,
  done: readonly Done[],
  { document: { layout } }: Engine,
  registry: Registry,
): boolean {
  const said = new Set(done.flatMap(({ names }) => names.map(plain)));
  if (on.every((name) => said.has(plain(name)))) return true;
  const places = parts.flatMap(({ part, positions }) =>
    (positions.length > 0 ? positions : layout.positionsOf(part.family)).map((position) => ({
      part,
      position,
    })),
  );
  return (
    places.length > 0 &&
    places.every(({ part, position }) =>
      done.some((each) => each.parts.some((at) => isAt(part.id, position, at, registry, layout))),
    )
  );
}

const plain = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, ' ');
