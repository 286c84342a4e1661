import { gradeInForce } from '../../checks/grades/gradeInForce.ts';
import { STANDARD, sameGrade } from '../../documents/grades/grade.ts';
import { NO_OFFERS, type OfferedParts } from '../../documents/parts/offeredPart.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { fitsOf } from '../fit/fits.ts';
import { type ShelfPistons, shelfPistons } from '../fit/shelfPistons.ts';
import type { WholeFit } from '../fit/wholeParts.ts';
import { type Agreements, agreementsOf } from '../handover/agreement.ts';
import type { PlanContext } from '../work/context.ts';
import type { Job } from '../work/job.ts';
import { awaitedBy } from './awaited.ts';
import { afterYes, awaitsYes } from './awaitedYes.ts';
import { cutLines, ofSize } from './cutLines.ts';
import { awaitedLines, type Shelf, shellLines } from './mateLines.ts';
import { ORDER_TIMES, type OrderLine } from './orderLine.ts';

/** From renewals, from the steps that journals and bores are cut to, from joints, and what goes with any of it. */
export function orderList(
  context: PlanContext,
  jobs: readonly Job[],
  offers: OfferedParts = NO_OFFERS,
  agreements: Agreements = agreementsOf(context.engine, context.registry, context.state.session),
): readonly OrderLine[] {
  const linesFor = (of: readonly Job[], lines: (job: Job) => readonly OrderLine[]): readonly OrderLine[] =>
    of.flatMap((job) => (awaitsYes(job, agreements) ? lines(job).map(afterYes) : lines(job)));
  const pistons = shelfPistons(context, offers);
  const fits = fitsOf(context, offers);
  const { wholes } = fits;
  const shelf = { fits, pistons };
  const own = jobs.filter(({ serves }) => serves === undefined);
  const real = own.filter((job) => !isSpared(job, wholes, context));
  const withCuts = linesFor(real, (job) => cutLines(context, job, pistons));
  const bought = new Set(withCuts.map(({ what }) => what));
  const awaited = awaitedBy(context).flatMap((each) =>
    real.some(({ cut }) => cut?.part === each.machined) ? [] : awaitedLines(context, each, shelf),
  );
  for (const { what } of awaited) bought.add(what);
  const others = [
    ...linesFor(real, (job) => renewalLines(context, job, { pistons, chosen: placesChosen(job, real) })),
    ...linesFor(real, (job) => chosenLines(context, job, shelf)),
  ];
  const all = [
    ...wholes.map(wholeLine),
    ...withCuts,
    ...awaited,
    // What comes with a cut is bought once, in its new size.
    ...others.filter(({ what }) => !bought.has(what)),
    ...(own.some(isOpened) ? [...fastenerLines(context), ...SUNDRIES] : []),
  ];
  return [...all].sort((a, b) => ORDER_TIMES.indexOf(a.when) - ORDER_TIMES.indexOf(b.when));
}

/** Whether a part of the shelf goes in whole, so that this one of the engine's is neither cut nor bought. */
const isSpared = ({ part }: Job, wholes: readonly WholeFit[], { registry }: PlanContext): boolean =>
  part !== undefined && wholes.some(({ chosen }) => registry.parts.within(chosen.part).includes(part));

/** An engine that is measured again, and no more, stays as it is. */
const isOpened = ({ operation }: Job): boolean => operation !== 'measure' && operation !== 'measure again';

/** What was seen to be renewed, and what is out and cannot be cut. */
function renewalLines(
  context: PlanContext,
  job: Job,
  { pistons, chosen }: { readonly pistons: ShelfPistons; readonly chosen: ReadonlySet<Position> },
): readonly OrderLine[] {
  const { engine } = context;
  const { operation, part, rows, found, name, cut } = job;
  const beyond = cut?.groups.filter(({ deciding }) => deciding.choice.kind === 'beyond the last step') ?? [];
  const isRenewed = operation === 'renew';
  if (!isRenewed && operation !== 'machine or renew') return [];
  const layout = engine.document.layout;
  const asked = new Set([
    ...rows.map(({ position }) => position),
    ...found.flatMap(({ parts }) => parts.flatMap(({ positions }) => positions)),
    ...beyond.flatMap(({ places: each }) => each.map(({ position }) => position)),
  ]);
  const places = new Set([...asked].filter((position) => !chosen.has(position)));
  if (asked.size > 0 && places.size === 0) return [];
  const all = part === undefined ? 1 : layout.positionsOf(part.family).length;
  const isShell = part?.sized?.liesIn !== undefined;
  const what =
    part === undefined
      ? found.flatMap(({ on }) => on).join(', ')
      : isShell
        ? `${part.label} pairs`
        : Math.min(all, places.size) > 1
          ? part.plural
          : part.label;
  const count = Math.min(all, Math.max(1, places.size));
  const line: OrderLine = {
    what,
    ...sizeRenewed(engine, part, [...places][0], count, pistons),
    count,
    when: isRenewed ? 'now' : 'after measuring',
    for: name,
  };
  return [line, ...(part === undefined ? [] : matesOfNew(context, part, name))];
}

