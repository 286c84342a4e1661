import { isAt } from '../../../checks/history/dependsOn.ts';
import { placesMeant } from '../../../documents/planning/namedWork.ts';
import { isDecidedReuse } from '../../../documents/session/observations.ts';
import type { Part } from '../../../layout/part.ts';
import type { Position } from '../../../layout/position.ts';
import { agreementsOf } from '../../handover/agreement.ts';
import { byYes } from '../../handover/byYes.ts';
import { awaitsYes } from '../../order/awaitedYes.ts';
import type { PlanContext } from '../../work/context.ts';
import type { Cut } from '../../work/cut.ts';
import type { Job } from '../../work/job.ts';
import { jobsOf } from '../../work/jobs.ts';
import { placesOf } from '../../work/jobTitle.ts';
import { isOfRenewedWhole, isRenewedAlone } from '../../work/renewal/renewed.ts';

export interface PistonsDue {
  /** Bores for which pistons can be chosen. */
  readonly ready: readonly Position[];
  /** Bores that are to be renewed first. */
  readonly toBeRenewed: readonly Position[];
}

/** Nothing that only should be renewed, and is not agreed to, is waited for; what is used again keeps its place. */
export function pistonsDue(
  context: PlanContext,
  piston: Part,
  bore: Part,
  past: Cut | undefined,
): PistonsDue {
  const { engine, registry, state } = context;
  const { layout } = engine.document;
  const bores = layout.positionsOf(bore.family);
  const agreements = agreementsOf(engine, registry, state.session);
  const isOptional = (job: Job): boolean => job.urgency === 'should' && awaitsYes(job, agreements);
  const jobs = jobsOf(context)
    .filter(({ operation }) => operation === 'renew' || operation === 'choose')
    .flatMap((job) => (job.part === bore || job.part === piston ? byYes(job, agreements) : []));
  const optional = (part: Part): readonly Position[] =>
    jobs
      .filter((job) => job.part === part && isOptional(job))
      .flatMap((job) => placesMeant(part, placesOf(job, layout), { layout }));
  const [boresLeft, pistonsLeft] = [optional(bore), optional(piston)];
  const kept = bores.filter(
    (position) => !boresLeft.includes(position) && !isUsedAgain(context, piston, position),
  );
  const agreed = kept.filter((position) => !pistonsLeft.includes(position));
  // Before anything is agreed to, a set may be looked for all the same.
  const due = agreed.length > 0 ? agreed : kept;
  const isWhole = isOfRenewedWhole(context, bore);
  const isRenewed = (position: Position): boolean =>
    isWhole ||
    past?.groups.some(({ places }) => places.some((each) => each.position === position)) === true ||
    isRenewedAlone(context, bore, position);
  return { ready: due.filter((each) => !isRenewed(each)), toBeRenewed: due.filter(isRenewed) };
}

const isUsedAgain = (
  { state: { run }, registry, engine }: PlanContext,
  { id }: Part,
  position: Position,
): boolean =>
  run.some((session) =>
    session.observations.some(
      (each) =>
        isDecidedReuse(each, session) &&
        each.parts.some((at) => isAt(id, position, at, registry, engine.document.layout)),
    ),
  );
