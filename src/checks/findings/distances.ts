import type { Characteristic } from '../../characteristics/characteristic.ts';
import { hasDistances } from '../../characteristics/form.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { MeasureLimits } from '../../documents/limits/limitEntry.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { limitsOfFitted } from '../grades/madeSize.ts';
import type { SessionView } from '../judge/row.ts';
import { oncePer } from '../once.ts';

const NO_DISTANCE: FindingKind = {
  code: 'limits/no-distance',
  severity: 'warning',
  means:
    'A limit holds for a length of the part (`per:`), and the stations at which it was measured have no distances.',
  matters: 'The limit is not used, and no other finding says so.',
  usually:
    'Write the stations with their distances, `stations: { front: 0.25 in, rear: 1.75 in }`, or once in `grids:`.',
  example:
    'main journal taper has a limit per length of the part, and the stations of main journal diameter have no distances',
};

export const distanceKinds: readonly FindingKind[] = [NO_DISTANCE];

/** Said once for each characteristic, at the first position that cannot be judged for it. */
export function distanceFindings(view: SessionView): readonly Finding[] {
  const ids = idsForLength(view.engine);
  return ids.size === 0
    ? []
    : view.registry.all
        .filter(({ id }) => ids.has(id))
        .flatMap((characteristic) => withoutDistance(characteristic, view) ?? []);
}

const idsForLength = oncePer(
  ({ limits }: Engine): ReadonlySet<string> =>
    new Set(
      limits.flatMap((level) => [...level.limits].flatMap(([id, of]) => (isForLength(of) ? [id] : []))),
    ),
);

const isForLength = ({ general, at }: MeasureLimits): boolean =>
  [general, ...at.map(({ entry }) => entry)].some(({ per }) => per !== undefined);

function withoutDistance(characteristic: Characteristic, view: SessionView): Finding | undefined {
  const { engine, registry, routes, session } = view;
  const { layout } = engine.document;
  for (const position of layout.positionsOf(characteristic.family)) {
    const { per, bands } = limitsOfFitted(engine, session, characteristic, position);
    if (per === undefined) continue;
    for (const id of characteristic.derivations.flatMap((each) => each.inputs)) {
      const input = registry.find(id);
      const read = input && routes.at(input, position, {})[0];
      if (read === undefined || read.grid.stations.length < 2 || hasDistances(read.grid)) continue;
      const limit = Object.values(bands).flatMap((band) => band?.max ?? band?.min ?? [])[0];
      const message = `${characteristic.label} has a limit per length of the part, and the stations of ${input?.label} have no distances`;
      return finding(NO_DISTANCE, read.place, message, {
        measure: characteristic.id,
        position,
        limitPlace: limit?.place,
      });
    }
  }
  return undefined;
}
