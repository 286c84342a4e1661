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
  readonly mate: Part;
  /** Of the part that was machined. */
  readonly positions: readonly Position[];
}

export const awaitedBy = (context: PlanContext): readonly Awaited[] =>
  context.registry.parts.all.filter(isCut).flatMap((machined) =>
    context.registry.parts.all
      .filter(({ sized }) => sized?.fits === machined.id)
      .flatMap((mate): readonly Awaited[] => {
        const positions = waitingPlaces(machined, mate, context);
        return positions.length === 0 ? [] : [{ machined, mate, positions }];
      }),
  );

function waitingPlaces(
  machined: Part,
  mate: Part,
  { engine, registry, state }: PlanContext,
): readonly Position[] {
  const { layout } = engine.document;
  const says = (change: PartChange, part: Part, position: Position): boolean =>
    (relate(layout, position, part.family) ?? []).some((at) =>
      change.parts.some((each) => isAt(part.id, at, each, registry, layout)),
    );
  return layout.positionsOf(machined.family).filter((position) => {
    const cut = state.run.findLastIndex(({ partChanges }) =>
      partChanges.some(
        (each) => each.how === 'machined' && each.sizes.length > 0 && says(each, machined, position),
      ),
    );
    return (
      cut >= 0 &&
      !state.run
        .slice(cut)
        .some(({ partChanges }) =>
          partChanges.some((each) => each.how !== 'machined' && says(each, mate, position)),
        )
    );
  });
}
