import { isAt } from '../../checks/history/dependsOn.ts';
import { isCut } from '../../documents/planning/settings.ts';
import type { PartChange } from '../../documents/session/partChanges.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { relate } from '../../layout/relate.ts';
import type { PlanContext } from '../work/context.ts';

/** What was ground or bored in the run of an engine, and what is bought for it and was not fitted since. */
export interface Awaited {
  readonly machined: Part;
  /** Where it was machined and waits. */
  readonly positions: readonly Position[];
  readonly mate: Part;
  /** Where a mate is not in yet: of a crankpin with two rods perhaps one shell of the two. */
  readonly places: readonly Position[];
}

export const awaitedBy = (context: PlanContext): readonly Awaited[] =>
  context.registry.parts.all.filter(isCut).flatMap((machined) =>
    context.registry.parts.all
      .filter(({ sized }) => sized?.fits === machined.id)
      .flatMap((mate): readonly Awaited[] => {
        const waiting = waitingPlaces(machined, mate, context);
        const [positions, places] = [
          waiting.map(({ position }) => position),
          waiting.flatMap((each) => each.places),
        ];
        return waiting.length === 0 ? [] : [{ machined, positions, mate, places: [...new Set(places)] }];
      }),
  );

function waitingPlaces(
  machined: Part,
  mate: Part,
  { engine, registry, state: { run } }: PlanContext,
): readonly { readonly position: Position; readonly places: readonly Position[] }[] {
  const { layout } = engine.document;
  const isOf = ({ parts }: PartChange, { id }: Part, at: Position): boolean =>
    parts.some((each) => isAt(id, at, each, registry, layout));
  return layout.positionsOf(machined.family).flatMap((position) => {
    const cut = run.findLastIndex(({ partChanges }) =>
      partChanges.some(
        (each) => each.how === 'machined' && each.sizes.length > 0 && isOf(each, machined, position),
      ),
    );
    if (cut < 0) return [];
    const since = run.slice(cut).flatMap(({ partChanges }) => partChanges);
    const places = (relate(layout, position, mate.family) ?? []).filter(
      (at) => !since.some((each) => each.how !== 'machined' && isOf(each, mate, at)),
    );
    return places.length === 0 ? [] : [{ position, places }];
  });
}
