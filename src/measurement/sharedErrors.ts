import type { Value } from './value.ts';

/** The errors of a value that is one of several. */
export interface ErrorsApart {
  /** Standard uncertainty of what it alone is off by. */
  readonly own: number;
  /** Signed standard uncertainties of what at least one other is off by as well, by source. */
  readonly shared: ReadonlyMap<string, number>;
}

/** One micrometer's own error is the same in each of its readings, and stands under one name in all of them. */
export function takenApart(values: readonly Value['terms'][]): readonly ErrorsApart[] {
  const met = new Map<string, number>();
  for (const source of values.flatMap((terms) => [...terms.keys()]))
    met.set(source, (met.get(source) ?? 0) + 1);
  return values.map((terms) => {
    const own: number[] = [];
    const shared = new Map<string, number>();
    for (const [source, { u }] of terms) {
      if (met.get(source) === 1) own.push(u);
      else shared.set(source, u);
    }
    return { own: Math.hypot(...own), shared };
  });
}
