import type { Engine } from '../../documents/assemble.ts';
import { type Agreement, plainName, type Sent } from '../../documents/planning/handedOver.ts';
import type { Part, Parts } from '../../layout/part.ts';
import type { Job } from '../work/job.ts';

export const agreements = (engine: Engine): readonly Agreement[] =>
  allHandedOver(engine).flatMap(({ agreed }) => agreed);

export const sendings = (engine: Engine): readonly Sent[] =>
  allHandedOver(engine).flatMap(({ sent }) => sent);

const allHandedOver = ({ document, sessions }: Engine) => [
  document.handedOver,
  ...sessions.map(({ handedOver }) => handedOver),
];

/** What says yes to a job: its own name among the items, or of a job that serves others theirs. */
export function agreementOn(job: Job, engine: Engine): Agreement | undefined {
  const names = [job.name, ...(job.serves?.split(', ') ?? [])].map(plainName);
  return agreements(engine).find(({ items }) => items.some((each) => names.includes(plainName(each))));
}

/** The part that is carried to a machine shop for a job: the crankshaft for its journals, the block for its bores. */
export function carriedPart(job: Job, { all, within }: CarriedParts): Part | undefined {
  const { part } = job;
  if (part === undefined) return undefined;
  return all.find((each) => CARRIED.includes(each.id) && within(each).includes(part)) ?? part;
}

type CarriedParts = { readonly all: Parts['all']; readonly within: (part: Part) => readonly Part[] };

const CARRIED: readonly string[] = ['crankshaft', 'block', 'head', 'camshaft', 'rod'];

export const carriedParts = (parts: Parts): CarriedParts => ({
  all: parts.all,
  within: (part) => parts.within(part),
});
