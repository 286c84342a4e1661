import type { Engine } from '../../documents/assemble.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Part } from '../../layout/part.ts';
import { atTheShopOf, isBoredHole, OF_A_HOLE_AT_THE_SHOP } from '../work/follows.ts';
import type { Job } from '../work/job.ts';
import { MACHINING } from '../work/operation.ts';

/** Whether a machine shop does it: what is cut, and what is pressed in and finished in its place. */
export const isShopWork = ({ operation, part }: Job, engine: Engine): boolean =>
  MACHINING.includes(operation) ||
  operation === 'machine or renew' ||
  (operation === 'renew' && part !== undefined && isPressedIn(part, engine));

const PRESSED_IN: readonly string[] = ['valve_guide', 'valve_seat', 'small_end_bush', 'cam_bearing'];

/** What is bored and renewed has a liner; a wet one stands out of the deck by a measured height, and is put in by hand. */
const isPressedIn = ({ id, sized }: Part, { limits }: Engine): boolean =>
  PRESSED_IN.includes(id) ||
  (sized?.made === 'over' &&
    sized.fits === undefined &&
    !limits.some((document) => document.limits.has('liner_protrusion')));

/** By the id of a part that is pressed in. Common practice, no source. */
const WHERE_PRESSED_IN: Readonly<Record<string, readonly string[]>> = {
  valve_guide: ['reamed to size when it is in', 'seat cut true to the new guide'],
  valve_seat: ['cut true to its guide when that is in, and tried with its own valve'],
  small_end_bush: ['oil holes in line; bored or honed to its own pin when it is in'],
  cam_bearing: ['oil holes in line; each bore measured when it is in'],
  cylinder: ['a dry liner pressed home, and its deck cut level with it'],
};

/** What a machine shop looks at because of a job: one list for all jobs of a kind. */
export function atTheShop(job: Pick<Job, 'operation' | 'part'>, layout: Layout): readonly string[] {
  if (isBoredHole(job)) return OF_A_HOLE_AT_THE_SHOP;
  const { operation, part } = job;
  return (
    (operation === 'renew' ? WHERE_PRESSED_IN[part?.id ?? ''] : atTheShopOf(operation, layout)) ?? NOTHING
  );
}

const NOTHING: readonly string[] = [];
