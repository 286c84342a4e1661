import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { PartChange } from '../../documents/session/partChanges.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { STEP } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { findPosition } from '../../layout/readKey.ts';
import { isWorkOn } from '../value/work.ts';

/** Which sizes are those of another part when a part of this name is changed. */
const PARTS: readonly (readonly [part: RegExp, ids: RegExp])[] = [
  [/\bcrank(shaft)?\b/, /^(main_journal|crankpin|crankshaft|thrust_journal)_/],
  [/\bmain (bearings?|(bearing )?shells?)\b/, /^(main_(shell|bearing)_|crankshaft_end_play)/],
  [/\b(rod|big end) (bearings?|(bearing )?shells?)\b/, /^rod_(shell|bearing)_/],
  [/^((bearing )?shells?|bearings?)$/, /^((main|rod)_(shell|bearing)_|crankshaft_end_play)/],
  [/\bthrust (washers?|bearings?|shells?)\b/, /^(crankshaft_end_play|thrust_)/],
  [/\bmain journals?\b/, /^main_journal_/],
  [/\b(crankpins?|rod journals?)\b/, /^crankpin_/],
  [/\b(liners?|sleeves?|cylinders?|bores?)\b/, /^cylinder_|_ring_/],
  [/\bblock\b/, /^(cylinder|main_housing|main_bearing)_|_ring_/],
  [/\bmain (caps?|housings?)\b/, /^main_(housing|bearing)_/],
  [/\bpistons?\b/, /^piston_/],
  [/\brings?\b/, /_ring_/],
  [/\b(connecting )?rods?$/, /^rod_/],
];

/** `cylinder heads` is the part that `cylinder_head_…` characteristics are measured of. */
const prefixOf = (part: string): string => `${part.toLowerCase().replace(/s$/, '').replace(/[ -]+/g, '_')}_`;

/** Whether what is measured under an id is measured of a part of this name. */
export const isOf = (part: string, id: string): boolean =>
  PARTS.some(([words, ids]) => words.test(part.toLowerCase()) && ids.test(id)) ||
  id.startsWith(prefixOf(part));

/** Whether anything that can be measured belongs to a part of this name. */
export const isKnownPart = (part: string, registry: Registry): boolean =>
  registry.all.some(({ id }) => isOf(part, id));

/** Whether a change of part makes what is measured here that of another part. Turning torque feels every part. */
function concerns(
  { part, positions }: PartChange,
  characteristic: Characteristic,
  position: Position,
  registry: Registry,
  layout: Layout,
): boolean {
  if (characteristic.family === STEP) return isKnownPart(part, registry);
  const inputs = characteristic.derivations.flatMap(({ inputs: ids }) => ids);
  const isHere =
    positions.length === 0 ||
    positions.some((each) => findPosition(layout, characteristic.family, each) === position);
  return isHere && [characteristic.id, ...inputs].some((id) => isOf(part, id));
}

/**
 * Why what a session measures here does not go on from what was measured before; undefined where it does.
 * A fitted part is another one where its mark, code or size is not what an earlier session said, or where none said
 * anything of it and it is new or reground.
 */
export function partHistoryStart(
  session: SessionDocument,
  earlier: readonly SessionDocument[],
  characteristic: Characteristic,
  position: Position,
  registry: Registry,
  layout: Layout,
): string | undefined {
  const changed = session.partChanges.find(
    (change) =>
      concerns(change, characteristic, position, registry, layout) &&
      (change.how !== 'fitted' || isAnother(change, earlier)),
  );
  if (changed !== undefined) return `${changed.part} ${changed.how}`;
  const work = session.work.find((each) => isWorkOn(each, characteristic, position, registry, layout));
  return work === undefined ? undefined : `${work.on.name} ${work.work}`;
}

function isAnother({ part, identity, isFresh }: PartChange, earlier: readonly SessionDocument[]): boolean {
  const stated = earlier
    .flatMap(({ partChanges }) => partChanges)
    .findLast((each) => each.how === 'fitted' && each.part === part);
  return stated === undefined ? isFresh : stated.identity !== identity;
}
