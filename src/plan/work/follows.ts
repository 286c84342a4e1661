import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Operation } from '../../documents/planning/operations.ts';
import { BANK } from '../../layout/family.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Job } from './job.ts';
import { AFTER_RENEWING } from './renewal/afterRenewing.ts';

/** What a machine shop looks at because of a job. Common practice, no source: the maker's manual comes first. */
export const AT_THE_SHOP: Readonly<Partial<Record<Operation, readonly string[]>>> = {
  straighten: ['crack test again after straightening'],
  'line bore': ['crank axis against the deck: it may have risen, and with it the pistons'],
  surface: ['parallel to the crank; block height and head thickness against their limits'],
  bore: [
    'torque plate on and main caps tight while it is bored and honed',
    'each bore finished to its own measured piston, and marked with it',
    'chamfer at the top; crosshatch as the ring maker asks',
  ],
  grind: [
    'crack test again after grinding',
    'fillet radii, thrust width and depth of the hard case against the manual',
    'oil holes chamfered, journals polished, galleries brushed and plugged anew',
    'undersize stamped on the crankshaft',
  ],
};

/** Of faces that lie on one crank at several places. */
const ON_BANKS_AT_THE_SHOP: readonly string[] = [
  'banks equal and parallel to the crank; block height and head thickness against their limits',
];

export const atTheShopOf = (operation: Operation, layout: Layout): readonly string[] | undefined =>
  isOnBanks(operation, layout) ? ON_BANKS_AT_THE_SHOP : AT_THE_SHOP[operation];

const isOnBanks = (operation: Operation, layout: Layout): boolean =>
  operation === 'surface' && layout.positionsOf(BANK).length > 1;

/** What follows here, when the part is back. */
const AFTERWARDS: Readonly<Partial<Record<Operation, readonly string[]>>> = {
  straighten: ['read the runout again at every main'],
  'line bore': [
    'timing gears: backlash, where the axis moved',
    'every housing measured again, its cap tightened as in the engine',
  ],
  surface: [
    'both heights together against their limit; piston protrusion, and the head gasket by it; liner counterbores',
    'valve to piston, cam timing, pushrods or lifter preload, injector projection',
    'bolts that may bottom; front cover; of a vee engine the intake faces and their ports',
  ],
  bore: ['ring end gaps in the finished bores'],
  resize: [
    'housing bore and roundness measured, cap tightened as in the engine',
    'rod length, bend and twist',
  ],
  grind: ['bearings of that undersize', 'every journal measured here, washed and at room temperature'],
};

/** Of what came back cut and is not right, and whose size nobody knows. Common practice, no source. */
export const sizeFirst = ({ label }: Characteristic, operation: 'bore' | 'grind'): readonly string[] => [
  `measure ${label}, and state the size under machined: before any more metal goes`,
  `if it came back like this, show these figures to the shop that ${CUT_WORDS[operation]} it, and send it back`,
];

const CUT_WORDS = { bore: 'bored', grind: 'ground' } as const;

const OF_WORK: Readonly<Partial<Record<Operation, readonly string[]>>> = Object.fromEntries(
  [...new Set([...Object.keys(AT_THE_SHOP), ...Object.keys(AFTERWARDS)])].map((each) => [
    each,
    [...(AT_THE_SHOP[each as Operation] ?? []), ...(AFTERWARDS[each as Operation] ?? [])],
  ]),
);

const ON_BANKS: readonly string[] = [...ON_BANKS_AT_THE_SHOP, ...(AFTERWARDS.surface ?? [])];

/** A job of an engine with banks. */
export const onBanks = (job: Job, layout: Layout): Job =>
  isOnBanks(job.operation, layout) ? { ...job, follows: ON_BANKS } : job;

const OF_RENEWAL: ReadonlyMap<string | undefined, readonly string[]> = new Map(
  Object.entries(AFTER_RENEWING).map(([id, all]) => [id, all.map(({ text }) => text)]),
);

const NOTHING: readonly string[] = [];

/** A hole for a guide, a seat or a lifter takes no piston. Common practice, no source. */
export const OF_A_HOLE_AT_THE_SHOP: readonly string[] = [
  'each hole finished to its own measured part, and marked with it',
];
const OF_A_HOLE: readonly string[] = [
  ...OF_A_HOLE_AT_THE_SHOP,
  'guides reamed to their stems, seats cut true to their guides',
];

type Done = Pick<Job, 'operation' | 'part'>;

export const isBoredHole = ({ operation, part }: Done): boolean =>
  operation === 'bore' && part?.boredInto !== undefined;

/** What has to be done or looked at because of work on a part; the same list for the same work. */
export function followsOf(job: Done): readonly string[] {
  if (isBoredHole(job)) return OF_A_HOLE;
  return (job.operation === 'renew' ? OF_RENEWAL.get(job.part?.id) : OF_WORK[job.operation]) ?? NOTHING;
}
