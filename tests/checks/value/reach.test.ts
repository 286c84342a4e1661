import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Registry, registryWith } from '../../../src/characteristics/registry.ts';
import { reachedFrom } from '../../../src/checks/value/reach.ts';
import { runs } from '../../propertyRuns.ts';

const registry = registryWith([]);
const ids = registry.all.map(({ id }) => id);

/** Goes over the whole registry again and again until nothing more can be worked out. */
function workedOutBySearch(
  { all }: Registry,
  read: readonly string[],
  given: readonly string[],
): Set<string> {
  const reached = new Set(read);
  const isThere = (id: string): boolean => reached.has(id) || given.includes(id);
  for (let before = -1; before < reached.size; ) {
    before = reached.size;
    for (const { id, derivations } of all)
      if (derivations.some(({ inputs }) => inputs.every(isThere))) reached.add(id);
  }
  return reached;
}

describe('what can be worked out of what was read', () => {
  it('is found from the readings as a search of the whole registry finds it', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...ids), { maxLength: 60 }),
        fc.uniqueArray(fc.constantFrom(...ids), { maxLength: 20 }),
        (read, given) => {
          const expected = workedOutBySearch(registry, read, given);
          expect([...reachedFrom(registry, read, given)].sort()).toEqual([...expected].sort());
        },
      ),
      runs(300),
    );
  });

  it('is nothing where nothing was read', () => expect(reachedFrom(registry, [], []).size).toBe(0));

  it('takes what other sessions give for an input, and not for a reading', () => {
    const shells = ['main_bearing_bore', 'main_journal_diameter'];
    expect(reachedFrom(registry, [], shells)).toContain('main_bearing_clearance');
    expect(reachedFrom(registry, [], shells)).not.toContain('main_bearing_bore');
    expect(reachedFrom(registry, ['main_bearing_bore'], [])).not.toContain('main_bearing_clearance');
  });
});
