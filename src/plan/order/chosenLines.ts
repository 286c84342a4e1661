import type { Row } from '../../checks/judge/row.ts';
import { unitOf } from '../../checks/judge/session.ts';
import { gradeText } from '../../documents/grades/grade.ts';
import type { Stage } from '../../documents/session/stage.ts';
import type { Part } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { fineDecimals, formatAmount } from '../../quantity/format.ts';
import { absolute, subtract } from '../../quantity/fraction.ts';
import { wantedAt } from '../fit/wanted.ts';
import type { PlanContext } from '../work/context.ts';
import type { Job } from '../work/job.ts';
import { placesOf } from '../work/jobTitle.ts';
import { pistonLines, type Shelf, shellLines } from './mateLines.ts';
import { goodsOf, type NeededLine } from './orderLine.ts';
import { measureText, unreadBehind } from './toMeasure.ts';

/** What is to be chosen anew: bought at once where it was chosen or its sizes are known, else when they are. */
export function chosenLines(
  context: PlanContext,
  job: Job,
  shelf: Shelf,
  bought: (part: Part) => ReadonlySet<Position>,
): readonly NeededLine[] {
  const { operation, part, name, rows, urgency } = job;
  if (operation !== 'choose' || part === undefined || urgency === 'may') return [];
  const all = context.engine.document.layout.positionsOf(part.family);
  const places = placesOf(job, context.engine.document.layout);
  const due = places.length === 0 ? all : all.filter((position) => places.includes(position));
  const asked = due.filter((position) => !bought(part).has(position));
  if (due.length > 0 && asked.length === 0) return [];
  if (part.sized?.liesIn !== undefined) return shellLines(context, part, asked, name, shelf);
  if (part.id === 'piston') return pistonLines(context, part, asked, name, shelf);
  const endPlay = rows.find(({ characteristic: { id } }) => id === 'crankshaft_end_play');
  if (endPlay !== undefined) return [washerLine(context, part, endPlay, name, shelf)];
  const waitsFor = measureText(unreadBehind(rows, context));
  return [
    {
      ...goodsOf(part),
      code: undefined,
      size: 'as fitted',
      count: Math.max(1, asked.length),
      onShelf: 0,
      when: waitsFor === undefined ? 'now' : 'after measuring',
      for: name,
      waitsFor,
    },
  ];
}

/** Put together as it will run. */
const TOGETHER: readonly Stage[] = ['trial', 'rebuild'];

/** Washers are chosen by the end play as it is with those that are in: at the trial. */
function washerLine(
  context: PlanContext,
  { plural }: Part,
  endPlay: Row,
  name: string,
  { fits: { washers } }: Shelf,
): NeededLine {
  const line = { what: plural, code: undefined, count: 1, onShelf: 0, for: name } as const;
  const washer = washers?.chosen?.washer;
  if (washer !== undefined)
    return { ...line, code: washer.code, size: gradeText(washer.size), onShelf: 1, when: 'now' };
  const { characteristic, position, routes } = endPlay;
  const [read, wanted] = [routes[0], wantedAt(context, characteristic, position)];
  const wait = { ...line, size: 'by plan --fit', when: 'after measuring' } as const;
  if (read === undefined || !TOGETHER.includes(read.route.readIn.stage))
    return { ...wait, waitsFor: `measure ${characteristic.label} at the trial` };
  if (wanted === undefined)
    return { ...wait, waitsFor: `state limits of new parts for ${characteristic.label}` };
  const [unit, off] = [unitOf('length', context.engine), subtract(read.mean, wanted.middle)];
  const by = formatAmount(absolute(off), unit, fineDecimals(unit));
  return { ...line, size: `${by} ${off.n > 0n ? 'thicker' : 'thinner'}, both together`, when: 'now' };
}
