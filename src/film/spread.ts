/** The least and the greatest of a figure. */
export interface Spread {
  readonly least: number;
  readonly greatest: number;
}

const STEPS = 16;

/** So many clearances from one to another, both with it. */
export const clearancesBetween = (from: number, to: number, steps = STEPS): readonly number[] =>
  Array.from({ length: steps + 1 }, (_, step) => from + ((to - from) * step) / steps);

/**
 * How far figures reach while the clearance runs over an interval, such as that of its uncertainty. The interval is walked
 * through, since a film first thickens and then thins as its clearance grows: its ends alone would hide the top.
 */
export function spreadsOver<Name extends string>(
  clearances: readonly number[],
  figuresAt: (clearance: number) => Readonly<Record<Name, number>>,
): Readonly<Record<Name, Spread>> {
  const all = clearances.map(figuresAt);
  const [first] = all;
  if (first === undefined) throw new RangeError('an interval without a clearance');
  const names = Object.keys(first) as Name[];
  const spreads = names.map((name): [Name, Spread] => {
    const values = all.map((figures) => figures[name]);
    return [name, { least: Math.min(...values), greatest: Math.max(...values) }];
  });
  return Object.fromEntries(spreads) as Record<Name, Spread>;
}
