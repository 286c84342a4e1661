import type { Diagnostic } from '../diagnostic/diagnostic.ts';
import { comparePlaces } from '../diagnostic/place.ts';

/** One missing unit is missed by every number of its file: the first of them speaks for all. */
export function unitsAskedForOnce(problems: readonly Diagnostic[]): readonly Diagnostic[] {
  const first = new Map<string, Diagnostic>();
  for (const each of problems.filter(isMissingUnit)) {
    const known = first.get(keyOf(each));
    if (known === undefined || comparePlaces(each.place, known.place) < 0) first.set(keyOf(each), each);
  }
  return problems.filter((each) => !isMissingUnit(each) || first.get(keyOf(each)) === each);
}

const isMissingUnit = ({ code }: Diagnostic): boolean => code === 'document/no-unit';

const keyOf = ({ message, place }: Diagnostic): string => `${place.path}\n${message}`;
