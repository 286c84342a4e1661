/** One share of the variation seen in a study. */
export interface Variation {
  /** Standard deviation, in the unit of the readings. */
  readonly deviation: number;
  /** In per cent of the total variation. These do not add up to 100. */
  readonly percentOfTotal: number;
  /** Its variance in per cent of the total variance. These add up. */
  readonly contribution: number;
}

/** What a repeatability-and-reproducibility study says of a gauge in the hands of those who use it. */
export interface GaugeVariation {
  /** EV: the same person on the same part again. */
  readonly repeatability: Variation;
  /** AV: other people. */
  readonly reproducibility: Variation;
  /** People who differ on some parts and not on others; zero where it was pooled or cannot be seen. */
  readonly interaction: Variation;
  /** GRR: all three together. */
  readonly gauge: Variation;
  /** PV: the parts themselves. */
  readonly parts: Variation;
  /** TV: gauge and parts together. */
  readonly total: Variation;
  /** ndc, 1.41 · PV / GRR: Infinity for a gauge without variation. */
  readonly distinctCategories: number;
  /** The same cut down to a whole number, at least 1; five or more are wanted. */
  readonly wholeCategories: number;
}

interface Variances {
  readonly repeatability: number;
  readonly reproducibility: number;
  readonly interaction: number;
  readonly parts: number;
}

/** Puts the shares together from their variances; one below zero, which chance can give, counts as zero. */
export function summarize(variances: Variances): GaugeVariation {
  const [repeatability, reproducibility, interaction, parts] = [
    Math.max(0, variances.repeatability),
    Math.max(0, variances.reproducibility),
    Math.max(0, variances.interaction),
    Math.max(0, variances.parts),
  ];
  const gauge = repeatability + reproducibility + interaction;
  const share = (variance: number): Variation => variation(variance, gauge + parts);
  const distinctCategories = 1.41 * Math.sqrt(parts / gauge);
  return {
    repeatability: share(repeatability),
    reproducibility: share(reproducibility),
    interaction: share(interaction),
    gauge: share(gauge),
    parts: share(parts),
    total: share(gauge + parts),
    distinctCategories,
    wholeCategories: Math.max(1, Math.floor(distinctCategories)),
  };
}

const variation = (variance: number, total: number): Variation => ({
  deviation: Math.sqrt(variance),
  percentOfTotal: 100 * Math.sqrt(variance / total),
  contribution: (100 * variance) / total,
});

/** Six standard deviations in per cent of a tolerance (max − min, in the unit of the readings). */
export const percentOfTolerance = ({ deviation }: Variation, tolerance: number): number =>
  (600 * deviation) / tolerance;
