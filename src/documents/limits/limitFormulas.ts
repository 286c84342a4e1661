import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import { evaluateFormula } from '../../formula/evaluate.ts';
import { formatFormula } from '../../formula/format.ts';
import { namesIn } from '../../formula/names.ts';
import { isFormulaProblem } from '../../formula/problem.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import { fromBase } from '../../quantity/units.ts';
import type { Amount } from '../amount.ts';
import type { Measures } from '../measure.ts';
import { BAND_NAMES, type LimitFormula } from './bands.ts';
import type { LimitEntry, LimitsDocument } from './limits.ts';

/**
 * Limits that no reading has a part in and that come to nothing with the engine's sizes, such as `1 / (bore - 4)`
 * where the bore is 4: they are wrong before anything is measured.
 */
export const formulaProblems = (
  documents: readonly LimitsDocument[],
  sizes: ReadonlyMap<string, Amount>,
  measures: Measures,
): readonly Diagnostic[] =>
  documents.flatMap(({ limits }) =>
    [...limits.values()].flatMap(({ general, at }) =>
      [general, ...at.values()].flatMap(formulasOf).flatMap((each) => problemOf(each, sizes, measures) ?? []),
    ),
  );

const formulasOf = ({ bands }: LimitEntry): readonly LimitFormula[] =>
  BAND_NAMES.flatMap((name) => [bands[name]?.min, bands[name]?.max]).flatMap((limit) =>
    limit?.kind === 'formula' ? [limit] : [],
  );

function problemOf(
  { formula, units, written, place }: LimitFormula,
  sizes: ReadonlyMap<string, Amount>,
  measures: Measures,
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
