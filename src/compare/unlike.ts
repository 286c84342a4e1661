import type { Route } from '../checks/routes.ts';
import { equals } from '../quantity/fraction.ts';
import type { StateValue } from './state.ts';

/** In what two measurements of the same thing are not like for like. */
export function unlikeness(a: StateValue, b: StateValue): readonly string[] {
  const [before, after] = [a.row.routes[0]?.route, b.row.routes[0]?.route];
  if (before === undefined || after === undefined) return [];
  return [
    ...(before.name === after.name ? [] : ['method']),
    ...(sameTexts(before.with, after.with) ? [] : ['instrument']),
    ...(sameTexts(conditionsOf(before), conditionsOf(after)) ? [] : ['conditions']),
    ...(sameTemperature(a, b) ? [] : ['temperature']),
  ];
}

const sameTexts = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && [...a].sort().every((text, index) => text === [...b].sort()[index]);

/** Of the readings behind a value, as `key: word`. */
const conditionsOf = (route: Route): readonly string[] =>
  route.inputs.length > 0
    ? [...new Set(route.inputs.flatMap(conditionsOf))]
    : [...(route.block?.conditions ?? [])].map(([key, word]) => `${key}: ${word}`);

/** Only where both state one: what nobody wrote down cannot be told apart. */
function sameTemperature({ session: a }: StateValue, { session: b }: StateValue): boolean {
  if (a.temperature === undefined || b.temperature === undefined) return true;
  return equals(a.temperature.amount, b.temperature.amount);
}
