import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { relate, relateOne } from '../../layout/relate.ts';

/** A place on which several parts run together: of a vee a crankpin and its rods. */
export interface SharedPin {
  readonly pin: Position;
  readonly rods: readonly Position[];
}

/** Undefined where the part has what it runs on to itself, or runs on nothing. */
export function sharedPin(
  { of }: Characteristic,
  position: Position,
  { parts }: Registry,
  layout: Layout,
): SharedPin | undefined {
  const runsOn = parts.find(of ?? '')?.runsOn;
  const family = parts.find(runsOn ?? '')?.family;
  const pin = family && relateOne(layout, position, family);
  const rods = pin === undefined ? [] : (relate(layout, pin, position.family) ?? []);
  return pin === undefined || rods.length < 2 ? undefined : { pin, rods };
}
