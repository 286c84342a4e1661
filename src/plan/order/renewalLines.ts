import { gradeInForce } from '../../checks/grades/gradeInForce.ts';
import { STANDARD, sameGrade } from '../../documents/grades/grade.ts';
import { ENGINE } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import type { PartAt } from '../../layout/readPart.ts';
import type { ShelfPistons } from '../fit/shelfPistons.ts';
import type { PlanContext } from '../work/context.ts';
import { isBeyond } from '../work/cut.ts';
import type { Job } from '../work/job.ts';
import { isRings, ofSize } from './cutLines.ts';
import type { OrderLine } from './orderLine.ts';

/** What was seen to be renewed, and what is out and cannot be cut. */
export function renewalLines(
  context: PlanContext,
  job: Job,
  { pistons, chosen }: { readonly pistons: ShelfPistons; readonly chosen: ReadonlySet<Position> },
): readonly OrderLine[] {
  const { engine } = context;
  const { part, rows, found, name, cut } = job;
  const beyond = cut?.groups.filter(({ deciding }) => isBeyond(deciding)) ?? [];
  if (!mayRenew(job)) return [];
  const layout = engine.document.layout;
  const asked = new Set([
    ...rows.map(({ position }) => position),
    ...found.flatMap(({ parts }) => parts.flatMap((each) => positionsMeant(each, layout))),
    ...beyond.flatMap(({ places: each }) => each.map(({ position }) => position)),
  ]);
  const places = new Set([...asked].filter((position) => !chosen.has(position)));
  if (asked.size > 0 && places.size === 0) return [];
  // Of several heads, which the layout counts as one, as many as are named.
  const all = part?.calledBy === undefined ? layout.positionsOf(part?.family ?? ENGINE).length : places.size;
  const count = Math.max(1, Math.min(all, places.size));
  const line: OrderLine = {
    what: part === undefined ? found.flatMap(({ on }) => on).join(', ') : calledFor(part, count),
    ...sizeRenewed(engine, part, [...places][0], count, pistons),
    count,
    when: job.operation === 'renew' ? 'now' : 'after measuring',
    for: name,
  };
  return [line, ...(part === undefined ? [] : ringsOfNew(context, part, line, pistons))];
}

const mayRenew = ({ operation }: Job): boolean => operation === 'renew' || operation === 'machine or renew';

function calledFor({ label, plural, sized }: Part, count: number): string {
  if (sized?.liesIn !== undefined) return `${label} pairs`;
  return count > 1 ? plural : label;
}

/** `pistons` are all of them, `piston` is one and nobody says which. */
const positionsMeant = ({ part, positions, isOneOfMany }: PartAt, layout: Layout): readonly Position[] =>
  positions.length > 0 || isOneOfMany ? positions : layout.positionsOf(part.family);

/** What goes with a part that is renewed whole is bought by the new one: its shells by its journals. */
export function matesOfNew({ engine, registry }: PlanContext, job: Job): readonly OrderLine[] {
  const { part: whole, name } = job;
  if (whole?.family.isSingle !== true || !mayRenew(job)) return [];
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

/** A new bore takes new rings. Common practice, no source. */
function ringsOfNew(
  { engine, registry }: PlanContext,
  { id }: Part,
  bore: OrderLine,
  pistons: ShelfPistons,
): readonly OrderLine[] {
  const rings = registry.parts.all.filter((each) => isRings(each) && each.sized?.fits === id);
  return rings.map((each) => ({
    ...bore,
    what: 'ring sets',
    ...ofSize(engine, each, STANDARD, bore.count, pistons),
    size: bore.size,
  }));
}

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
  if (part === undefined) return AS_FITTED;
  const sized = ofSize(engine, part, grade, count, pistons);
  return sameGrade(grade, STANDARD) ? { ...sized, size: AS_FITTED.size } : sized;
}

const AS_FITTED = { size: 'as fitted', code: undefined, onShelf: 0 } as const;
