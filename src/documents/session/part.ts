import { didYouMean } from '../../diagnostic/suggestion.ts';
import { ENGINE, type Family, STEP } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { findPosition } from '../../layout/readKey.ts';
import { type DocumentContext, report } from '../amount.ts';
import type { Measures } from '../measure.ts';
import type { Named } from '../yaml/access.ts';

/** A part of the engine that work was done on, as far as readings know it. */
export interface Part {
  /** What the ids begin with of everything that is measured of it, such as `cylinder_`. */
  readonly begins: readonly string[];
  /** One position of a family; undefined for all of them. */
  readonly at: Position | undefined;
}

const CRANKSHAFT: Part = {
  begins: ['main_journal_', 'crankpin_', 'crankshaft_', 'thrust_journal_'],
  at: undefined,
};

/** `cylinder 3`, `main journal flywheel end`, `pistons`, `thrust journal`, `crankshaft`; else a report. */
export function readPart(
  { name, span }: Named,
  measures: Measures,
  layout: Layout,
  context: DocumentContext,
): Part | undefined {
  const words = name.trim().toLowerCase().split(/[ _]+/);
  if (words.join(' ') === 'crankshaft') return CRANKSHAFT;
  const whole = wholePart(words, measures, layout);
  if (whole !== undefined) return whole;
  const known = partsOf(measures);
  // The longest name first: `main journal 3` is no position of `main`.
  for (let length = words.length - 1; length > 0; length--) {
    const part = words.slice(0, length).join('_');
    const family = known.get(part);
    if (family === undefined) continue;
    const key = words.slice(length).join(' ');
    const position = positionCalled(key, family, layout);
    if (position !== undefined) return { begins: [`${part}_`], at: position };
    // Of `main flywheel end` the longer name may not be a part; of `main journal 9` it is, and has no 9.
    const names = layout.positionsOf(family);
    const help =
      family === ENGINE
        ? 'there is but one: leave out what follows its name'
        : names.length === 0
          ? `its layout names no ${family}: add it to layout in the engine document`
          : `it has ${names.map(({ name: each }) => each).join(', ')}`;
    return report(
      context,
      'unknown-position',
      span,
      `the engine has no ${part.replaceAll('_', ' ')} ${key}`,
      help,
    );
  }
  const names = [...known].flatMap(([part, family]) =>
    [undefined, ...layout.positionsOf(family)].map(
      (at) => `${part.replaceAll('_', ' ')}${at === undefined ? 's' : ` ${at.name}`}`,
    ),
  );
  const help =
    'name what is measured, such as cylinder 3, main journal 1, pistons or crankshaft; other work goes into a note';
  return report(
    context,
    'value',
    span,
    `nothing that is measured is called ${name}`,
    didYouMean(name.toLowerCase(), ['crankshaft', ...names]) ?? help,
  );
}

/** `pistons` are all of them; `thrust journal` and the like an engine has but once. */
function wholePart(words: readonly string[], measures: Measures, layout: Layout): Part | undefined {
  const name = words.join('_');
  const families = partsOf(measures);
  if (families.get(name) === ENGINE) return { begins: [`${name}_`], at: undefined };
  const one = name.replace(/s$/, '');
  const family = one === name ? undefined : families.get(one);
  return family === undefined || layout.positionsOf(family).length === 0
    ? undefined
    : { begins: [`${one}_`], at: undefined };
}

/** Every beginning of an id by whole words, with the family in which it is first measured. */
function partsOf(measures: Measures): ReadonlyMap<string, Family> {
  const parts = new Map<string, Family>();
  for (const id of measures.ids()) {
    const family = measures.find(id)?.family;
    if (family === undefined || family === STEP) continue;
    const words = id.split('_');
    for (let length = 1; length < words.length; length++) {
      const part = words.slice(0, length).join('_');
      if (!parts.has(part)) parts.set(part, family);
    }
  }
  return parts;
}

/** Work is written as people talk: `1l` for 1L. */
function positionCalled(key: string, family: Family, layout: Layout): Position | undefined {
  const names = layout
    .positionsOf(family)
    .flatMap(({ name, label }) => [name, ...(label === undefined ? [] : [label])]);
  const written = names.find((name) => name.toLowerCase() === key);
  return written === undefined ? undefined : findPosition(layout, family, written);
}
