import type { Fraction } from '../quantity/fraction.ts';

/** From a least to a greatest amount; one figure is both. In the quantity's base unit, exact. */
export interface AmountRange {
  readonly least: Fraction;
  readonly greatest: Fraction;
}

export const exactly = (amount: Fraction): AmountRange => ({ least: amount, greatest: amount });

/** A percentage of the final torque, as `to: 70 %`. */
export interface ShareOfFinal {
  readonly percent: Fraction;
}

/** What is done to each fastener in a pass. Torque in newton metres, angle in degrees, stretch as a length. */
export type Action =
  | { readonly kind: 'to'; readonly torque: AmountRange | ShareOfFinal }
  | { readonly kind: 'turn'; readonly angle: AmountRange }
  /** By an angle, or fully slack when none is given. */
  | { readonly kind: 'loosen'; readonly angle?: AmountRange }
  /** Until the bolt is longer by the stretch; with a torque, both windows must be met together. */
  | { readonly kind: 'stretch'; readonly stretch: AmountRange; readonly torque?: AmountRange }
  /** The fastener must hold this torque without turning, and no more than `atMost`. */
  | { readonly kind: 'check'; readonly torque: AmountRange | ShareOfFinal; readonly atMost?: Fraction };

export interface Pass {
  readonly action: Action;
  /** Names of fasteners or of groups; all of them when absent. */
  readonly fasteners?: readonly string[];
  /** Against the stated order, as some manuals ask for loosening. */
  readonly reversed?: boolean;
  readonly note?: string;
}

/** A tightening sequence as its document states it, with units already resolved. */
export interface Sequence {
  readonly joint: string;
  readonly fasteners: readonly string[];
  readonly groups: ReadonlyMap<string, readonly string[]>;
  /** Every fastener once. */
  readonly order: readonly string[];
  /** The order was generated from positions: the maker's order wins. */
  readonly generated: boolean;
  /** What percentages refer to; without it, the last torque stated for the same fastener. */
  readonly final?: AmountRange;
  readonly passes: readonly Pass[];
  /** Steps to confirm before the first pass and after the last. */
  readonly before: readonly string[];
  readonly after: readonly string[];
}

/** Whether the torque of a pass is a percentage that still has to be worked out. */
export const isShare = (torque: AmountRange | ShareOfFinal): torque is ShareOfFinal => 'percent' in torque;

/** The fasteners of a pass, each once, in the order they are tightened. Unknown names are left out. */
export function fastenersOf(pass: Pass, sequence: Sequence): readonly string[] {
  const { order, groups } = sequence;
  const named = pass.fasteners?.flatMap((name) => groups.get(name) ?? [name]);
  const wanted = named === undefined ? undefined : new Set(named);
  const taken = order.filter((name) => wanted === undefined || wanted.has(name));
  return pass.reversed === true ? taken.toReversed() : taken;
}

/** What 100 % means for each fastener: the stated final torque, or the last torque written for it. */
export function finalTorques(sequence: Sequence): ReadonlyMap<string, AmountRange> {
  const { final, order, passes } = sequence;
  if (final !== undefined) return new Map(order.map((name) => [name, final]));
  return new Map(
    passes.flatMap((pass) => {
      const stated = statedTorque(pass.action);
      return stated === undefined ? [] : fastenersOf(pass, sequence).map((name) => [name, stated] as const);
    }),
  );
}

const statedTorque = (action: Action): AmountRange | undefined =>
  action.kind === 'to' && !isShare(action.torque) ? action.torque : undefined;
