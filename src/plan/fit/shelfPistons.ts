import { gradeInForce } from '../../checks/grades/gradeInForce.ts';
import type { Row } from '../../checks/judge/row.ts';
import { type Grade, sameGrade } from '../../documents/grades/grade.ts';
import type { NotOffered, OfferedPart, OfferedParts } from '../../documents/parts/offeredPart.ts';
import type { StockPiston } from '../../documents/stock/stock.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import { type PlanContext, sizeOfPart } from '../work/context.ts';
import type { Piston } from './pistons.ts';
import { onShelf } from './shelf.ts';
import { withPart } from './withPart.ts';

/** A piston by its mark, of the stock or with a document of its own. */
export interface ShelfPiston extends Piston {
  readonly size: Grade;
  /** Where it lies, as its own document says. */
  readonly lies?: string | undefined;
}

export interface ShelfPistons {
  readonly pistons: readonly ShelfPiston[];
  readonly notOffered: readonly NotOffered[];
}

/** All that are left for an engine. */
export function shelfPistons(context: PlanContext, { offered }: OfferedParts): ShelfPistons {
  const own = offered.filter(({ part }) => part.id === 'piston').map((each) => pistonOf(context, each));
  return {
    pistons: [
      ...onShelf(context.engine.stock.pistons, context.engine).map(ofStock),
      ...own.flatMap((each) => ('diameter' in each ? each : [])),
    ],
    notOffered: own.flatMap((each) => ('why' in each ? each : [])),
  };
}

const ofStock = ({ code, size, diameter, weight, ranIn }: StockPiston): ShelfPiston => ({
  mark: code,
  size,
  ranIn,
  diameter: diameter.amount,
  weight: weight?.amount,
});

/** Read at any one cylinder; what ran goes back to its own bore. */
function pistonOf(context: PlanContext, offered: OfferedPart): ShelfPiston | NotOffered {
  const { part, mark, lies, ranIn } = offered;
  const called = `${part.label} ${mark}`;
  if (ranIn !== undefined && ranIn.folder !== context.engine.folder)
    return { called, why: `it ran in ${ranIn.folder}: a used piston goes back to its own bore` };
  const fitted = withPart(context, offered);
  const size = sizeOfPart(context, part);
  const [read, ...others] = fitted.state.rows.flatMap((row) => {
    const [judged] = row.routes;
    return row.characteristic === size && judged !== undefined ? [{ row, diameter: judged.mean }] : [];
  });
  if (read === undefined) return { called, why: 'not measured since it came to lie here' };
  if (others.length > 0) return { called, why: 'measured at several cylinders, and it is one piston' };
  const { row, diameter } = read;
  const { grade } = gradeInForce(fitted.engine, undefined, part, row.position);
  return {
    mark,
    lies,
    diameter,
    size: grade.upper,
    weight: weightIn(fitted, row),
    ranIn: ranIn && (ranIn.at ?? row.position.name),
  };
}

const weightIn = ({ state }: PlanContext, { position }: Row): Fraction | undefined =>
  state.rows.find(
    ({ characteristic, position: at }) => characteristic.id === 'piston_weight' && at === position,
  )?.routes[0]?.mean;

export const pistonsOfSize = ({ pistons }: ShelfPistons, grade: Grade): readonly ShelfPiston[] =>
  pistons.filter(({ size }) => sameGrade(size, grade));
