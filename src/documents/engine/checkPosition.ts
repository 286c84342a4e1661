import { didYouMean } from '../../diagnostic/suggestion.ts';
import type { Family } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import { positionMeant } from '../../layout/meant.ts';
import { type Position, spoken } from '../../layout/position.ts';
import {
  type Coordinates,
  isComplete,
  type KeyMeaning,
  noCoordinates,
  readKey,
} from '../../layout/readKey.ts';
import { positionsWith } from '../../layout/readPart.ts';
import { RESERVED } from '../../layout/reservedWords.ts';
import { type DocumentContext, report } from '../amount.ts';
import type { Entry } from '../yaml/node.ts';

type Key = Pick<Entry, 'key' | 'keySpan'>;

/** The position that a whole key names, reported where the engine has none of that name. */
export function checkPosition(
  entry: Key,
  layout: Layout,
  family: Family,
  context: DocumentContext,
): Position | undefined {
  const coordinates = checkKey(entry, layout, family, noCoordinates(family), context);
  if (coordinates === undefined) return undefined;
  return isComplete(coordinates)
    ? layout.at(family, coordinates)
    : reportIncomplete(entry, layout, family, coordinates, context);
}

/** What a key adds to the coordinates that are known, reported where it adds nothing or may be several things. */
export function checkKey(
  { key, keySpan }: Key,
  layout: Layout,
  family: Family,
  known: Coordinates,
  context: DocumentContext,
): Coordinates | undefined {
  const meaning = readKey(layout, family, key, known);
  if (meaning.kind === 'coordinates') return meaning.coordinates;
  const [message, help] = keyProblem(key, meaning, layout, family, known);
  return report(context, 'unknown-position', keySpan, message, help);
}

/** A position that lacks a coordinate. */
export function reportIncomplete(
  { key, keySpan }: Key,
  layout: Layout,
  family: Family,
  coordinates: Coordinates,
  context: DocumentContext,
): undefined {
  const [message, help] = incomplete(key, layout, family, coordinates);
  return report(context, 'unknown-position', keySpan, message, help);
}

function incomplete(
  key: string,
  layout: Layout,
  family: Family,
  coordinates: Coordinates,
): readonly [message: string, help: string] {
  const lacking = family.axes.filter((_, index) => coordinates[index] === undefined);
  const [first] = positionsWith(coordinates, family, layout);
  const names = (first?.written ?? lacking).filter((_, index) => coordinates[index] === undefined);
  return [
    `${spoken(family, coordinates)} needs its ${lacking.join(' and ')}`,
    `write it below, such as ${key}: { ${names.join(': { ')}: … }`,
  ];
}

function keyProblem(
  key: string,
  meaning: KeyMeaning,
  layout: Layout,
  family: Family,
  known: Coordinates,
): readonly [message: string, help: string] {
  if (family.isSingle) {
    return [
      'it is measured once an engine and has no positions',
      'write `value:` beside `measure:`, or leave the position out',
    ];
  }
  if (meaning.kind === 'unclear') {
    const readings = meaning.readings.map((each) => spoken(family, each));
    return [`${key} may be ${readings.join(' or ')}`, `write \`${readings[0]}\``];
  }
  const lacking = family.axes.filter((_, index) => known[index] === undefined);
  const isFirst = known.every((name) => name === undefined);
  if (!isFirst && RESERVED.has(key))
    return incomplete(known.flatMap((name) => name ?? []).join(' '), layout, family, known);
  return isFirst
    ? [`the engine has no ${family.name} ${key}`, positionHelp(layout, family, key)]
    : [
        `${spoken(family, known)} has no ${lacking.join(' or ')} ${key}`,
        positionHelp(layout, family, key, known),
      ];
}

/** The nearest name, else all there are, else where to write them. */
export function positionHelp(
  layout: Layout,
  family: Family,
  key: string,
  known: Coordinates = noCoordinates(family),
): string {
  const there = positionsWith(known, family, layout);
  if (there.length === 0)
    return `its layout names no ${family.name}: add it to layout in the engine document`;
  const rest = (names: readonly string[]): string =>
    names.filter((_, index) => known[index] === undefined).join(' ');
  const names = there.map(({ written }) => rest(written));
  const labels = there.flatMap(({ label }) => label ?? []);
  const isWhole = known.every((name) => name === undefined);
  const meant = isWhole
    ? positionMeant(key, layout, family, [...names, ...labels])
    : didYouMean(key, [...names, ...labels]);
  return meant ?? `it has ${names.join(', ')}`;
}
