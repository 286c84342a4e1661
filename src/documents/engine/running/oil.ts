import { type Amount, type DocumentContext, parseAmount, readAmount, report } from '../../amount.ts';
import { childOf, entriesOf, textAt } from '../../yaml/access.ts';
import type { Entry, Node } from '../../yaml/node.ts';

/** An oil by its kinematic viscosity at two temperatures. */
export interface Oil {
  readonly name: string | undefined;
  readonly viscosities: readonly [StatedViscosity, StatedViscosity];
}

export interface StatedViscosity {
  readonly at: Amount;
  readonly viscosity: Amount;
}

/** `oil: { name: SAE 40, viscosity: { 40 degC: 150 cSt, 100 degC: 14.5 cSt } }`. */
export function readOil(root: Node, context: DocumentContext): Oil | undefined {
  const node = childOf(root, 'oil');
  const stated = childOf(node, 'viscosity');
  if (stated === undefined) return undefined;
  const entries = entriesOf(stated);
  if (entries.length !== 2) {
    return report(
      context,
      'value',
      stated.span,
      `${entries.length === 1 ? 'one viscosity' : `${entries.length} viscosities`}, and two are wanted`,
      'write the kinematic viscosities at 40 degC and 100 degC of the data sheet',
    );
  }
  const [a, b] = entries.flatMap((entry) => readViscosity(entry, context) ?? []);
  if (a === undefined || b === undefined) return undefined;
  const [cold, warm] = a.at.amount.n * b.at.amount.d < b.at.amount.n * a.at.amount.d ? [a, b] : [b, a];
  const isThinner =
    warm.viscosity.amount.n * cold.viscosity.amount.d < cold.viscosity.amount.n * warm.viscosity.amount.d;
  if (!isThinner) {
    return report(
      context,
      'value',
      stated.span,
      `${warm.viscosity.written} at ${warm.at.written} is not thinner than at ${cold.at.written}`,
      'write the viscosities of the data sheet, the smaller one at the warmer temperature',
    );
  }
  return { name: textAt(node, 'name'), viscosities: [cold, warm] };
}

function readViscosity({ key, keySpan, node }: Entry, context: DocumentContext): StatedViscosity | undefined {
  const at = parseAmount(key, keySpan, 'temperature', context);
  const viscosity = readAmount(node, 'viscosity', context);
  if (viscosity !== undefined && viscosity.amount.n <= 0n) {
    return report(
      context,
      'value',
      node.span,
      `${viscosity.written} is not a viscosity`,
      'write one above 0',
    );
  }
  return at && viscosity && { at, viscosity };
}
