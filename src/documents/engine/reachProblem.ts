import type { UsedReference } from '../../formula/names.ts';
import type { Family } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import { fullName, type Position } from '../../layout/position.ts';
import { reach } from '../../layout/reach.ts';

/** Why a formula can never be worked out on an engine, and what to write. */
export interface FormulaRefusal {
  readonly message: string;
  readonly help?: string;
}

/**
 * Why a formula at one family of positions cannot have what it names of another: nothing relates the two, there are
 * several where one is wanted, or none of that name. An engine whose layout is silent about a family has none to ask.
 */
export function reachProblem(
  reference: UsedReference,
  from: Family,
  to: Family,
  layout: Layout,
): FormulaRefusal | undefined {
  if (to.isNamedBySession && (from !== to || reference.at !== undefined))
    return unrelated(reference, from, to);
  if (layout.positionsOf(to).length === 0) return undefined;
  for (const position of layout.positionsOf(from)) {
    const reached = reach(layout, position, to, reference.at);
    if (reached.kind === 'unrelated') return unrelated(reference, from, to);
    if (reached.kind === 'other row') return otherRow(reference, from, to);
    if (reached.kind === 'unknown') return unknown(reference, to, layout);
    if (reached.positions.length > 1 && !reference.maySeveral) {
      return several(reference, position, reached.positions);
    }
  }
  return undefined;
}

function unrelated({ name, text }: UsedReference, from: Family, to: Family): FormulaRefusal {
  const message = `${text} is measured at a ${to.name}, this at a ${from.name}, and the layout does not state which of them belong together`;
  return {
    message,
    help: `name one, such as ${name}[1]; a characteristic of the engine may take max(${name}[*])`,
  };
}

function otherRow({ name, text }: UsedReference, from: Family, to: Family): FormulaRefusal {
  const message = `${text} is along the ${to.name} positions, and this is measured at a ${from.name}`;
  return { message, help: `write ${name}, or max(${name}[*]), min, mean or spread of it` };
}

function unknown({ text }: UsedReference, to: Family, layout: Layout): FormulaRefusal {
  const names = layout.positionsOf(to).map(({ name }) => name);
  const help = `it has ${names.join(', ')}; what holds for one engine belongs into its own limits document`;
  return { message: `the engine has no ${to.name} for ${text}`, help };
}

function several(
  { name, at, text }: UsedReference,
  position: Position,
  reached: readonly Position[],
): FormulaRefusal {
  const where = position.family.isSingle ? 'the engine' : fullName(position);
  const message = `${where} has ${reached.length} values of ${text}, at ${reached.map((each) => each.name).join(', ')}`;
  const wanted = at === undefined ? `${name}[*]` : text;
  return { message, help: `write max(${wanted}), min, mean or spread of it` };
}
