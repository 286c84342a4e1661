import { nearest } from '../diagnostic/suggestion.ts';
import { BANK, ENGINE, type Family } from './family.ts';
import type { Layout } from './layout.ts';
import { isPlural, type Part, type Parts } from './part.ts';
import { fullName, type Position } from './position.ts';
import { type Coordinates, readKey } from './readKey.ts';

/** A part at some of its positions, or at some of those that it is called by; with no positions, all of it. */
export interface PartAt {
  readonly part: Part;
  readonly positions: readonly Position[];
  /** Named as one, where there are several, and not which. */
  readonly isOneOfMany?: true;
  /** It was cut itself, and what it carries is as it was. */
  readonly isCutAlone?: true;
}

export const cutAlone = (at: PartAt): PartAt => ({ ...at, isCutAlone: true });

/** What words say of parts: some of them, something else such as a valve cover, or one at a position that there is not. */
export type PartMeaning =
  | { readonly kind: 'parts'; readonly at: readonly PartAt[] }
  | { readonly kind: 'unknown' }
  | { readonly kind: 'nowhere'; readonly part: Part; readonly key: string };

/**
 * The parts that words name: `pistons`, `cylinder 3`, `main journal flywheel end`, `main 3 shell lower`, `top rings`,
 * `pistons 1 to 3`, `liners and pistons`. Capitals, `_` and the half of a pair of shells make no difference.
 */
export function readPart(words: string, parts: Parts, layout: Layout): PartMeaning {
  const texts = plain(words).split(/ and |, ?|; ?| & /);
  let named: Part | undefined;
  const found = texts.map((text) => {
    const one = orPlaceOf(named, text, readOne(text, parts, layout));
    if (one.kind === 'parts') named = wholeAmong(one.at, parts);
    return one;
  });
  const nowhere = found.find(({ kind }) => kind === 'nowhere');
  const at = found.flatMap((each) => (each.kind === 'parts' ? each.at : []));
  return nowhere ?? (at.length === 0 ? { kind: 'unknown' } : { kind: 'parts', at });

  /** The 3 of `pistons 1, 3` stands behind a name as well. */
  function orPlaceOf(before: Part | undefined, text: string, one: PartMeaning): PartMeaning {
    const places = one.kind === 'unknown' && before ? partAt(before, text, parts, layout) : [];
    return places.length === 0 ? one : { kind: 'parts', at: places };
  }
}

/** Of `rod 2`, which is the rod with its big end, the rod. */
const wholeAmong = (at: readonly PartAt[], parts: Parts): Part | undefined =>
  (at.find(({ part }) => at.every((each) => parts.within(part).includes(each.part))) ?? at.at(-1))?.part;

/**
 * The positions of a part that a key names, or those that it is called by: head 1 is no guide of cylinder 1; of a part that is
 * there but once and called by none, of what it is assembled from.
 */
export function partAt(part: Part, key: string, parts: Parts, layout: Layout): readonly PartAt[] {
  const callers = part.calledBy === undefined ? [] : [part.family, part.calledBy];
  const called = callers
    .map((family) => positionsCalled(key, family, layout))
    .find(({ length }) => length > 0);
  if (called !== undefined) return [{ part, positions: called }];
  return parts.within(part).flatMap((each) => {
    // Of a vee no head is called by one of its valves.
    if (!part.family.isSingle && each.family !== part.family) return [];
    const positions = positionsCalled(key, each.family, layout);
    return positions.length === 0 ? [] : [{ part: each, positions }];
  });
}

const plain = (words: string): string => words.trim().replace(/[\s_-]+/g, ' ');

const withoutHalf = (text: string): string =>
  text.replace(/ (?:upper|lower)(?: half)?\b|^(?:upper|lower) /i, '');

/** The longest name that leaves a position: `main journal 3` is no position of `main`. */
function readOne(text: string, parts: Parts, layout: Layout): PartMeaning {
  const splits = [...new Set([text, withoutHalf(text)])]
    .flatMap((each) =>
      parts.namesIn(each.toLowerCase()).flatMap(({ part, word }) => splitBy(word, each, part)),
    )
    .sort((a, b) => b.word.length - a.word.length);
  for (const { part, word, key } of splits) {
    if (key === '' || isEvery(key, word, part)) return { kind: 'parts', at: [wholePart(part, word)] };
    const at = partAt(part, key, parts, layout);
    if (at.length > 0) return { kind: 'parts', at };
  }
  const longest = splits.find(({ part, key }) => isLikePosition(key, part.family, layout));
  return longest === undefined
    ? { kind: 'unknown' }
    : { kind: 'nowhere', part: longest.part, key: longest.key };
}

