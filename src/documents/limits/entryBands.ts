import { type DocumentContext, readAmount } from '../amount.ts';
import type { Measure, Measures } from '../measure.ts';
import { childOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { type Band, type BandName, type Bands, bandOf, type LimitValue, limitOf, readBand } from './bands.ts';
import { reportTighterWear } from './wearBand.ts';

/** `target`, `new` and `wear`, as they stand in an entry. */
export function readBands(node: Node, measure: Measure, measures: Measures, context: DocumentContext): Bands {
  const bands: Partial<Record<BandName, Band>> = {};
  for (const name of ['target', 'new', 'wear'] as const) {
    const band = childOf(node, name);
    if (band !== undefined) bands[name] = readBand(band, measure, measures, context);
  }
  reportTighterWear(bands.new, bands.wear, childOf(node, 'wear'), context);
  return bands;
}

/** `last_size`, `largest_bore`, `least_thickness`: whatever size the part was made to, it ends there. */
export function lastBand(node: Node, measure: Measure, context: DocumentContext): Pick<Bands, 'last'> {
  const amount = (key: string): LimitValue | undefined => {
    const child = childOf(node, key);
    return child && limitOf(readAmount(child, measure.quantity, context), child, context);
  };
  const last = bandOf(amount('last_size') ?? amount('least_thickness'), amount('largest_bore'));
  return last.min === undefined && last.max === undefined ? {} : { last };
}
