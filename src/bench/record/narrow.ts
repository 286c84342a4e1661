import type { Engine } from '../../documents/assemble.ts';
import { AXES, type Axis, HOLDER } from '../../layout/axis.ts';
import { familyOf } from '../../layout/family.ts';
import { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { relate } from '../../layout/relate.ts';

/** The same engine with nothing but what belongs to some positions: judging it costs no more for a large engine. */
export const narrowedTo = (engine: Engine, layout: Layout): Engine => ({
  ...engine,
  document: { ...engine.document, layout },
});

/** Positions, and those that belong to them: a crankpin with its cylinders. */
export function layoutAround(layout: Layout, positions: readonly Position[]): Layout {
  const names = new Map(
    AXES.map((axis) => {
      const beside = new Set(positions.flatMap((each) => namesBeside(axis, layout, each)));
      return [axis, layout.namesAlong(axis).filter((name) => beside.has(name))] as const;
    }),
  );
  const onHolder = new Map(
    [...layout.given.onHolder].map(([axis, held]) => [
      axis,
      new Map(
        [...held].map(([holder, all]) => [holder, all.filter((name) => names.get(axis)?.includes(name))]),
      ),
    ]),
  );
  return new Layout({ ...layout.given, names, onHolder }, layout);
}

/** Steps and the whole engine have nothing beside them: what else there is was judged before. */
function namesBeside(axis: Axis, layout: Layout, position: Position): readonly string[] {
  const { family, coordinates } = position;
  if (family.isSingle || family.isNamedBySession) return [];
  if (family.axes.includes(axis)) return coordinates.filter((_, index) => family.axes[index] === axis);
  if (HOLDER[axis] !== undefined) return layout.namesAlong(axis);
  const beside = relate(layout, position, familyOf(axis)) ?? [];
  return beside.flatMap((each) => each.coordinates);
}

/** Whether a reading can have a say in what is judged there: steps and the whole engine always can. */
export const belongsTo = (layout: Layout, { family, coordinates }: Position): boolean =>
  family.isNamedBySession || layout.at(family, coordinates) !== undefined;
