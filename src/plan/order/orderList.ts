import { isAt } from '../../checks/history/dependsOn.ts';
import { NO_OFFERS, type OfferedParts } from '../../documents/parts/offeredPart.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { fitsOf } from '../fit/fits.ts';
import { shelfPistons } from '../fit/shelfPistons.ts';
import type { WholeFit } from '../fit/wholeParts.ts';
import { type Agreements, agreementsOf } from '../handover/agreement.ts';
import { byYes } from '../handover/byYes.ts';
import type { PlanContext } from '../work/context.ts';
import type { Job } from '../work/job.ts';
import { placesOf } from '../work/jobTitle.ts';
import { OWN_WORK } from '../work/operation.ts';
import { URGENCIES } from '../work/urgency.ts';
import { type Awaited, awaitedBy } from './awaited.ts';
import { afterYes, awaitsYes } from './awaitedYes.ts';
import { boreLines } from './boreLines.ts';
import { boughtAt } from './bought.ts';
import { chosenLines } from './chosenLines.ts';
import { cutLines } from './cutLines.ts';
import { gasketLines } from './gasketLines.ts';
import { awaitedLines } from './mateLines.ts';
import { wasOpened } from './opened.ts';
import { openedLines } from './openedLines.ts';
import { calledByNumber, goodsOf, type NeededLine, ORDER_TIMES, type OrderLine } from './orderLine.ts';
import { asBought, matesOfNew, renewalLines } from './renewalLines.ts';
import { sharedShelf } from './sharedShelf.ts';
import { thicknessesFor } from './thicknesses.ts';
import { thicknessLines } from './thicknessLines.ts';

/** From renewals, from the steps that journals and bores are cut to, from joints, and what goes with any of it. */
export function orderList(
  context: PlanContext,
  jobs: readonly Job[],
  offers: OfferedParts = NO_OFFERS,
  agreements: Agreements = agreementsOf(context.engine, context.registry, context.state.session),
): readonly OrderLine[] {
  const linesFor = (of: readonly Job[], lines: (job: Job) => readonly NeededLine[]): readonly NeededLine[] =>
    of.flatMap((job) => {
      const awaits = awaitsYes(job, agreements);
      const turned = lines(job).map((line) => ({ ...line, turn: turnOf(job, awaits) }));
      return awaits ? turned.map(afterYes) : turned;
    });
  const pistons = shelfPistons(context, offers);
  const fits = fitsOf(context, offers);
  const { wholes } = fits;
  const shelf = { fits, pistons };
  const real = together(
    jobs.filter((job) => !isSpared(job, wholes, context)).flatMap((job) => byYes(job, agreements)),
    (job) => awaitsYes(job, agreements),
  );
  const withCuts = linesFor(real, (job) => cutLines(context, job, pistons));
  const waiting = awaitedBy(context).flatMap((each) => stillAwaited(each, jobs, context));
  const awaited = waiting.flatMap((each) => awaitedLines(context, each, shelf));
  const sized = new Set([...withCuts, ...awaited].map(({ what }) => what));
  const ofNew = linesFor(real, (job) => matesOfNew(context, asBought(job, context.registry))).filter(
    ({ what }) => !sized.has(what),
  );
  const withNew = new Set(ofNew.map(({ what }) => what));
  const bought = (part: Part): ReadonlySet<Position> => boughtAt(part, real, waiting, context);
  const others = [
    ...linesFor(real, (job) =>
      renewalLines(context, asBought(job, context.registry), { pistons, bought, jobs: real }),
    ),
    ...linesFor(real, (job) => chosenLines(context, job, shelf, bought)),
    ...linesFor(real, (job) =>
      thicknessLines(job, thicknessesFor(job, real, fits.thicknesses, context), context.engine),
    ),
  ];
  const all = [
    ...wholes.map(wholeLine),
    ...withCuts,
    ...awaited,
    // What comes with a new whole is bought once, in its new size.
    ...others.filter(({ what }) => !withNew.has(what)),
    ...linesFor(real, (job) => boreLines(context, job)),
    ...ofNew,
    ...gasketLines(context, fits.gasket, real),
    ...(wasOpened(context) || jobs.some(opens) ? openedLines(context) : []),
  ];
  const inOrder = [...all].sort((a, b) => ORDER_TIMES.indexOf(a.when) - ORDER_TIMES.indexOf(b.when));
  return sharedShelf(inOrder).map(calledByNumber);
}

/** What is agreed to before what is not, and what must be done before what should. */
const turnOf = ({ urgency }: Job, awaits: boolean): number =>
  URGENCIES.indexOf(urgency) + (awaits ? URGENCIES.length : 0);

/** What must and what should be renewed of one kind is bought at once, and takes from the shelf but once. */
function together(jobs: readonly Job[], awaits: (job: Job) => boolean): readonly Job[] {
  const isSame = (a: Job, b: Job): boolean => a.name === b.name && awaits(a) === awaits(b);
  return jobs
    .filter((job, index) => jobs.findIndex((each) => isSame(each, job)) === index)
    .map((job) => {
      const same = jobs.filter((each) => isSame(each, job));
      const groups = same.flatMap(({ cut }) => cut?.groups ?? []);
      return {
        ...job,
        rows: same.flatMap(({ rows }) => rows),
        found: same.flatMap(({ found }) => found),
        cut: job.cut && { ...job.cut, groups },
      };
    });
}

/** What is cut again or goes with its whole is not what was measured: nothing is bought for it as it is. */
function stillAwaited(
  each: Awaited,
  jobs: readonly Job[],
  { registry, engine: { document } }: PlanContext,
): readonly Awaited[] {
  if (jobs.some(({ cut }) => cut?.part === each.machined)) return [];
  const renewed = jobs.flatMap((job): readonly PartAt[] => {
    const { operation, part, at } = job;
    if (operation !== 'renew' || part === undefined || !(part.family.isSingle || at !== undefined)) return [];
    return [{ part, positions: placesOf(job, document.layout) }];
  });
  const isKept = ({ id }: Part, position: Position): boolean =>
    !renewed.some((whole) => isAt(id, position, whole, registry, document.layout));
  const positions = each.positions.filter((position) => isKept(each.machined, position));
  const places = each.places.filter((position) => isKept(each.mate, position));
  return positions.length === 0 || places.length === 0 ? [] : [{ ...each, positions, places }];
}

/** Whether a part of the shelf goes in whole, so that this one of the engine's is neither cut nor bought. */
const isSpared = ({ part }: Job, wholes: readonly WholeFit[], { registry }: PlanContext): boolean =>
  part !== undefined && wholes.some(({ chosen }) => registry.parts.within(chosen.part).includes(part));

/** An engine that is measured again, and no more, stays as it is. */
const opens = ({ operation }: Job): boolean => !OWN_WORK.includes(operation);

const wholeLine = ({ chosen: { part, mark }, inPlaceOf }: WholeFit): NeededLine => ({
  ...goodsOf(part),
  code: mark,
  size: '',
  count: 1,
  onShelf: 1,
  when: 'now',
  for: `in place of: ${inPlaceOf.join(', ')}`,
});
