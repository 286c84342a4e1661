import type { Characteristic } from '../../characteristics/characteristic.ts';
import { idsCalled } from '../../documents/alsoCalled.ts';
import { unknownMeasure } from '../../documents/measure.ts';
import { UsageError } from '../usage.ts';

interface Known {
  readonly all: readonly Characteristic[];
  readonly ids: () => readonly string[];
}

/** A characteristic by its id, its label as tables print it, or another word of the trade that means it alone. */
export function findMeasure(word: string, known: Pick<Known, 'all'>): Characteristic | undefined {
  const [id, ...others] = idsCalled(word);
  const otherwise = others.length > 0 ? undefined : known.all.find((each) => each.id === id);
  return measureCalled(word, known) ?? otherwise;
}

/** By its id, or by its label; undefined where none is called so. */
export const measureCalled = (word: string, { all }: Pick<Known, 'all'>): Characteristic | undefined =>
  all.find(({ id }) => id === word) ??
  all.find(({ id, label }) => [id, label].some((each) => plain(each) === plain(word)));

/** Underscores, hyphens and blanks are one. */
const plain = (text: string): string => text.toLowerCase().replaceAll(/[_\s-]+/g, ' ');

export function measureNamed(word: string, known: Known): Characteristic {
  const found = findMeasure(word, known);
  if (found !== undefined) return found;
  const { message, help } = unknownMeasure(word, known);
  throw new UsageError(message, help);
}
