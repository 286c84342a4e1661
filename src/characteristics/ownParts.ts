import type { OwnCharacteristic } from '../documents/engine/ownCharacteristic.ts';
import { namesIn } from '../formula/names.ts';
import { type Part, wordsOf } from '../layout/part.ts';
import type { BuiltIn } from './characteristic.ts';

/** What a shop's own characteristics are measured of: parts that are known, and those it names itself. */
export interface OwnParts {
  readonly parts: readonly Part[];
  /** The ids of the parts of one, that which it is of first. */
  readonly partsOf: (own: OwnCharacteristic) => readonly string[];
}

export function ownParts(own: readonly OwnCharacteristic[], built: BuiltIn): OwnParts {
  const parts = new Map<string, Part>();
  const called = (word: string): Part | undefined =>
    [...built.parts, ...parts.values()].find((part) => wordsOf(part).includes(plain(word)));
  for (const each of own) {
    for (const word of each.parts) if (called(word) === undefined) parts.set(plain(word), named(word, each));
  }
  const stated = (each: OwnCharacteristic): readonly string[] =>
    each.parts.flatMap((word) => called(word)?.id ?? []);
  return {
    parts: [...parts.values()],
    partsOf: (each) => [...new Set([...stated(each), ...ofInputs(each, own, stated, built)])],
  };
}

/** A formula depends on the parts of all that it is worked out from; it may lead back to itself. */
function ofInputs(
  each: OwnCharacteristic,
  own: readonly OwnCharacteristic[],
  stated: (each: OwnCharacteristic) => readonly string[],
  { characteristics }: BuiltIn,
): readonly string[] {
  const reached = new Set([each]);
  const found: string[] = [];
  for (const one of reached) {
    found.push(...stated(one));
    for (const name of one.formula === undefined ? [] : namesIn(one.formula)) {
      const other = own.find(({ id }) => id === name);
      const ours = characteristics.find(({ id }) => id === name);
      if (other !== undefined) reached.add(other);
      else if (ours !== undefined) found.push(...(ours.of === undefined ? [] : [ours.of]), ...ours.dependsOn);
    }
  }
  return found;
}

const plain = (word: string): string =>
  word
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ');

/** A part that only the shop knows is where its characteristic is measured. */
const named = (word: string, { family }: OwnCharacteristic): Part => ({
  id: plain(word),
  label: plain(word),
  plural: `${plain(word)}s`,
  also: [],
  family,
  material: [],
  assembledFrom: [],
  carries: [],
});
