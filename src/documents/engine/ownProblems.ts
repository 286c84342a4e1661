import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import { didYouMean } from '../../diagnostic/suggestion.ts';
import { namesIn, referencesIn, type UsedReference } from '../../formula/names.ts';
import type { ParsedFormula } from '../../formula/tree.ts';
import type { Layout } from '../../layout/layout.ts';
import { unitsOf } from '../../quantity/units.ts';
import type { Measures } from '../measure.ts';
import { unknownName } from '../unknownName.ts';
import type { OwnCharacteristic } from './ownCharacteristic.ts';
import { type FormulaRefusal, reachProblem } from './reachProblem.ts';

/**
 * What is wrong with a shop's own characteristics before anything is read: names that nothing goes by, and formulas of
 * which nothing could ever come on an engine of this layout.
 */
export function ownProblems(
  owns: readonly OwnCharacteristic[],
  measures: Measures,
  layout: Layout | undefined,
): readonly Diagnostic[] {
  const formulas = new Map(owns.map(({ id, formula }) => [id, formula]));
  const followed = new Map(owns.map(({ id, after }) => [id, after]));
  return owns.flatMap((own) => [
    ...afterProblem(own, followed, measures),
    ...(own.formula === undefined ? [] : formulaProblem(own, own.formula, { measures, layout, formulas })),
  ]);
}

function afterProblem(
  { id, after, places }: OwnCharacteristic,
  followed: ReadonlyMap<string, string | undefined>,
  measures: Measures,
): readonly Diagnostic[] {
  if (after === undefined) return [];
  if (measures.find(after) === undefined) {
    const help = didYouMean(after, measures.ids());
    return [diagnostic('unknown-measure', places.after, `unknown characteristic ${after}`, help)];
  }
  const next = (of: string): readonly string[] => [followed.get(of) ?? []].flat();
  if (circleFrom(id, next) === undefined) return [];
  const help = 'name one that does not come after it';
  return [diagnostic('value', places.after, `${id} would come after itself`, help)];
}

interface Around {
  readonly measures: Measures;
  readonly layout: Layout | undefined;
  readonly formulas: ReadonlyMap<string, ParsedFormula | undefined>;
}

function formulaProblem(
  own: OwnCharacteristic,
  formula: ParsedFormula,
  around: Around,
): readonly Diagnostic[] {
  const place = own.places.formula;
  const refusal = refusalOf(own, formula, around);
  if (refusal !== undefined) {
    const message = `in the formula ${formula.text}: ${refusal.message}`;
    return [diagnostic('formula', place, message, refusal.help)];
  }
  // Its numbers are plain numbers too: without a unit it could not be worked out.
  const quantities = namesIn(formula).map((name) => around.measures.find(name)?.quantity ?? 'length');
  return [...new Set([own.quantity, ...quantities])]
    .filter((quantity) => !own.units.has(quantity) && unitsOf(quantity).length > 1)
    .map((quantity) => {
      const [first] = unitsOf(quantity);
      const message = `in the formula ${formula.text} the unit of a ${quantity} is not stated`;
      return diagnostic(
        'no-unit',
        place,
        message,
        `write \`units: { ${quantity}: ${first?.name} }\` in this document`,
      );
    });
}

function refusalOf(
  own: OwnCharacteristic,
  formula: ParsedFormula,
  { measures, layout, formulas }: Around,
): FormulaRefusal | undefined {
  const unknown = unknownName(formula, measures);
  if (unknown !== undefined) return unknown;
  const circle = circleFrom(own.id, (id) => {
    const used = formulas.get(id);
    return used === undefined ? [] : namesIn(used);
  });
  if (circle !== undefined) {
    return { message: `${circle.join(' → ')} goes in a circle`, help: 'take one of them as it is read' };
  }
  for (const reference of referencesIn(formula)) {
    const refusal = referenceProblem(reference, own, measures, layout);
    if (refusal !== undefined) return refusal;
  }
  return undefined;
}

function referenceProblem(
  reference: UsedReference,
  own: OwnCharacteristic,
  measures: Measures,
  layout: Layout | undefined,
): FormulaRefusal | undefined {
  const { name, text, at } = reference;
  const measure = measures.find(name);
  if (measure === undefined) {
    return at === undefined
      ? undefined
      : { message: `${name} is a size and has no positions`, help: `write ${name}` };
  }
  if (measure.quantity === 'pass or fail') {
    return { message: `${text} is a test, and a formula needs numbers` };
  }
  return layout && reachProblem(reference, own.family, measure.family, layout);
}

/** The way from a name back to itself, by the names that each leads to. */
function circleFrom(
  start: string,
  next: (id: string) => readonly string[],
  way: readonly string[] = [start],
  seen = new Set<string>(),
): readonly string[] | undefined {
  for (const id of next(way.at(-1) ?? start)) {
    if (id === start) return [...way, id];
    if (seen.has(id)) continue;
    seen.add(id);
    const found = circleFrom(start, next, [...way, id], seen);
    if (found !== undefined) return found;
  }
  return undefined;
}
