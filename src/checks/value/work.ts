import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Part } from '../../documents/session/part.ts';
import type { ReadingBlock, WorkDone } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { relateOne } from '../../layout/relate.ts';

/**
 * The first work on the part that a reading measures which came after it: the reading is kept, and no longer judged.
 * Only the order of readings and work counts; between two pieces of work blocks may stand in any order.
 */
export const workAfter = (
  session: SessionDocument,
  block: ReadingBlock,
  position: Position,
  characteristic: Characteristic,
  registry: Registry,
  layout: Layout,
): WorkDone | undefined =>
  session.work.find(
    (work) => work.index > block.index && isWorkOn(work, characteristic, position, registry, layout),
  );

/**
 * Work on `cylinder 3` changes what is measured of that cylinder, and what is worked out from it; work on a crankpin
 * the clearances in the cylinders whose rods run on it.
 */
export function isWorkOn(
  { part }: WorkDone,
  characteristic: Characteristic,
  position: Position,
  registry: Registry,
  layout: Layout,
): boolean {
  return withInputs(characteristic, registry).some(({ id, family }) => {
    if (!part.begins.some((beginning) => id.startsWith(beginning))) return false;
    const at = relateOne(layout, position, family);
    return isAt(part, at, family, layout);
  });
}

function isAt(
  { at: worked }: Part,
  at: Position | undefined,
  family: Characteristic['family'],
  layout: Layout,
): boolean {
  if (worked === undefined) return true;
  return at !== undefined && relateOne(layout, worked, family) === at;
}

/** A characteristic with all that it is worked out from; a formula may lead back to itself. */
function withInputs(characteristic: Characteristic, registry: Registry): readonly Characteristic[] {
  const found = new Set([characteristic]);
  for (const each of found) {
    for (const id of each.derivations.flatMap(({ inputs }) => inputs)) {
      const input = registry.find(id);
      if (input !== undefined) found.add(input);
    }
  }
  return [...found];
}
