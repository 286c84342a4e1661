import type { Engine } from '../../documents/assemble.ts';
import { BAND_NAMES, type BandName } from '../../documents/limits/bands.ts';
import { limitsInForce } from '../../documents/limits/precedence.ts';
import type { Measure } from '../../documents/measure.ts';
import { compare, type Fraction, subtract, toNumber } from '../../quantity/fraction.ts';

/** How far apart the two limits of a band stand, in the base unit. */
export interface Tolerance {
  readonly band: BandName;
  readonly min: Fraction;
  readonly max: Fraction;
  readonly width: number;
}

/** The bands of a characteristic that have two stated limits, at any position of an engine; each once. */
export function tolerancesOf(
  measure: Measure,
  { limits, document: { layout } }: Engine,
): readonly Tolerance[] {
  const found = new Map<string, Tolerance>();
  for (const position of layout.positionsOf(measure.family)) {
    const { bands } = limitsInForce(limits, layout, measure, position);
    for (const band of BAND_NAMES) {
      const { min, max } = bands[band] ?? {};
      if (min?.kind !== 'amount' || max?.kind !== 'amount') continue;
      if (compare(max.amount, min.amount) === 0) continue;
      const width = toNumber(subtract(max.amount, min.amount));
      found.set(`${band} ${min.written} ${max.written}`, { band, min: min.amount, max: max.amount, width });
    }
  }
  return [...found.values()];
}
