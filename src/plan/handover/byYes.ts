import type { Engine } from '../../documents/assemble.ts';
import type { Agreement } from '../../documents/planning/handedOver.ts';
import { placesMeant } from '../../documents/planning/namedWork.ts';
import type { Operation } from '../../documents/planning/operations.ts';
import type { Position } from '../../layout/position.ts';
import type { Job } from '../work/job.ts';
import { placesOf } from '../work/jobTitle.ts';
import { atPlaces } from '../work/renewal/atPlaces.ts';
import type { Agreements } from './agreement.ts';
import { answerTo } from './answer.ts';

/** What is done to one part after the other is agreed to so: the places of each yes, and those that nobody has agreed to. */
export function byYes(job: Job, agreements: Agreements): readonly Job[] {
  const { engine } = agreements;
  if (!isDoneOneByOne(job, engine)) return [job];
  const { layout } = engine.document;
  const only = (places: readonly Position[]): Job => atPlaces(job, (place) => places.includes(place), engine);
  const yesTo = (each: Job): Agreement | undefined => {
    const answer = answerTo(each, agreements);
    return answer?.kind === 'yes' ? answer.agreement : undefined;
  };
  if (yesTo(job) !== undefined) return [job];
  const places = new Map<Agreement | undefined, readonly Position[]>();
  for (const place of new Set(placesMeant(job.part, placesOf(job, layout), { layout }))) {
    const yes = yesTo(only([place]));
    places.set(yes, [...(places.get(yes) ?? []), place]);
  }
  return places.size < 2 ? [job] : [...places.values()].map(only);
}

const ONE_BY_ONE: readonly Operation[] = ['renew', 'machine or renew', 'choose'];

/** Journals are cut as a set, and so are bores unless the shop cuts each to its own step. */
const isDoneOneByOne = (
  job: Job,
  { planning }: Engine,
): job is Job & { readonly part: NonNullable<Job['part']> } =>
  job.part?.family.isSingle === false &&
  job.at === undefined &&
  (ONE_BY_ONE.includes(job.operation) || (job.cut !== undefined && planning.separate.has(job.part.id)));
