import { fittedSize } from '../../checks/grades/madeSize.ts';
import type { Row } from '../../checks/judge/row.ts';
import { movement, wholly } from '../../documents/grades/movement.ts';
import type { GasketBand } from '../../documents/limits/choices.ts';
import { limitsOn } from '../../documents/limits/editions.ts';
import type { StockSized } from '../../documents/stock/stock.ts';
import type { Position } from '../../layout/position.ts';
import { compare, type Fraction, subtract, ZERO } from '../../quantity/fraction.ts';
import type { PlanContext } from '../work/context.ts';
import { fittedAt, type InPlace, inPlaceAt } from './inPlace.ts';
import { onShelf } from './shelf.ts';
import { gasketFor } from './thickness/thickness.ts';
import { costOf, type Wanted, wantedAt } from './wanted.ts';

/** Thrust washers for the end play that is wanted. */
export interface WasherFit {
  readonly read: Fraction;
  readonly wanted: Wanted;
  readonly inPlace: InPlace | undefined;
  /** Undefined where none on the shelf brings it inside, and where those that are fitted do. */
  readonly chosen: { readonly washer: StockSized; readonly endPlay: Fraction } | undefined;
}

/** From the end play as it was read with the washers that are fitted, by how much thicker others are. */
export function washerFit(context: PlanContext): WasherFit | undefined {
  const { engine, registry, state } = context;
  const [endPlay, width] = ['crankshaft_end_play', 'thrust_bearing_width'].map((id) => registry.find(id));
  const row = state.rows.find(({ characteristic }) => characteristic === endPlay);
  const read = row?.routes[0]?.mean;
  const shelf = onShelf(engine.stock.washers, engine);
  const wanted = row && wantedAt(context, row.characteristic, row.position);
  if (
    width === undefined ||
    row === undefined ||
    read === undefined ||
    wanted === undefined ||
    shelf.length === 0
  )
    return undefined;
  const inPlace = inPlaceAt(context, row.characteristic, row.position);
  if (inPlace !== undefined) return { read, wanted, inPlace, chosen: undefined };
  const now = fittedSize(engine, undefined, width, row.position).by;
  const [best] = shelf
    .map((washer) => {
      const by = width.dimension === undefined ? ZERO : movement(width.dimension, wholly(washer.size));
      return { washer, endPlay: subtract(read, subtract(by, now)) };
    })
    .flatMap((each) => {
      const cost = costOf(each.endPlay, { below: ZERO, above: ZERO }, wanted);
      return cost === undefined ? [] : [{ ...each, cost }];
    })
    .sort((a, b) => a.cost - b.cost);
  return { read, wanted, inPlace, chosen: best };
}

/** The head gasket by how far the pistons stand out of the block. */
export interface GasketFit {
  /** The pistons that were read. */
  readonly rows: readonly Row[];
  /** The cylinder whose mean decides. */
  readonly position: Position;
  readonly protrusion: Fraction;
  /** Fitted since the pistons were read. */
  readonly inPlace: InPlace | undefined;
  readonly gasket: GasketBand | undefined;
  /** One for each head. */
  readonly count: number;
  /** A session of the run says that it is in, by its code. */
  readonly isStated: boolean;
  /** How many of it are on the shelf; undefined where its thickness is not stated. */
  readonly free: number;
}

export function gasketFit(context: PlanContext): GasketFit | undefined {
  const { engine, registry, state } = context;
  const bands = limitsOn(engine.limits, state.session.date).flatMap(({ choices }) => choices.gaskets);
  const rows = state.rows.filter(({ characteristic: { id } }) => id === 'piston_protrusion');
  const read = rows.flatMap(({ position, routes: [judged] }) =>
    judged === undefined ? [] : [{ position, mean: judged.mean, readIn: judged.route.readIn }],
  );
  const [first, ...rest] = read;
  if (first === undefined || bands.length === 0) return undefined;
  const most = rest.reduce((a, b) => (compare(b.mean, a.mean) > 0 ? b : a), first);
  const gasket = gasketFor(most.mean, bands);
  const shelf = onShelf(engine.stock.thicknesses, engine).filter(
    ({ list, code }) => list === 'gaskets' && code === gasket?.code,
  );
  const free = shelf.reduce((sum, each) => sum + each.free, 0);
  const part = registry.parts.find('head_gasket');
  const heads = part === undefined ? [] : engine.document.layout.positionsOf(part.family);
  const stated = state.run.flatMap(({ partChanges }) => partChanges.flatMap(({ codesAt }) => codesAt));
  const fitted = part && fittedAt(context, part, most.position);
  const isReadSince = read.some(
    ({ readIn }) => fitted !== undefined && state.run.indexOf(readIn) > state.run.indexOf(fitted.fittedIn),
  );
  return {
    rows,
    position: most.position,
    protrusion: most.mean,
    inPlace: isReadSince ? undefined : fitted,
    gasket,
    count: heads.length,
    isStated: heads.every((head) =>
      stated.some(
        ({ code, parts }) =>
          code === gasket?.code &&
          parts.some(
            ({ part: { id }, positions: at }) => id === part?.id && (at.length === 0 || at.includes(head)),
          ),
      ),
    ),
    free,
  };
}
