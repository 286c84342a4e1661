import type { Place } from '../../diagnostic/place.ts';
import { type Part, type Parts, wordsOf } from '../../layout/part.ts';
import { type PartAt, partAt, readPart } from '../../layout/readPart.ts';
import type { DocumentContext } from '../amount.ts';
import { type Grade, parseGrade } from '../grades/grade.ts';
import { reportWrongWay } from '../grades/way.ts';
import type { KnownParts } from '../session/part.ts';
import type { Named } from '../yaml/access.ts';
import { OPERATIONS, type Operation } from './operations.ts';
import { isCut } from './settings.ts';

/** Work as a customer agrees to it or a machine shop is given it: `grind mains 1 to 3 to 0.010 under`. */
export interface NamedWork {
  /** As written. */
  readonly name: string;
  /** Undefined where the words begin with nothing that is done to an engine. */
  readonly operation: Operation | undefined;
  /** None where the words name no part of the engine. */
  readonly parts: readonly PartAt[];
  readonly grade: Grade | undefined;
  readonly place: Place;
}

export function readNamedWork(named: Named, known: KnownParts, context: DocumentContext): NamedWork {
  const { name, span } = named;
  const [, words = plainName(name), size] = WITH_SIZE.exec(plainName(name)) ?? [];
  const [operation, rest] = operationOf(words);
  const parts = operation === undefined ? [] : partsNamed(rest, known);
  const grade = size === undefined ? undefined : parseGrade(size, span, context);
  if (grade !== undefined)
    for (const { part } of parts) reportWrongWay(part, grade, span, known.parts, context);
  return { name, operation, parts, grade, place: context.source.place(span) };
}

/** Two ways to write a job are one: capitals, spaces and `_` make no difference. */
export const plainName = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, ' ');

const WITH_SIZE =
  /^(.*?),? (?:to )?((?:\d+(?:\.\d+)?|\.\d+)(?: (?:in|mm|thou|um))? (?:under|over))(?: (?:standard|size))?$/;

/** What a shop says for it as well. */
const ALSO: readonly (readonly [string, Operation])[] = [
  ['regrind', 'grind'],
  ['rebore', 'bore'],
  ['replace', 'renew'],
  ['change', 'renew'],
  ['new', 'renew'],
  ['skim', 'surface'],
  ['resurface', 'surface'],
];

/** The longest first: `machine or renew` begins as nothing else does, `measure again` does. */
const BEGINNINGS: readonly (readonly [string, Operation])[] = [
  ...OPERATIONS.map((each) => [each, each] as const),
  ...ALSO,
].sort(([a], [b]) => b.length - a.length);

function operationOf(words: string): readonly [Operation | undefined, string] {
  const found = BEGINNINGS.find(([begin]) => words === begin || words.startsWith(`${begin} `));
  return found === undefined ? [undefined, words] : [found[1], words.slice(found[0].length + 1)];
}

/** Parts with their positions in lists and ranges; none where any of the words means nothing. */
function partsNamed(words: string, known: KnownParts): readonly PartAt[] {
  const whole = withPlaces(words, known);
  if (whole.length > 0) return whole;
  const pieces = words.split(BETWEEN).map((piece) => {
    const found = withPlaces(piece, known);
    const meaning = readPart(piece, known.parts, known.layout);
    return found.length > 0 || meaning.kind !== 'parts' ? found : meaning.at;
  });
  return pieces.some(({ length }) => length === 0) ? [] : pieces.flat();
}

const BETWEEN = /, ?| and | & /;

/** `main journals 1 to 3, 5`: the longest name of a part with places behind it that the engine has. */
function withPlaces(text: string, { parts, layout }: KnownParts): readonly PartAt[] {
  const words = text.split(' ');
  for (let count = words.length - 1; count > 0; count--) {
    const name = words.slice(0, count).join(' ');
    const named = parts.all.filter((each) => wordsOf(each).includes(name));
    const found = named.flatMap((part) => placesOf(part, words.slice(count).join(' '), { parts, layout }));
    if (found.length > 0) return found;
  }
  return [];
}

function placesOf(part: Part, text: string, { parts, layout }: KnownParts): readonly PartAt[] {
  const found = text.split(BETWEEN).map((piece) => partAt(part, piece, parts, layout));
  return found.some(({ length }) => length === 0) ? [] : found.flat();
}

type Cover = 'all' | 'some' | 'none';

/** How much of a part at some of its positions is named: of a part without positions all or nothing. */
export function coverOf(
  at: readonly PartAt[],
  part: Part,
  positions: PartAt['positions'],
  parts: Parts,
): Cover {
  const about = at.filter((each) => parts.within(each.part).includes(part));
  if (about.length === 0) return 'none';
  if (about.some((each) => each.positions.length === 0)) return 'all';
  if (positions.length === 0) return 'some';
  const covered = positions.filter((position) => about.some((each) => each.positions.includes(position)));
  if (covered.length === 0) return 'none';
  return covered.length === positions.length ? 'all' : 'some';
}

/** Whether a yes is to what is done: what may be machined or renewed may be either. */
export const isDoneBy = ({ operation: agreed }: NamedWork, done: Operation | undefined): boolean =>
  agreed !== undefined &&
  (agreed === done || (agreed === EITHER && isOneOfTwo(done)) || (done === EITHER && isOneOfTwo(agreed)));

const EITHER: Operation = 'machine or renew';
const isOneOfTwo = (each: Operation | undefined): boolean => each === 'machine' || each === 'renew';

/** What was agreed to of work that is ordered: the same words, or the same done to the same places or to more, makes all of it. */
export function agreedOf(
  ordered: NamedWork,
  agreed: readonly NamedWork[],
  known: KnownParts,
): { readonly isAll: boolean; readonly items: readonly NamedWork[] } {
  const worked = workedOn(ordered, known.parts);
  const coversOf = (at: readonly PartAt[]): readonly Cover[] =>
    worked.map(({ part, positions }) => coverOf(at, part, placesMeant(part, positions, known), known.parts));
  const items = agreed.filter(
    (each) =>
      plainName(each.name) === plainName(ordered.name) ||
      (isDoneBy(each, ordered.operation) && coversOf(each.parts).some((cover) => cover !== 'none')),
  );
  const covers = coversOf(items.flatMap(({ parts }) => parts));
  const isSaid = items.some(({ name }) => plainName(name) === plainName(ordered.name));
  return { isAll: isSaid || (covers.length > 0 && covers.every((cover) => cover === 'all')), items };
}

/** Who names no place means all of them. */
export const placesMeant = (
  { family }: Part,
  positions: PartAt['positions'],
  { layout }: Pick<KnownParts, 'layout'>,
): PartAt['positions'] => (positions.length > 0 ? positions : layout.positionsOf(family));

const CUTTING_A_SURFACE: Readonly<Partial<Record<Operation, 'under' | 'over'>>> = {
  grind: 'under',
  bore: 'over',
};

/** What is ground of a main or of a crankshaft is its journals. */
export function workedOn({ operation, parts: at }: NamedWork, parts: Parts): readonly PartAt[] {
  const made = operation && CUTTING_A_SURFACE[operation];
  const surfaces = at.flatMap((whole) =>
    parts
      .within(whole.part)
      .filter((part) => made !== undefined && isCut(part) && part.sized?.made === made)
      .map((part) => ({ ...whole, part })),
  );
  return surfaces.length > 0 ? surfaces : at;
}
