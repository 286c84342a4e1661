import type { Registry } from '../../characteristics/registry.ts';
import { STANDARD } from '../../documents/grades/grade.ts';
import type { TorqueDocument } from '../../documents/tightening/torque.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { positionsMeant } from '../../layout/readPart.ts';
import { relate, relateOne } from '../../layout/relate.ts';
import { jointsHeldBy } from '../closing/unstatedJoints.ts';
import type { ShelfPistons } from '../fit/shelfPistons.ts';
import type { PlanContext } from '../work/context.ts';
import { isBeyond } from '../work/cut.ts';
import type { Job } from '../work/job.ts';
import { isRenewedAlone } from '../work/renewal/renewed.ts';
import { isKeptBySize, isRings, ofSize } from './cutLines.ts';
import { gradeAt } from './mateLines.ts';
import { takesNewFasteners } from './openedLines.ts';
import { goodsOf, type NeededLine } from './orderLine.ts';
import { measureText, unreadFor } from './toMeasure.ts';

interface Elsewhere {
  readonly pistons: ShelfPistons;
  /** Where a part is bought in a new size. */
  readonly bought: (part: Part) => ReadonlySet<Position>;
  /** All jobs: what one of them renews is bought for that one. */
  readonly jobs: readonly Job[];
}

/** What was seen to be renewed, and what is out and cannot be cut. */
export function renewalLines(context: PlanContext, job: Job, elsewhere: Elsewhere): readonly NeededLine[] {
  const { engine } = context;
  const { pistons, bought } = elsewhere;
  const { part, found, name } = job;
  if (!mayRenew(job) || part?.boredInto !== undefined) return [];
  const { layout } = engine.document;
  const asked = placesAsked(job, layout);
  const sized = part === undefined ? undefined : bought(part);
  const places = new Set(asked.filter((position) => sized?.has(position) !== true));
  const isAllBought =
    part !== undefined &&
    sized !== undefined &&
    sized.size > 0 &&
    sized.size === layout.positionsOf(part.family).length;
  if (isAllBought || (asked.length > 0 && places.size === 0)) return [];
  const words = part?.plural ?? found.flatMap(({ on }) => on).join(', ');
  const joints = jointsHeldBy(words, engine);
  const kept = joints.filter((each) => !takesNewFasteners(each, context));
  // The others are bought with their joints.
  if (joints.length > 0 && kept.length === 0) return [];
  const share = part === undefined ? 1 : countOf(part, [...places], context);
  const count = joints.length === 0 ? share : fastenersOf(kept, part, share, layout);
  const line: NeededLine = {
    ...(part === undefined ? { what: words } : goodsOf(part)),
    ...sizeRenewed(context, part, [...places][0], count, pistons),
    count,
    for: name,
    ...(job.operation === 'renew'
      ? { when: 'now' }
      : { when: 'after measuring', waitsFor: 'decide: machine or renew' }),
  };
  return [line, ...(part === undefined ? [] : ringsOfNew(context, part, line, places, elsewhere))];
}

/** Where it is to be renewed, each place once: a head that is cracked at one of its cylinders is the head of that bank. */
export function placesAsked({ part, rows, found, cut }: Job, layout: Layout): readonly Position[] {
  const beyond = cut?.groups.filter(({ deciding }) => isBeyond(deciding)) ?? [];
  const placeOf = (position: Position): Position =>
    (part && relateOne(layout, position, part.family)) ?? position;
  const seen = found.flatMap(({ parts }) => parts.flatMap((each) => positionsMeant(each, layout)));
  return [
    ...new Set([
      ...rows.map(({ position }) => placeOf(position)),
      ...seen.map((position) => (part?.calledBy === position.family ? position : placeOf(position))),
      ...beyond.flatMap(({ places }) => places.map(({ position }) => placeOf(position))),
    ]),
  ];
}

/** Of a journal or lobe what it is of one piece with is bought. */
export function asBought(job: Job, { parts }: Registry): Job {
  const whole = parts.find(job.part?.ofOnePieceWith ?? '');
  return whole === undefined || !mayRenew(job) ? job : { ...job, part: whole };
}

export const mayRenew = ({ operation }: Job): boolean =>
  operation === 'renew' || operation === 'machine or renew';

