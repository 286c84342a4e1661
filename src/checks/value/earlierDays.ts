import type { Route } from './route.ts';

/** Of which days the inputs are that were read before: each once with its name, unless all are of one. */
export function earlierDays(inputs: readonly Route[]): readonly string[] {
  const [first] = inputs;
  if (first?.takenFrom !== undefined && inputs.every(({ takenFrom }) => takenFrom === first.takenFrom))
    return [`read ${first.takenFrom}`];
  const named = inputs.flatMap(({ characteristic, takenFrom }) =>
    takenFrom === undefined ? [] : [`${characteristic.label} of ${takenFrom}`],
  );
  return [...new Set(named)];
}
