import { didYouMean } from '../diagnostic/suggestion.ts';
import type { Axis } from './axis.ts';
import { type Family, familyOf } from './family.ts';
import type { Layout } from './layout.ts';
import type { Position } from './position.ts';
import { positionsWith } from './readPart.ts';
import { relate } from './relate.ts';

/** What people say for an axis, without spaces and stops. */
const WORDS: Readonly<Partial<Record<Axis, readonly string[]>>> = {
  main: ['main', 'mainjournal', 'mainbearing', 'mainhousing', 'journal'],
  crankpin: ['crankpin', 'pin', 'rodjournal', 'throw'],
  cylinder: ['cylinder', 'cyl', 'bore', 'piston', 'rod', 'no'],
  'cam bearing': ['cambearing', 'camjournal', 'cam'],
  lobe: ['lobe', 'camlobe'],
  bank: ['bank', 'head', 'deck'],
};

/**
 * "did you mean 5 or 6?" of a position that a family has none of: by what people say for it (`cyl 3`, `crank pin 3`), of a
 * rod by its crankpin and the other way round, else by the nearest of the names that may be meant.
 */
export function positionMeant(
  text: string,
  layout: Layout,
  family: Family,
  names: readonly string[],
): string | undefined {
  const meant = spokenPositions(text, layout, family)
    .map(({ name }) => name)
    .filter((name) => names.includes(name));
  return meant.length > 0 ? `did you mean ${meant.join(' or ')}?` : didYouMean(text, names);
}

function spokenPositions(text: string, layout: Layout, family: Family): readonly Position[] {
  const [, words = '', name = ''] = /^(.+?)[\s.]*([^\s.]+)$/.exec(text.trim()) ?? [];
  const said = words.toLowerCase().replace(/[\s._-]+/g, '');
  return (Object.entries(WORDS) as [Axis, readonly string[]][])
    .filter(([, known]) => known.includes(said))
    .flatMap(([axis]) => along(axis, name, layout, family));
}

/** Those of the family that have the name along the axis, else those that belong to what has it. */
function along(axis: Axis, name: string, layout: Layout, family: Family): readonly Position[] {
  if (family.axes.includes(axis)) {
    const coordinates = family.axes.map((each) => (each === axis ? name : undefined));
    return positionsWith(coordinates, family, layout);
  }
  const at = layout.at(familyOf(axis), [name]);
  return (at && relate(layout, at, family)) ?? [];
}
