import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import { oncePer } from '../once.ts';

/**
 * The ids of what was read and of all that can be worked out of it, with what is given for inputs alone. It goes from
 * what was read to what uses that: what nobody measures is not even looked at.
 */
export function reachedFrom(
  registry: Registry,
  read: readonly string[],
  given: readonly string[],
): ReadonlySet<string> {
  const reached = new Set([...read, ...ofNothing(registry)]);
  const known = new Set([...reached, ...given]);
  // What is reached on the way is gone on from: a set is walked as it grows.
  for (const id of known) {
    for (const user of usersOf(registry).get(id) ?? []) {
      if (reached.has(user.id) || !isWorkedOutOf(known, user)) continue;
      reached.add(user.id);
      known.add(user.id);
    }
  }
  return reached;
}

const isWorkedOutOf = (known: ReadonlySet<string>, { derivations }: Characteristic): boolean =>
  derivations.some(({ inputs }) => inputs.every((id) => known.has(id)));

/** What takes a figure as an input, by its id. */
const usersOf = oncePer(({ all }: Registry): ReadonlyMap<string, readonly Characteristic[]> => {
  const users = new Map<string, Characteristic[]>();
  for (const user of all) {
    for (const id of new Set(user.derivations.flatMap(({ inputs }) => inputs)))
      users.set(id, [...(users.get(id) ?? []), user]);
  }
  return users;
});

/** A shop's formula may take sizes of the engine alone. */
const ofNothing = oncePer(({ all }: Registry): readonly string[] =>
  all.filter(({ derivations }) => derivations.some(({ inputs }) => inputs.length === 0)).map(({ id }) => id),
);
