import { type PlanContext, sizeOfPart } from '../work/context.ts';
import type { Job } from '../work/job.ts';
import { placesText } from '../work/placesText.ts';
import { goodsOf, type NeededLine } from './orderLine.ts';
import { AS_FITTED, mayRenew, placesAsked } from './renewalLines.ts';

/** Nobody buys a bore: what goes into it is bought by its size, or its casting where it cannot be machined. */
export function boreLines(context: PlanContext, job: Job): readonly NeededLine[] {
  const { engine, registry } = context;
  const { part: bore, name } = job;
  const casting = registry.parts.find(bore?.boredInto ?? '');
  if (bore === undefined || casting === undefined || !mayRenew(job)) return [];
  const { layout } = engine.document;
  const places = placesAsked(job, layout);
  const line = { code: undefined, onShelf: 0, when: 'after measuring', for: name } as const;
  const mates = registry.parts.all.filter(({ sized }) => sized?.fits === bore.id);
  if (mates.length === 0)
    return [
      {
        ...line,
        what: casting.label,
        size: AS_FITTED.size,
        count: 1,
        waitsFor: `decide: machine it, or renew the ${casting.label} where that cannot be done`,
      },
    ];
  const size = sizeOfPart(context, bore)?.label ?? bore.label;
  return mates.map((mate) => ({
    ...line,
    ...goodsOf(mate),
    size: 'larger outside',
    count: places.length,
    waitsFor: `measure ${size} ${placesText(places, layout)} as it is finished`,
  }));
}