/** What goes with a part that is renewed whole is bought by the new one: its shells by its journals. */
function matesOfNew({ engine, registry }: PlanContext, whole: Part, name: string): readonly OrderLine[] {
  if (!whole.family.isSingle) return [];
  const within = registry.parts.within(whole);
  const mates = registry.parts.all.filter(
    ({ sized }) => sized?.liesIn !== undefined && within.some(({ id }) => id === sized.fits),
  );
  return mates.map((mate) => ({
    what: `${mate.label} pairs`,
    size: `by the new ${whole.label}`,
    code: undefined,
    count: engine.document.layout.positionsOf(mate.family).length,
    onShelf: 0,
    when: 'after measuring',
    for: name,
  }));
}

const wholeLine = ({ chosen: { part, mark }, inPlaceOf }: WholeFit): OrderLine => ({
  what: part.label,
  code: mark,
  size: '',
  count: 1,
  onShelf: 1,
  when: 'now',
  for: `in place of: ${inPlaceOf.join(', ')}`,
});

/** Where the same part is chosen anew in any case: what is bought there comes with the choice. */
const placesChosen = ({ part, operation }: Job, jobs: readonly Job[]): ReadonlySet<Position> =>
  new Set(
    jobs
      .filter((other) => operation === 'renew' && other.operation === 'choose' && other.urgency !== 'may')
      .filter((other) => part !== undefined && other.part === part)
      .flatMap(({ rows }) => rows.map(({ position }) => position)),
  );

/** A journal that was ground takes no shell of the size that was fitted before. */
function sizeRenewed(
  engine: PlanContext['engine'],
  part: Part | undefined,
  position: Position | undefined,
  count: number,
  pistons: ShelfPistons,
): Pick<OrderLine, 'size' | 'code' | 'onShelf'> {
  const grade =
    part?.sized?.liesIn === undefined || position === undefined
      ? STANDARD
      : gradeInForce(engine, undefined, part, position).grade.lower;
  return part === undefined || sameGrade(grade, STANDARD)
    ? { size: 'as fitted', code: undefined, onShelf: 0 }
    : ofSize(engine, part, grade, count, pistons);
}

/** Shells and pistons that are to be chosen anew are bought when the sizes are known. */
function chosenLines(
  context: PlanContext,
  { operation, part, name, rows, urgency }: Job,
  shelf: Shelf,
): readonly OrderLine[] {
  if (operation !== 'choose' || part === undefined || urgency === 'may') return [];
  const all = context.engine.document.layout.positionsOf(part.family);
  const asked = all.filter((position) => rows.some((row) => row.position === position));
  if (part.sized?.liesIn !== undefined && isWeighed(part, shelf))
    return shellLines(context, part, asked, name, shelf);
  const count = Math.max(1, Math.min(all.length, asked.length));
  const what = part.sized?.liesIn === undefined ? part.plural : `${part.label} pairs`;
  return [
    { what, code: undefined, size: 'by plan --fit', count, onShelf: 0, when: 'after measuring', for: name },
  ];
}

/** Whether the shelf holds any, and each place was asked for the best of them. */
const isWeighed = (part: Part, { fits }: Shelf): boolean =>
  fits.shells.some((each) => each.part === part && each.places.length > 0);

/** Fasteners that are used once, and those that are turned by an angle unless their maker lets them be used again. */
const fastenerLines = ({ engine }: PlanContext): readonly OrderLine[] =>
  engine.sequences.flatMap(({ joint, name }) => {
    const { sequence } = joint;
    const isTurned = sequence.passes.some(({ action }) => action.kind === 'turn');
    if (joint.reuse !== 'once' && !(isTurned && joint.reuse !== 'allowed')) return [];
    return [
      {
        what: `${sequence.joint}: bolts`,
        code: undefined,
        size: joint.thread?.designation ?? '',
        count: sequence.order.length,
        onShelf: 0,
        when: 'now',
        for: joint.reuse === 'once' ? `${name}: used once` : `${name}: turned by an angle`,
      } as const,
    ];
  });

/** What an opened engine takes whatever was found. Common practice, no source. */
const SUNDRIES: readonly OrderLine[] = ['gasket set', 'shaft seals', 'core plugs', 'gallery plugs'].map(
  (what) => ({
    what,
    code: undefined,
    size: '',
    count: 1,
    onShelf: 0,
    when: 'now',
    for: 'opened engine',
  }),
);
