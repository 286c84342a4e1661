import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { ReadingBlock, WorkDone } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { dependsOn } from '../history/dependsOn.ts';

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
export const isWorkOn = (
  { parts }: WorkDone,
  characteristic: Characteristic,
  position: Position,
  registry: Registry,
  layout: Layout,
): boolean => parts.some((part) => dependsOn(characteristic, position, part, registry, layout));
