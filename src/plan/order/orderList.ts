import { NO_OFFERS, type OfferedParts } from '../../documents/parts/offeredPart.ts';
import { shelfPistons } from '../fit/shelfPistons.ts';
import { type WholeFit, wholeFits } from '../fit/wholeParts.ts';
import type { PlanContext } from '../work/context.ts';
import type { Job } from '../work/job.ts';
import { cutLines } from './cutLines.ts';
import type { OrderLine } from './orderLine.ts';

/** From renewals, from the steps that journals and bores are cut to, from joints, and what goes with any of it. */
export function orderList(
  context: PlanContext,
  jobs: readonly Job[],
  offers: OfferedParts = NO_OFFERS,
): readonly OrderLine[] {
  const pistons = shelfPistons(context, offers);
  const wholes = wholeFits(context, offers, pistons).fits;
  const own = jobs.filter(({ serves }) => serves === undefined);
  const real = own.filter((job) => !isSpared(job, wholes, context));
  const withCuts = real.flatMap((job) => cutLines(context, job, pistons));
  const bought = new Set(withCuts.map(({ what }) => what));
  const others = [...real.flatMap((job) => renewalLines(context, job)), ...chosenLines(context, real)];
  const all = [
    ...wholes.map(wholeLine),
    ...withCuts,
    // What comes with a cut is bought once, in its new size.
    ...others.filter(({ what }) => !bought.has(what)),
    ...(own.some(isOpened) ? [...fastenerLines(context), ...SUNDRIES] : []),
  ];
  return [...all].sort((a, b) => WHEN.indexOf(a.when) - WHEN.indexOf(b.when));
}

const WHEN: readonly OrderLine['when'][] = ['now', 'after measuring'];

/** Whether a part of the shelf goes in whole, so that this one of the engine's is neither cut nor bought. */
const isSpared = ({ part }: Job, wholes: readonly WholeFit[], { registry }: PlanContext): boolean =>
  part !== undefined && wholes.some(({ chosen }) => registry.parts.within(chosen.part).includes(part));

/** An engine that is measured again, and no more, stays as it is. */
const isOpened = ({ operation }: Job): boolean => operation !== 'measure' && operation !== 'measure again';

/** What was seen to be renewed, and what is out and cannot be cut. */
function renewalLines({ engine }: PlanContext, job: Job): readonly OrderLine[] {
  const { operation, part, rows, found, name, cut } = job;
  const beyond = cut?.groups.filter(({ deciding }) => deciding.choice.kind === 'beyond the last step') ?? [];
  const isRenewed = operation === 'renew' || beyond.length > 0;
  if (!isRenewed && operation !== 'machine or renew') return [];
  const layout = engine.document.layout;
  const places = new Set([
    ...rows.map(({ position }) => position),
    ...found.flatMap(({ parts }) => parts.flatMap(({ positions }) => positions)),
    ...beyond.flatMap(({ places: each }) => each.map(({ position }) => position)),
  ]);
  const all = part === undefined ? 1 : layout.positionsOf(part.family).length;
  const isShell = part?.sized?.liesIn !== undefined;
  const what =
    part === undefined
      ? found.flatMap(({ on }) => on).join(', ')
      : isShell
        ? `${part.label} pairs`
        : places.size > 1
          ? part.plural
          : part.label;
  const count = Math.min(all, Math.max(1, places.size));
  const line: OrderLine = {
    what,
    code: undefined,
    size: 'as fitted',
    count,
    onShelf: 0,
    when: isRenewed ? 'now' : 'after measuring',
    for: name,
  };
  return [line];
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

/** Shells and pistons that are to be chosen anew are bought when the sizes are known. */
const chosenLines = ({ engine }: PlanContext, jobs: readonly Job[]): readonly OrderLine[] =>
  jobs.flatMap((job): readonly OrderLine[] => {
    const { operation, part, name, rows, urgency } = job;
    if (operation !== 'choose' || part === undefined || urgency === 'may') return [];
    const all = engine.document.layout.positionsOf(part.family).length;
    const count = Math.min(all, new Set(rows.map(({ position }) => position)).size);
    const what = part.sized?.liesIn === undefined ? part.plural : `${part.label} pairs`;
    return [
      { what, code: undefined, size: 'by plan --fit', count, onShelf: 0, when: 'after measuring', for: name },
    ];
  });

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
