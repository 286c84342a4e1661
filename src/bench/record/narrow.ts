import type { Engine } from '../../documents/assemble.ts';
import { FAMILIES, type Family, type Layout } from '../../documents/engine/layout.ts';
import type { PlannedPoint } from '../points.ts';

/** The same engine with nothing but what belongs to one position: judging it costs no more for a large engine. */
export const narrowedTo = (engine: Engine, layout: Layout): Engine => ({
  ...engine,
  document: { ...engine.document, layout },
});

/** A position, and for cylinders and crankpins those that belong to it. */
export function layoutAround(layout: Layout, family: Family, position: string): Layout {
  const { pinOfCylinder } = layout;
  const positions = new Map<Family, readonly string[]>(FAMILIES.map((each) => [each, []]));
  if (family !== 'engine' && family !== 'step') positions.set(family, [position]);
  const pin = family === 'cylinder' ? pinOfCylinder.get(position) : undefined;
  if (pin !== undefined) positions.set('crankpin', [pin]);
  if (family === 'crankpin') {
    positions.set(
      'cylinder',
      [...pinOfCylinder].flatMap(([cylinder, on]) => (on === position ? [cylinder] : [])),
    );
  }
  return { ...layout, positions };
}

/** Whether a reading can have a say in what is judged there: steps and the whole engine always can. */
export const belongsTo = (layout: Layout, family: Family, { position }: PlannedPoint): boolean =>
  family === 'engine' || family === 'step' || (layout.positions.get(family) ?? []).includes(position);
