/**
 * The order in which a person measures: first what the assembled engine alone can tell, before it is taken apart,
 * then part by part. Common practice, no source. What is not listed follows in the order of the registry.
 */
export const BENCH_ORDER: readonly string[] = [
  'compression_pressure',
  'crankshaft_end_play',
  'turning_torque',
  'rod_side_clearance',
  'main_bearing_clearance',
  'rod_bearing_clearance',
  'crankshaft_runout',
  'main_journal_diameter',
  'thrust_journal_width',
  'crankpin_diameter',
  'main_housing_bore',
  'main_shell_thickness',
  'main_bearing_bore',
  'thrust_bearing_width',
  'rod_housing_bore',
  'rod_shell_thickness',
  'rod_bearing_bore',
  'cylinder_bore',
  'piston_diameter',
  'piston_clearance',
  'ring_end_gap',
];

/** Sorts what has an id into the order of the bench; what says after what it is measured stands behind that. */
export function inBenchOrder<T extends { readonly id: string; readonly after?: string }>(
  all: readonly T[],
): readonly T[] {
  const afterOf = new Map(all.map(({ id, after }) => [id, after]));
  const rank = (id: string, steps = all.length): number => {
    const after = steps > 0 ? afterOf.get(id) : undefined;
    if (after !== undefined) return rank(after, steps - 1);
    const at = BENCH_ORDER.indexOf(id);
    return at < 0 ? BENCH_ORDER.length : at;
  };
  return [...all].sort((a, b) => rank(a.id) - rank(b.id));
}
