import { characteristics } from '../characteristics/registry.ts';
import { compareText } from '../diagnostic/place.ts';
import type { Measure } from '../documents/measure.ts';
import { inOrderOf, type Layout } from '../layout/layout.ts';
import type { Position } from '../layout/position.ts';

const placeOnSheet = new Map(characteristics.map(({ id }, index) => [id, index]));

/** In the order of the sheet, a shop's own characteristics after ours, and at each in the order of the positions. */
export const bySheet =
  <Placed extends { readonly position: Position }>(
    layout: Layout | undefined,
    measureOf: (placed: Placed) => Pick<Measure, 'id' | 'family'>,
  ) =>
  (x: Placed, y: Placed): number => {
    const [measure, other] = [measureOf(x), measureOf(y)];
    const place = ({ id }: Pick<Measure, 'id'>): number => placeOnSheet.get(id) ?? placeOnSheet.size;
    return (
      place(measure) - place(other) ||
      compareText(measure.id, other.id) ||
      inOrderOf(layout, measure.family)(x.position, y.position)
    );
  };
