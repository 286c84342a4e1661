import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { relate } from '../../layout/relate.ts';
import type { PlanContext } from '../work/context.ts';
import { type CutGroup, isBeyond } from '../work/cut.ts';
import type { Job } from '../work/job.ts';
import type { Awaited } from './awaited.ts';

/** Where the mates of a cut are bought: at its places, and unless the shop cuts each apart at all of its part. */
export function cutAt(
  part: Part,
  { places }: CutGroup,
  { engine }: Pick<PlanContext, 'engine'>,
): readonly Position[] {
  return engine.planning.separate.has(part.id)
    ? places.map(({ position }) => position)
    : engine.document.layout.positionsOf(part.family);
}

/** Where a part is bought in its new size in any case: for what is cut, and for what is back from the machine shop. */
export function boughtAt(
  part: Part,
  jobs: readonly Job[],
  awaited: readonly Awaited[],
  context: PlanContext,
): ReadonlySet<Position> {
  const { layout } = context.engine.document;
  const cuts = jobs.flatMap(({ cut }) => (cut !== undefined && part.sized?.fits === cut.part.id ? cut : []));
  const cut = cuts.flatMap((each) =>
    each.groups
      .filter(({ deciding }) => !isBeyond(deciding))
      .flatMap((group) => cutAt(each.part, group, context)),
  );
  return new Set([
    ...cut.flatMap((position) => relate(layout, position, part.family) ?? []),
    ...awaited.filter(({ mate }) => mate === part).flatMap(({ places }) => places),
  ]);
}
