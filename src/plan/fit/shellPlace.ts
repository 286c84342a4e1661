import type { Characteristic } from '../../characteristics/characteristic.ts';
import { clearance } from '../../characteristics/clearance.ts';
import type { Grid } from '../../characteristics/grid.ts';
import { fittedSize } from '../../checks/grades/madeSize.ts';
import type { Row } from '../../checks/judge/row.ts';
import { gradeText, sameGrade } from '../../documents/grades/grade.ts';
import type { HalfClasses } from '../../documents/limits/choices.ts';
import { limitsOn } from '../../documents/limits/editions.ts';
import type { StockShell } from '../../documents/stock/stock.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { relateOne } from '../../layout/relate.ts';
import {
  divide,
  type Fraction,
  fraction,
  least,
  parseDecimal,
  subtract,
  ZERO,
} from '../../quantity/fraction.ts';
import { toBase, unitNamed } from '../../quantity/units.ts';
import { type PlanContext, sizeOfPart } from '../work/context.ts';
import { renewedWith } from '../work/renewal/renewed.ts';
import { isAsStamped, type TableChoice, tableChoice } from './selectTable.ts';
import {
  type ChosenShells,
  fitShells,
  isByTable,
  type MixingRule,
  type ShellHalf,
  type ShellPlace,
} from './shells.ts';
import { type Wanted, wantedAt } from './wanted.ts';

export type FitProblem =
  | { readonly kind: 'not measured'; readonly of: Characteristic }
  | { readonly kind: 'no limits' }
  /** What the shells lie in or run on goes, and the new one is of a size that nobody knows. */
  | { readonly kind: 'to be renewed'; readonly part: Part }
  /** Nothing on the shelf brings it inside; each half would be this thick for the middle. */
  | { readonly kind: 'nothing fits'; readonly wall: Fraction }
  /** There are shells for it alone, and other places have them. */
  | { readonly kind: 'too few' }
  | { readonly kind: 'class not in stock'; readonly classes: HalfClasses }
  /** It does, and other places have it. */
  | { readonly kind: 'class taken'; readonly classes: HalfClasses }
  | {
      readonly kind: 'not as stamped';
      readonly of: Characteristic;
      readonly stamp: string;
      readonly row: Row;
    }
  | { readonly kind: 'table is outside'; readonly classes: HalfClasses };

/** Shells, and what they lie between. */
export interface ShellKind {
  readonly part: Part;
  readonly fit: Characteristic;
  readonly journal: Part;
  readonly housing: Part;
}

/** A bearing for which shells are chosen, with what does there alone. */
export interface AskedPlace {
  readonly position: Position;
  readonly wanted: Wanted | undefined;
  readonly place: ShellPlace | undefined;
  readonly table: TableChoice | undefined;
  /** What would be chosen of the shelf, were it for this place alone. */
  readonly alone: ChosenShells | undefined;
  readonly problems: readonly FitProblem[];
}

export function askedAt(
  context: PlanContext,
  kind: ShellKind,
  position: Position,
  shelf: readonly (StockShell & { readonly free: number })[],
): AskedPlace {
  const { part, fit, journal, housing } = kind;
  const table = tableChoice(context, part, position);
  const wanted = wantedAt(context, fit, position);
  const nothing = { position, wanted, table, place: undefined, alone: undefined };
  const [renewed] = [housing, journal].flatMap((each) => renewedWith(context, each, position) ?? []);
  if (renewed !== undefined) return { ...nothing, problems: [{ kind: 'to be renewed', part: renewed }] };
  const [hole, shaft] = [housing, journal].map((each) => readOf(context, each, position));
  const lacking = [hole, shaft].flatMap((each) => (each?.row === undefined && each?.size ? [each.size] : []));
  if (wanted === undefined) return { ...nothing, problems: [{ kind: 'no limits' }] };
  if (hole?.row === undefined || shaft?.row === undefined || !shaft.at)
    return { ...nothing, problems: lacking.map((of) => ({ kind: 'not measured', of })) };
  const room = clearance(gridOf(hole.row), gridOf(shaft.row));
  if (room === undefined) return { ...nothing, problems: [] };
  const size = fittedSize(context.engine, undefined, shaft.row.characteristic, shaft.at);
  const sized = shelf.filter((each) => size.grade !== undefined && sameGrade(each.size, size.grade));
  const mean = room.mean.amount;
  const base = {
    room: mean,
    below: subtract(mean, room.least.amount),
    above: subtract(room.greatest.amount, mean),
    wanted,
  };
  const classes = table?.classes;
  const place = { ...base, only: sized.map(({ code }) => code), classes };
  const [alone] = fitShells([place], sized.map(halfOf), mixingOf(context, part));
  const wall = divide(subtract(mean, wanted.middle), fraction(2));
  return {
    position,
    wanted,
    table,
    place,
    alone,
    problems: [
      ...stampProblems(table, hole.row, shaft.row),
      ...(classes === undefined || (alone !== undefined && isByTable(alone, classes))
        ? []
        : [
            {
              kind: isInStock(classes, sized) ? 'table is outside' : 'class not in stock',
              classes,
            } as const,
          ]),
      ...(alone === undefined ? [{ kind: 'nothing fits', wall } as const] : []),
    ],
  };
}

/** Whether a half for above and another for below are there. */
function isInStock(
  { upper, lower }: HalfClasses,
  sized: readonly (StockShell & { readonly free: number })[],
): boolean {
  const halvesOf = (named: string): number =>
    sized.reduce((halves, each) => halves + (each.class === named ? each.free : 0), 0);
  return upper === lower ? halvesOf(upper) >= 2 : halvesOf(upper) >= 1 && halvesOf(lower) >= 1;
}

function readOf(context: PlanContext, part: Part, position: Position) {
  const size = sizeOfPart(context, part);
  const at = relateOne(context.engine.document.layout, position, part.family);
  const row = context.state.rows.find(
    (each) => each.characteristic === size && each.position === at && each.routes.length > 0,
  );
  return { size, at, row };
}

const EMPTY: Grid = { stations: [], directions: [], rows: [] };

const gridOf = ({ routes: [judged] }: Row): Grid => judged?.route.grid ?? EMPTY;

/** What was measured and does not lie where its stamp says. */
const stampProblems = (table: TableChoice | undefined, hole: Row, shaft: Row): readonly FitProblem[] =>
  table === undefined
    ? []
    : (
        [
          [hole, table.housing, table.select.housings],
          [shaft, table.journal, table.select.journals],
        ] as const
      ).flatMap(([row, stamp, ranges]) => {
        const [judged] = row.routes;
        return judged === undefined || isAsStamped(judged, ranges.get(stamp))
          ? []
          : [{ kind: 'not as stamped', of: row.characteristic, stamp, row } as const];
      });

export const halfOf = (shell: StockShell & { readonly free: number }): ShellHalf => ({
  code: shell.code,
  wall: shell.wall,
  within: shell.within,
  undersize: gradeText(shell.size),
  class: shell.class,
  count: shell.free,
});

/** A bearing maker's guide: never more than this from one half to the other. */
const MOST_MIXED = toBase(parseDecimal('0.0005'), unitNamed('in'));

/** Alike, unless the limits say how far halves may differ. */
export function mixingOf({ engine, state }: PlanContext, part: Part): MixingRule {
  const stated = limitsOn(engine.limits, state.session.date)
    .flatMap(({ choices }) => choices.mixings)
    .find((each) => each.part === part);
  return {
    mostDifference: stated === undefined ? ZERO : least([stated.differBy, MOST_MIXED]),
    thicker: stated?.thicker ?? 'lower',
  };
}
