import type { Characteristic } from '../../../characteristics/characteristic.ts';
import type { StockThickness, ThicknessList } from '../../../documents/stock/stock.ts';
import type { Position } from '../../../layout/position.ts';
import { type Fraction, subtract } from '../../../quantity/fraction.ts';
import type { PlanContext } from '../../work/context.ts';
import type { Job } from '../../work/job.ts';
import { jobsOf } from '../../work/jobs.ts';
import { onShelf } from '../shelf.ts';
import { type Wanted, wantedAt } from '../wanted.ts';
import { fitThicknesses, lashThickness, lashWith, protrusionWith, type ThicknessPlace } from './thickness.ts';
import { workBefore } from './workBefore.ts';

/** Shims or buckets chosen for every place that has none inside its limits yet. */
export interface ThicknessFit {
  readonly list: ThicknessList;
  readonly of: Characteristic;
  readonly wanted: Wanted;
  readonly places: readonly ThicknessChoice[];
  /** Places whose reading some work is still to change. */
  readonly waiting: readonly WaitingThickness[];
}

export interface WaitingThickness {
  readonly position: Position;
  readonly after: Job;
}

export interface ThicknessChoice {
  readonly position: Position;
  readonly read: Fraction;
  /** What would bring it to the middle. */
  readonly ideal: Fraction;
  readonly code: string | undefined;
  readonly thickness: Fraction | undefined;
  readonly becomes: { readonly least: Fraction; readonly greatest: Fraction } | undefined;
}

/** Under liners shims by how far they stand out; for lash buckets by the lash and by the bucket that is fitted. */
export const thicknessFits = (context: PlanContext): readonly ThicknessFit[] => [
  ...(fitOf(context, 'liner_shims', 'liner_protrusion', ({ read, wanted }) => ({
    with: protrusionWith(read),
    ideal: subtract(wanted.middle, read.mean),
  })) ?? []),
  ...['valve_lash_cold', 'valve_lash_hot'].flatMap(
    (id) =>
      fitOf(context, 'lash_buckets', id, ({ read, position, wanted }) => {
        const fitted = bucketAt(context, position);
        return (
          fitted && {
            with: lashWith(fitted, read),
            ideal: lashThickness(fitted, read.mean, wanted.middle),
          }
        );
      }) ?? [],
  ),
];

interface Read {
  readonly position: Position;
  readonly wanted: Wanted;
  readonly read: { readonly least: Fraction; readonly mean: Fraction; readonly greatest: Fraction };
}

type Way = Pick<ThicknessPlace, 'with'> & { readonly ideal: Fraction };

/** A shop's own characteristic says how thick the bucket is that is fitted. */
function bucketAt({ state }: PlanContext, position: Position): Fraction | undefined {
  const isBucket = ({ id }: Characteristic): boolean => id === 'lash_bucket_thickness';
  return state.rows.find((row) => isBucket(row.characteristic) && row.position === position)?.routes[0]?.mean;
}

function fitOf(
  context: PlanContext,
  list: ThicknessList,
  id: string,
  wayAt: (read: Read) => Way | undefined,
): readonly ThicknessFit[] | undefined {
  const { engine, state } = context;
  const shelf = onShelf(engine.stock.thicknesses, engine).filter((each) => each.list === list);
  const asked = state.rows.flatMap((row) => {
    const [read] = row.routes;
    const { verdict } = row.judgement;
    if (row.characteristic.id !== id || read === undefined || (verdict !== 'out' && verdict !== 'worn'))
      return [];
    const wanted = wantedAt(context, row.characteristic, row.position);
    const way = wanted && wayAt({ position: row.position, wanted, read });
    return wanted === undefined || way === undefined ? [] : [{ row, read, wanted, way }];
  });
  const [first] = asked;
  if (first === undefined) return undefined;
  const jobs = jobsOf(context);
  const all = asked.map((each) => ({ ...each, after: workBefore(each.row, jobs, context) }));
  const ready = all.filter(({ after }) => after === undefined);
  const stock = shelf.map((each: StockThickness & { readonly free: number }) => ({
    code: each.code,
    thickness: each.thickness.amount,
    free: each.free,
  }));
  const found = fitThicknesses(
    ready.map(({ wanted, way }) => ({ wanted, with: way.with })),
    stock,
  );
  return [
    {
      list,
      of: first.row.characteristic,
      wanted: first.wanted,
      waiting: all.flatMap(({ row: { position }, after }) =>
        after === undefined ? [] : [{ position, after }],
      ),
      places: ready.map(({ row, read, way }, index) => {
        const chosen = found[index];
        return {
          position: row.position,
          read: read.mean,
          ideal: way.ideal,
          code: chosen?.code,
          thickness: chosen?.thickness,
          becomes: chosen && way.with(chosen.thickness),
        };
      }),
    },
  ];
}
