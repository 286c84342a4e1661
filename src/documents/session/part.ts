import { didYouMean } from '../../diagnostic/suggestion.ts';
import { ENGINE } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import { isPlural, type Part, type Parts, wordsOf } from '../../layout/part.ts';
import { type PartAt, partAt, readPart } from '../../layout/readPart.ts';
import { type DocumentContext, report } from '../amount.ts';
import { positionHelp } from '../engine/checkPosition.ts';
import type { Named } from '../yaml/access.ts';

/** What a session speaks of parts by. */
export interface KnownParts {
  readonly parts: Parts;
  readonly layout: Layout;
}

/** The parts that words name, at positions that are told where the engine has none such; none for words of the shop's own. */
export function readParts(
  { name, span }: Named,
  { parts, layout }: KnownParts,
  context: DocumentContext,
): readonly PartAt[] {
  const meaning = readPart(name, parts, layout);
  if (meaning.kind === 'parts') return meaning.at;
  if (meaning.kind === 'nowhere') reportNowhere(meaning.part, { name: meaning.key, span }, layout, context);
  return [];
}

/** The same parts at positions that stand beside their name. */
export const atPositions = (
  all: readonly PartAt[],
  keys: readonly Named[],
  { parts, layout }: KnownParts,
  context: DocumentContext,
): readonly PartAt[] =>
  keys.length === 0
    ? all
    : keys.flatMap((key) => {
        const found = all.flatMap(({ part }) => partAt(part, key.name, parts, layout));
        const [first] = all;
        if (found.length === 0 && first !== undefined) reportNowhere(first.part, key, layout, context);
        return found;
      });

function reportNowhere(part: Part, { name, span }: Named, layout: Layout, context: DocumentContext): void {
  const help =
    part.family === ENGINE && part.assembledFrom.length === 0
      ? 'there is but one: leave out what follows its name'
      : positionHelp(layout, part.family, name);
  report(context, 'unknown-position', span, `the engine has no ${part.label} ${name}`, help);
}

/** Work has to be on a part that is measured, and to say on which of them. */
export function readWorkedParts(
  named: Named,
  known: KnownParts,
  context: DocumentContext,
): readonly PartAt[] {
  const found = readParts(named, known, context);
  const isTold = readPart(named.name, known.parts, known.layout).kind === 'nowhere';
  if (isTold || (found.length > 0 && !found.some(({ isOneOfMany }) => isOneOfMany))) return found;
  const help =
    'name what is measured, such as cylinder 3, main journal 1, pistons or crankshaft; other work goes into a note';
  const names = known.parts.all.flatMap((part) => namesOf(part, known.layout));
  report(
    context,
    'value',
    named.span,
    `nothing that is measured is called ${named.name}`,
    didYouMean(named.name.toLowerCase(), names) ?? help,
  );
  return [];
}

/** Every way to name all of a part, or one of it. */
const namesOf = (part: Part, layout: Layout): readonly string[] =>
  part.family === ENGINE
    ? wordsOf(part)
    : wordsOf(part).flatMap((word) =>
        isPlural(word, part) ? [word] : layout.positionsOf(part.family).map(({ name }) => `${word} ${name}`),
      );
