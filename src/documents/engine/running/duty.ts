import type { Quantity } from '../../../quantity/units.ts';
import { type Amount, type DocumentContext, readAmount, report } from '../../amount.ts';
import { childOf } from '../../yaml/access.ts';
import type { Node } from '../../yaml/node.ts';

/** What a running engine asks of its bearings and its oil, as stated. */
export interface RunningDuty {
  readonly speed: Amount | undefined;
  readonly oilPressure: Amount | undefined;
  /** As it comes to the bearings. */
  readonly oilTemperature: Amount | undefined;
  readonly cylinderPressure: Amount | undefined;
  /** Of one cylinder. */
  readonly reciprocatingMass: Amount | undefined;
  /** At that speed. */
  readonly pumpDelivery: Amount | undefined;
  readonly loads: Readonly<Record<LoadedBearings, Amount | undefined>>;
}

export const LOADED_BEARINGS = ['mains', 'rods', 'camshaft'] as const;
export type LoadedBearings = (typeof LOADED_BEARINGS)[number];

/** Keys of `running:` that state no temperature of a part. */
export const DUTY_KEYS: ReadonlySet<string> = new Set([
  'speed',
  'oil_pressure',
  'oil_temperature',
  'cylinder_pressure',
  'reciprocating_mass',
  'pump_delivery',
  'load',
]);

export function readRunningDuty(root: Node, context: DocumentContext): RunningDuty {
  const node = childOf(root, 'running');
  const load = childOf(node, 'load');
  const above = (parent: Node | undefined, key: string, quantity: Quantity): Amount | undefined =>
    readAboveZero(childOf(parent, key), quantity, context);
  return {
    speed: above(node, 'speed', 'speed'),
    oilPressure: above(node, 'oil_pressure', 'pressure'),
    oilTemperature: readAmount(childOf(node, 'oil_temperature'), 'temperature', context),
    cylinderPressure: above(node, 'cylinder_pressure', 'pressure'),
    reciprocatingMass: above(node, 'reciprocating_mass', 'mass'),
    pumpDelivery: above(node, 'pump_delivery', 'flow'),
    loads: {
      mains: above(load, 'mains', 'force'),
      rods: above(load, 'rods', 'force'),
      camshaft: above(load, 'camshaft', 'force'),
    },
  };
}

function readAboveZero(
  node: Node | undefined,
  quantity: Quantity,
  context: DocumentContext,
): Amount | undefined {
  const amount = readAmount(node, quantity, context);
  if (node === undefined || amount === undefined || amount.amount.n > 0n) return amount;
  return report(context, 'value', node.span, `${amount.written} is not above 0`, 'write what it is, above 0');
}
