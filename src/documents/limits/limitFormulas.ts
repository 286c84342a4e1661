import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import { evaluateFormula } from '../../formula/evaluate.ts';
import { formatFormula } from '../../formula/format.ts';
import { namesIn, referencesIn } from '../../formula/names.ts';
import { isFormulaProblem } from '../../formula/problem.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import { fromBase } from '../../quantity/units.ts';
import type { Amount } from '../amount.ts';
import { reachProblem } from '../engine/reachProblem.ts';
import type { Measures } from '../measure.ts';
import { BAND_NAMES, type LimitFormula } from './bands.ts';
import type { LimitEntry } from './limitEntry.ts';
import type { LimitsDocument } from './limits.ts';

/** What an engine gives the formulas of its limits. */
export interface FormulaGround {
  readonly sizes: ReadonlyMap<string, Amount>;
  readonly measures: Measures;
  readonly layout: Layout;
}

/**
 * Limits that are wrong before anything is measured: those that name what nothing relates to the position they limit,
 * and those that no reading has a part in and that come to nothing with the engine's sizes, such as `1 / (bore - 4)`
 * where the bore is 4.
 */
export const formulaProblems = (
  documents: readonly LimitsDocument[],
  ground: FormulaGround,
): readonly Diagnostic[] =>
  documents.flatMap(({ limits }) =>
    [...limits].flatMap(([id, { general, at }]) =>
      [general, ...at.map(({ entry }) => entry)]
        .flatMap(formulasOf)
        .flatMap((each) => unrelated(each, id, ground) ?? problemOf(each, ground) ?? []),
    ),
  );

/** A size that the engine states is the same everywhere and needs no relation. */
function unrelated(
  { formula, written, place }: LimitFormula,
  id: string,
  { sizes, measures, layout }: FormulaGround,
): Diagnostic | undefined {
  const limited = measures.find(id);
  for (const reference of referencesIn(formula)) {
    const measure = measures.find(reference.name);
    const isNominal = reference.at === undefined && sizes.has(reference.name);
    if (limited === undefined || measure === undefined || isNominal) continue;
    const refusal = reachProblem(reference, limited.family, measure.family, layout);
    if (refusal === undefined) continue;
    return diagnostic('formula', place, `in the formula ${written}: ${refusal.message}`, refusal.help);
  }
  return undefined;
}

const formulasOf = ({ bands }: LimitEntry): readonly LimitFormula[] =>
  BAND_NAMES.flatMap((name) => [bands[name]?.min, bands[name]?.max]).flatMap((limit) =>
    limit?.kind === 'formula' ? [limit] : [],
  );

function problemOf(
  { formula, units, written, place }: LimitFormula,
  { sizes, measures }: FormulaGround,
): Diagnostic | undefined {
  const unit = units.get('length');
  const values = new Map<string, Fraction>();
  const texts = new Map<string, string>();
  for (const name of namesIn(formula)) {
    const size = sizes.get(name);
    // What can be measured stands for its reading: that is looked at when a session is judged.
    if (size === undefined || unit === undefined || measures.find(name) !== undefined) return undefined;
    values.set(name, fromBase(size.amount, unit));
    texts.set(name, size.written);
  }
  const result = evaluateFormula(formula, values);
  if (!isFormulaProblem(result)) return undefined;
  const numbers = texts.size === 0 ? '' : `, here ${formatFormula(formula, texts)}`;
  const message = `the formula ${written}${numbers} cannot be worked out: ${result.message}`;
  return diagnostic('formula', place, message, result.help);
}
