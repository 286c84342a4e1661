import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { relate } from '../../layout/relate.ts';

/** Whether what is measured at a position depends on a part that was changed, or on one that it is assembled from. */
export const dependsOn = (
  { of, dependsOn: others }: Characteristic,
  position: Position,
  changed: PartAt,
  registry: Registry,
  layout: Layout,
): boolean =>
  [...(of === undefined ? [] : [of]), ...others].some((id) => isAt(id, position, changed, registry, layout));

/** Whether a part, of those that belong to a position, is one that was changed. */
export function isAt(
  id: string,
  position: Position,
  { part: changed, positions, isCutAlone }: PartAt,
  { parts }: Pick<Registry, 'parts'>,
  layout: Layout,
): boolean {
  const part = parts.find(id);
  const reached = isCutAlone ? parts.cutWith(changed) : parts.within(changed);
  if (part === undefined || !reached.includes(part)) return false;
  if (positions.length === 0) return true;
  // What nothing relates, such as a step of the assembly, feels every part.
  return positions.some((each) => relate(layout, position, each.family)?.includes(each) ?? true);
}
