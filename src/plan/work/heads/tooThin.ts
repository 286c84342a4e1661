import { leftToCut } from '../../../checks/grades/cutDown.ts';
import type { Row } from '../../../checks/judge/row.ts';
import type { Operation } from '../../../documents/planning/operations.ts';
import { compare, greatest } from '../../../quantity/fraction.ts';
import type { PlanContext } from '../context.ts';
import { followsOf } from '../follows.ts';
import type { Job } from '../job.ts';

const THINNING: readonly Operation[] = ['surface', 'machine', 'machine or renew'];

/** Whoever cuts a head or block wants to know how much it has left. */
export function withThickness(job: Job, { state }: PlanContext): Job {
  const { operation, part, rows } = job;
  if (!THINNING.includes(operation)) return job;
  const thicknesses = state.rows.filter(
    ({ characteristic, position, limits: { bands }, routes: [judged] }) =>
      characteristic.of === part?.id &&
      (rows.length === 0 || rows.some((row) => row.position === position)) &&
      leftToCut(characteristic, bands, judged?.least) !== undefined,
  );
  return { ...job, thicknesses };
}

/** A head or block of which more must come off than it has left is renewed: no surfacing makes it flat. */
export function renewedWhereTooThin(job: Job, context: PlanContext): Job {
  const { operation, part, name } = job;
  const { thicknesses = [], rows } = withThickness(job, context);
  if (operation !== 'surface' || !thicknesses.some((thickness) => isTooThin(thickness, rows))) return job;
  return {
    ...job,
    operation: 'renew',
    name: name.replace(operation, 'renew'),
    thicknesses,
    follows: followsOf({ operation: 'renew', part }),
  };
}

/** Whether less may still be cut than it is out at that place. */
export function isTooThin({ characteristic, position, limits, routes }: Row, rows: readonly Row[]): boolean {
  const found = leftToCut(characteristic, limits.bands, routes[0]?.least);
  const out = worstHeight(rows, position)?.routes[0]?.greatest;
  return found !== undefined && out !== undefined && compare(out, found.left) > 0;
}

/** How far its face is out of flat or out of parallel, at the worst. */
export function worstHeight(rows: readonly Row[], at: Row['position']): Row | undefined {
  const heights = rows.flatMap((row) => {
    const out = row.routes[0]?.greatest;
    return row.position === at && row.characteristic.quantity === 'length' && out !== undefined
      ? [{ row, out }]
      : [];
  });
  const most = heights.length === 0 ? undefined : greatest(heights.map(({ out }) => out));
  return heights.find(({ out }) => out === most)?.row;
}
