import { fittedSize } from '../../checks/grades/madeSize.ts';
import { isAt } from '../../checks/history/dependsOn.ts';
import type { HalfClasses, SelectFit } from '../../documents/limits/choices.ts';
import { limitsOn } from '../../documents/limits/editions.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { relateOne } from '../../layout/relate.ts';
import { compare, type Fraction } from '../../quantity/fraction.ts';
import { type PlanContext, sizeOfPart } from '../work/context.ts';

/** What a maker's table says of one place. */
export interface TableChoice {
  readonly housing: string;
  readonly journal: string;
  /** Those that it names; undefined where it has no such stamps. */
  readonly classes: HalfClasses | undefined;
  readonly select: SelectFit;
}

/** By the stamps of a housing and its journal, where there are any: they are void once either was cut. */
export function tableChoice(context: PlanContext, shell: Part, position: Position): TableChoice | undefined {
  const { engine, registry, state } = context;
  const select = limitsOn(engine.limits, state.session.date)
    .flatMap(({ choices }) => choices.selectFits)
    .find(({ part }) => part === shell);
  const [housing, journal] = [shell.sized?.liesIn, shell.sized?.fits].map((id) =>
    stampOf(context, registry.parts.find(id ?? ''), position),
  );
  if (select === undefined || housing === undefined || journal === undefined) return undefined;
  return { housing, journal, classes: select.table.get(housing)?.get(journal), select };
}

function stampOf(context: PlanContext, part: Part | undefined, at: Position): string | undefined {
  const { engine } = context;
  const position = part && relateOne(engine.document.layout, at, part.family);
  if (part === undefined || position === undefined || wasCut(context, part, position)) return undefined;
  return engine.document.stamps.get(part.id)?.get(position);
}

function wasCut(context: PlanContext, part: Part, position: Position): boolean {
  const { engine, registry } = context;
  const size = sizeOfPart(context, part);
  if (size !== undefined && fittedSize(engine, undefined, size, position).by.n !== 0n) return true;
  return engine.sessions.some(({ partChanges }) =>
    partChanges.some(
      ({ how, parts }) =>
        how !== 'fitted' &&
        parts.some((each) => isAt(part.id, position, each, registry, engine.document.layout)),
    ),
  );
}

/** Whether a size lies where its stamp says; so where the maker does not say what stamps stand for. */
export function isAsStamped(
  size: { readonly least: Fraction; readonly greatest: Fraction },
  range: { readonly least: Fraction; readonly greatest: Fraction } | undefined,
): boolean {
  return (
    range === undefined ||
    (compare(size.least, range.least) >= 0 && compare(size.greatest, range.greatest) <= 0)
  );
}
