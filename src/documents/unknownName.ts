import { namesIn, unknownNames } from '../formula/names.ts';
import type { ParsedFormula } from '../formula/tree.ts';
import { PLAIN_SIZE_NAMES } from './engine/plainSizes.ts';
import type { Measures } from './measure.ts';
import { RENAMED_IDS } from './renamedIds.ts';

/** The first name in a formula that is neither a size nor a characteristic, and what to write. */
export function unknownName(
  formula: ParsedFormula,
  measures: Measures,
): { readonly message: string; readonly help?: string } | undefined {
  const known = new Set([...PLAIN_SIZE_NAMES, ...measures.ids()]);
  const [unknown] = unknownNames(formula, known);
  const id = namesIn(formula).find((name) => !known.has(name)) ?? '';
  const renamed = RENAMED_IDS.get(id);
  return renamed === undefined
    ? unknown
    : { message: `${id} is now ${renamed.now}`, help: `write ${renamed.inFormulas}` };
}
