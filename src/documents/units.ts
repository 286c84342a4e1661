import { didYouMean } from '../diagnostic/suggestion.ts';
import { findUnit, QUANTITIES, type Quantity, UNIT_SPELLINGS, type Unit } from '../quantity/units.ts';
import { type DocumentContext, report, type UnitsInForce } from './amount.ts';
import { childOf, entriesOf, textOf } from './yaml/access.ts';
import type { Node } from './yaml/node.ts';

/** `units: { length: in, torque: lbf ft }` of a document. A unit of another quantity the schema has refused. */
export function readUnits(root: Node | undefined, context: DocumentContext): UnitsInForce {
  const units = new Map<Quantity, Unit>();
  for (const { key, node } of entriesOf(childOf(root, 'units'))) {
    const name = textOf(node);
    const unit =
      name === undefined
        ? undefined
        : findUnit(
            name,
            QUANTITIES.find((each) => each === key),
          );
    if (unit === undefined) {
      const help = didYouMean(name ?? '', UNIT_SPELLINGS);
      report(
        context,
        'value',
        node.span,
        name === undefined ? 'the name of the unit is missing' : `${name} is not a unit`,
        help,
      );
    } else if (unit.quantity === key) units.set(unit.quantity, unit);
  }
  return units;
}

/** Units of the nearer document over those of the farther, quantity by quantity. */
export const unitsOver = (nearer: UnitsInForce, farther: UnitsInForce): UnitsInForce =>
  new Map([...farther, ...nearer]);
