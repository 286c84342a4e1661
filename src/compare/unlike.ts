import type { Route } from '../checks/value/route.ts';
import { absolute, compare, equals, fraction, subtract } from '../quantity/fraction.ts';
import type { StateValue } from './state.ts';

/** Size: the part was made to another service size, or is another one of it. */
export const UNLIKENESSES = ['method', 'instrument', 'conditions', 'temperature', 'size'] as const;

export type Unlikeness = (typeof UNLIKENESSES)[number];

/** In what two measurements of the same thing are not like for like. */
export function unlikeness(a: StateValue, b: StateValue): readonly Unlikeness[] {
  const [before, after] = [a.row.routes[0]?.route, b.row.routes[0]?.route];
  if (before === undefined || after === undefined) return [];
  const kinds: readonly (readonly [Unlikeness, boolean])[] = [
    ['method', before.name === after.name],
    ['instrument', sameTexts(before.with, after.with)],
    ['conditions', sameTexts(conditionsOf(before), conditionsOf(after))],
    ['temperature', isSameWarmth(a, b)],
    ['size', isSameSize(a, b)],
  ];
  return kinds.flatMap(([kind, isAlike]) => (isAlike ? [] : [kind]));
}

/** Their limits differ as much as the sizes do. */
export const isSameSize = (a: StateValue, b: StateValue): boolean => equals(a.row.size.by, b.row.size.by);

const sameTexts = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && [...a].sort().every((text, index) => text === [...b].sort()[index]);

/** Of the readings behind a value, as `key: word`. */
const conditionsOf = (route: Route): readonly string[] =>
  route.inputs.length > 0
    ? [...new Set(route.inputs.flatMap(conditionsOf))]
    : [...(route.block?.conditions ?? [])].map(([key, word]) => `${key}: ${word}`);

/**
 * In degrees Celsius. A steel part of three inches grows by a tenth of a thousandth of an inch in three degrees
 * (11.5e-6 a degree, 3 × 11.5e-6 × 3 = 0.0001): less does not show on a shop's micrometer.
 */
const MOST_APART = fraction(3);

/** Only where both state one: what nobody wrote down cannot be told apart. */
function isSameWarmth({ session: a }: StateValue, { session: b }: StateValue): boolean {
  if (a.temperature === undefined || b.temperature === undefined) return true;
  return compare(absolute(subtract(a.temperature.amount, b.temperature.amount)), MOST_APART) <= 0;
}
