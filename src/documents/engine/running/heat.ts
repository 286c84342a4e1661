import type { StatedTemperature } from '../../../measurement/temperature.ts';
import { type DocumentContext, readAmount, withUnit } from '../../amount.ts';
import { childOf, entriesOf } from '../../yaml/access.ts';
import type { Node } from '../../yaml/node.ts';
import { DUTY_KEYS } from './duty.ts';

/** How warm the parts of a running engine are, by the words of its materials; and all that are not named. */
export interface RunningHeat {
  readonly others: StatedTemperature | undefined;
  readonly parts: ReadonlyMap<string, StatedTemperature>;
}

/** `running: { temperature: 90 degC, pistons: 180 degC }`. */
export function readRunningHeat(root: Node, context: DocumentContext): RunningHeat | undefined {
  const node = childOf(root, 'running');
  if (node === undefined) return undefined;
  const stated = entriesOf(node).flatMap(({ key, node: value }) => {
    if (DUTY_KEYS.has(key)) return [];
    const amount = readAmount(value, 'temperature', context);
    return amount === undefined ? [] : [[key, { amount: amount.amount, text: withUnit(amount) }] as const];
  });
  if (stated.length === 0) return undefined;
  const parts = new Map(stated);
  const others = parts.get('temperature');
  parts.delete('temperature');
  return { others, parts };
}

export const heatOf = ({ others, parts }: RunningHeat, part: string): StatedTemperature | undefined =>
  parts.get(part) ?? others;