/** Of what there are several. */
const isEvery = (key: string, word: string, part: Part): boolean =>
  /^(?:all|both)$/i.test(key) && !part.family.isSingle && isPlural(word, part);

/** Numbers and names of the axes, or nearly the name of a position: the cover of a valve cover is none. */
function isLikePosition(key: string, family: Family, layout: Layout): boolean {
  const along = family.axes.flatMap((axis) => [axis, ...layout.namesAlong(axis)]);
  const names = layout.positionsOf(family).flatMap(({ name, label = name }) => [name, label]);
  return (
    key.split(' ').every((word) => /\d|^to$/.test(word) || along.includes(word)) ||
    namesBank(key, layout) ||
    (!family.isSingle && /^[a-z]$/i.test(key)) ||
    nearest(key, names) !== undefined
  );
}

/** The right camshaft of a vee is one that it has, and that nobody can place. */
export const namesBank = (key: string, layout: Layout): boolean =>
  layout.positionsOf(BANK).length > 1 && positionsCalled(key, BANK, layout).length > 0;

const wholePart = (part: Part, word: string): PartAt =>
  part.family === ENGINE || isPlural(word, part)
    ? { part, positions: [] }
    : { part, positions: [], isOneOfMany: true };

interface Split {
  readonly part: Part;
  readonly word: string;
  /** What is left of the text. */
  readonly key: string;
}

/** The name at the beginning, at the end, or around the position: `main shell 3`, `top ring`, `main 3 shell`. */
function splitBy(word: string, text: string, part: Part): readonly Split[] {
  const small = text.toLowerCase();
  if (small === word) return [{ part, word, key: '' }];
  const keys: string[] = [];
  if (small.startsWith(`${word} `)) keys.push(text.slice(word.length + 1));
  if (small.endsWith(` ${word}`)) keys.push(text.slice(0, -word.length - 1));
  const [first = '', ...rest] = word.split(' ');
  const last = ` ${rest.join(' ')}`;
  if (rest.length > 0 && small.startsWith(`${first} `) && small.endsWith(last)) {
    keys.push(text.slice(first.length + 1, text.length - last.length));
  }
  return keys.filter((key) => key.trim() !== '').map((key) => ({ part, word, key }));
}

/** One of them, or `1 to 3` and `1-3` for those between as well. */
function positionsCalled(key: string, family: Family, layout: Layout): readonly Position[] {
  const called = positionsAt(key, family, layout);
  const [, from, to] = called.length > 0 ? [] : (RANGE.exec(key) ?? []);
  if (from === undefined || to === undefined) return called;
  const [first, last] = [from, to].map((end) => positionsAt(end, family, layout));
  if (first === undefined || last === undefined || first.length === 0 || last.length === 0) return [];
  const all = layout.positionsOf(family);
  const ends = [...first, ...last].map((position) => all.indexOf(position));
  return all.slice(Math.min(...ends), Math.max(...ends) + 1);
}

const RANGE = /^(.+?)(?: to | ?[-\u2013] ?)(.+)$/;

/** As people talk: `1l` for 1L, and `top` for every top ring. */
function positionsAt(key: string, family: Family, layout: Layout): readonly Position[] {
  const small = key.toLowerCase();
  for (const each of [key, small]) {
    const meaning = readKey(layout, family, each);
    if (meaning.kind === 'coordinates') return positionsWith(meaning.coordinates, family, layout);
  }
  return layout
    .positionsOf(family)
    .filter((position) =>
      [position.name, position.label ?? position.name, fullName(position)].some(
        (name) => name.toLowerCase() === small,
      ),
    );
}

/** `pistons` are all of them, `piston` is one and nobody says which. */
export const positionsMeant = (
  { part, positions, isOneOfMany }: PartAt,
  layout: Layout,
): readonly Position[] => (positions.length > 0 || isOneOfMany ? positions : layout.positionsOf(part.family));

/** All positions with these coordinates. */
export const positionsWith = (
  coordinates: Coordinates,
  family: Family,
  layout: Layout,
): readonly Position[] =>
  layout
    .positionsOf(family)
    .filter((position) =>
      coordinates.every((name, index) => name === undefined || name === position.coordinates[index]),
    );