/** As many as the documents of a joint have: of some places their share. */
function fastenersOf(
  joints: readonly TorqueDocument[],
  part: Part | undefined,
  places: number,
  layout: Layout,
): number {
  const all = joints.reduce((sum, { joint }) => sum + joint.sequence.order.length, 0);
  return part === undefined ? all : Math.ceil((all * places) / layout.positionsOf(part.family).length);
}

/** Of rings the bores that want a set, of other parts where they are; one where nobody says. */
function countOf(part: Part, places: readonly Position[], { engine, registry }: PlanContext): number {
  const { layout } = engine.document;
  // Of heads that the layout counts as one, as many as are called by their cylinders.
  const called = places.filter(({ family }) => family === part.calledBy);
  if (called.length > 0) return called.length;
  const bore = isRings(part) ? registry.parts.find(part.sized?.fits ?? '') : undefined;
  const wanted = bore === undefined ? places : places.flatMap((at) => relate(layout, at, bore.family) ?? at);
  const all = layout.positionsOf((bore ?? part).family).length;
  return Math.min(all, Math.max(1, new Set(wanted).size));
}

/** What goes with a part that is renewed whole is bought by the new one: its shells by its journals. */
export function matesOfNew(context: PlanContext, job: Job): readonly NeededLine[] {
  const { engine, registry } = context;
  const { part: whole, name } = job;
  if (whole?.family.isSingle !== true || !mayRenew(job)) return [];
  const within = registry.parts.within(whole);
  const mates = registry.parts.all.filter(
    ({ sized }) => sized?.liesIn !== undefined && within.some(({ id }) => id === sized.fits),
  );
  return mates.map((mate) => {
    const all = engine.document.layout.positionsOf(mate.family);
    return {
      ...goodsOf(mate),
      size: `by the new ${whole.label}`,
      code: undefined,
      count: all.length,
      onShelf: 0,
      when: 'after measuring',
      for: name,
      waitsFor: measureText(unreadFor(context, mate, all, `of the new ${whole.label}`)),
    };
  });
}

/** A new bore takes new rings. Common practice, no source. */
function ringsOfNew(
  { engine, registry }: PlanContext,
  { id }: Part,
  bore: NeededLine,
  at: ReadonlySet<Position>,
  { pistons, bought, jobs }: Elsewhere,
): readonly NeededLine[] {
  const { layout } = engine.document;
  const isBought = (rings: Part): boolean =>
    [...at].every((position) =>
      (relate(layout, position, rings.family) ?? []).every((each) => bought(rings).has(each)),
    );
  const rings = registry.parts.all.filter(
    (each) => isRings(each) && each.sized?.fits === id && !(at.size > 0 && isBought(each)),
  );
  return rings.flatMap((each) => {
    const renewed = jobs
      .filter(({ operation, part }) => operation === 'renew' && part === each)
      .flatMap((job) => placesAsked(job, layout));
    const left = [...at].filter(
      (bored) => !renewed.some((ring) => relateOne(layout, ring, bored.family) === bored),
    );
    if (at.size > 0 && left.length === 0) return [];
    const count = at.size > 0 ? left.length : bore.count;
    return { ...bore, ...goodsOf(each), ...ofSize(engine, each, STANDARD, count, pistons), count };
  });
}

/** What is kept by sizes goes with the size of its journal or bore, as it was cut; into a new one goes standard. */
function sizeRenewed(
  context: PlanContext,
  part: Part | undefined,
  position: Position | undefined,
  count: number,
  pistons: ShelfPistons,
): Pick<NeededLine, 'size' | 'code' | 'onShelf' | 'free'> {
  if (part === undefined || !isKeptBySize(part)) return AS_FITTED;
  const { engine, registry } = context;
  const mate = registry.parts.find(part.sized?.fits ?? '');
  const isOfNew = position !== undefined && mate !== undefined && isRenewedAlone(context, mate, position);
  if (position === undefined || isOfNew) return ofSize(engine, part, STANDARD, count, pistons);
  return ofSize(engine, part, gradeAt(position, part, context), count, pistons);
}

export const AS_FITTED = { size: 'as fitted', code: undefined, onShelf: 0 } as const;
