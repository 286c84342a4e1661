import { alignmentDistance, didYouMean } from '../../diagnostic/suggestion.ts';
import type { Layout } from '../../layout/layout.ts';
import { isPlural, type Part, type Parts, wordsOf } from '../../layout/part.ts';
import { namesBank, type PartAt, partAt, readPart } from '../../layout/readPart.ts';
import { type DocumentContext, report } from '../amount.ts';
import { positionHelp } from '../engine/checkPosition.ts';
import type { Named } from '../yaml/access.ts';

/** What a session speaks of parts by. */
export interface KnownParts {
  readonly parts: Parts;
  readonly layout: Layout;
}

/**
 * The parts that words name. A position that the engine has not is reported, and so is a slip in the name of a part; any
 * other words are the shop's own, for what is no part that is measured.
 */
export function readParts(named: Named, known: KnownParts, context: DocumentContext): readonly PartAt[] {
  const reported = context.problems.length;
  const found = partsNamed(named, known, context);
  if (found.length === 0 && context.problems.length === reported) reportSlip(named, known.parts, context);
  return found;
}

function partsNamed({ name, span }: Named, known: KnownParts, context: DocumentContext): readonly PartAt[] {
  const meaning = readPart(name, known.parts, known.layout);
  if (meaning.kind === 'parts') return meaning.at;
  if (meaning.kind === 'nowhere') reportNowhere(meaning.part, { name: meaning.key, span }, known, context);
  return [];
}

/** Words that are one letter off the name of a part. Of short words other things are called: a cap, a can. */
function reportSlip({ name, span }: Named, parts: Parts, context: DocumentContext): void {
  const said = withoutPosition(name);
  const meant = parts.all.flatMap(wordsOf).find((word) => word.length > 4 && isOneOff(said, word));
  if (meant === undefined) return;
  const help = `did you mean ${meant}? if it is something else, describe it in other words`;
  report(context, 'value', span, `no part is called ${name}`, help);
}

/** Most words are told apart by their lengths, which takes no time. */
const isOneOff = (said: string, word: string): boolean =>
  Math.abs(said.length - word.length) <= 1 && alignmentDistance(said, word) === 1;

const withoutPosition = (name: string): string =>
  name
    .toLowerCase()
    .split(/[\s_-]+/)
    .filter((word) => !/\d|^(?:upper|lower|half)$/.test(word))
    .join(' ');

/** The same parts at positions that stand beside their name. */
export const atPositions = (
  all: readonly PartAt[],
  keys: readonly Named[],
  known: KnownParts,
  context: DocumentContext,
): readonly PartAt[] =>
  keys.length === 0
    ? all
    : keys.flatMap((key) => {
        const found = all.flatMap(({ part }) => partAt(part, key.name, known.parts, known.layout));
        const [first] = all;
        if (found.length === 0 && first !== undefined) reportNowhere(first.part, key, known, context);
        return found;
      });

function reportNowhere(
  part: Part,
  { name, span }: Named,
  { parts, layout }: KnownParts,
  context: DocumentContext,
): void {
  const placed = parts.within(part).find(({ family }) => !family.isSingle);
  const isOfBank = part.family.isSingle && namesBank(name, layout);
  const help = isOfBank
    ? `write ${part.label} alone, and say under \`is:\` or in a note which one it is`
    : placed === undefined
      ? 'there is only one: leave out what follows its name'
      : positionHelp(layout, placed.family, name);
  report(context, 'unknown-position', span, `the engine has no ${part.label} ${name}`, help);
}

/** Work has to be on a part that is measured, and to say on which of them. */
export function readWorkedParts(
  named: Named,
  known: KnownParts,
  context: DocumentContext,
): readonly PartAt[] {
  const reported = context.problems.length;
  const found = partsNamed(named, known, context);
  if (
    context.problems.length > reported ||
    (found.length > 0 && !found.some(({ isOneOfMany }) => isOneOfMany))
  )
    return found;
  const help =
    'name what is measured, such as cylinder 3, main journal 1, pistons or crankshaft; other work goes into a note';
  const names = known.parts.all.flatMap((part) => namesOf(part, known.layout));
  report(
    context,
    'value',
    named.span,
    `no part that is measured is called ${named.name}`,
    didYouMean(named.name.toLowerCase(), names) ?? help,
  );
  return [];
}

/** Every way to name all of a part, or one of it. */
const namesOf = (part: Part, layout: Layout): readonly string[] =>
  part.family.isSingle
    ? wordsOf(part)
    : wordsOf(part).flatMap((word) =>
        isPlural(word, part) ? [word] : layout.positionsOf(part.family).map(({ name }) => `${word} ${name}`),
      );
