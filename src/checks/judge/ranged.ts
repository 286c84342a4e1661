import type { Characteristic } from '../../characteristics/characteristic.ts';
import { valuesOf } from '../../characteristics/grid.ts';
import { expandedFactor, welchSatterthwaite } from '../../measurement/conformance.ts';
import { standardUncertainty, type Value, withoutRange } from '../../measurement/value.ts';
import { add, subtract } from '../../quantity/fraction.ts';
import type { Route } from '../value/route.ts';
import { settled } from './limits.ts';
import type { PointRange } from './spans.ts';
import type { Judged } from './verdict.ts';

/**
 * Of a reading of which at least one point was read as a range, such as `under 0.002`: every point's span, and the
 * uncertainty that is left besides.
 */
export type Ranged = Pick<Judged, 'u' | 'dof' | 'expanded'> & { readonly spans: readonly PointRange[] };

export function rangedOf({ grid }: Route, { quantity }: Characteristic): Ranged | undefined {
  const values = valuesOf(grid);
  if (values.every(({ range }) => range === undefined)) return undefined;
  const spanOf = ({ amount, range }: Value): PointRange => ({
    from: settled(range === undefined ? amount : subtract(amount, range.below), quantity),
    to:
      range === undefined
        ? settled(amount, quantity)
        : range.above && settled(add(amount, range.above), quantity),
  });
  const left = values.map(withoutRange).sort((a, b) => standardUncertainty(b) - standardUncertainty(a));
  const u = Math.max(...left.map(standardUncertainty));
  const dof = welchSatterthwaite([...(left[0]?.terms.values() ?? [])]);
  return { spans: values.map(spanOf), u, dof, expanded: u * expandedFactor(dof) };
}
