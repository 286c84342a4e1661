import type { Engine } from '../../documents/assemble.ts';
import { BANK, ENGINE } from '../../layout/family.ts';
import { part } from '../../layout/makePart.ts';
import { namedAt } from '../../layout/naming.ts';
import type { Part, Parts } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import { atBank, bankOf } from '../work/heads/byBank.ts';
import type { Job } from '../work/job.ts';
import { placesOf } from '../work/jobTitle.ts';

/** The part that is carried to a machine shop for a job: the crankshaft for its journals, the block for its bores. */
export const carriedPart = ({ part }: Pick<Job, 'part'>, parts: Parts): Part | undefined =>
  part &&
  (parts.find(PRESSED_INTO[part.id] ?? '') ??
    parts.all.find((each) => CARRIED.includes(each.id) && parts.within(each).includes(part)) ??
    part);

/** By the id of what is pressed in, and is measured as no part of it. */
const PRESSED_INTO: Readonly<Record<string, string>> = { small_end_bush: 'rod', cam_bearing: 'block' };

const CARRIED: readonly string[] = ['crankshaft', 'block', 'head', 'camshaft', 'rod'];

/** One thing that is carried: rods go together, and of the heads of a vee each by itself. */
export interface Carried {
  readonly part: Part;
  /** Which head it is. */
  readonly at: Position | undefined;
}

export const carriedName = ({ part: { label }, at }: Carried): string =>
  at === undefined ? label : namedAt(label, at);

/** Everything that is carried for some jobs, each with what is to be done to it. */
export function carriedFor(
  jobs: readonly Job[],
  engine: Pick<Engine, 'parts' | 'document'>,
): readonly (Carried & { readonly jobs: readonly Job[] })[] {
  const { layout } = engine.document;
  const named = new Map<string, Part>();
  const pieces = jobs.flatMap((job): readonly (Carried & { readonly job: Job })[] => {
    const carried = carriedPart(job, engine.parts) ?? partByName(job, named);
    const banks = new Set(
      carried.family === BANK ? placesOf(job, layout).flatMap((each) => bankOf(each, layout) ?? []) : [],
    );
    return banks.size === 0
      ? [{ part: carried, at: undefined, job }]
      : [...banks].map((at) => ({ part: carried, at, job: atBank(job, at, engine) }));
  });
  const isSame = (a: Carried, b: Carried): boolean => a.part === b.part && a.at === b.at;
  return pieces
    .filter((piece, index) => pieces.findIndex((each) => isSame(each, piece)) === index)
    .map((piece) => ({
      part: piece.part,
      at: piece.at,
      jobs: pieces.filter((each) => isSame(each, piece)).map(({ job }) => job),
    }));
}

/** What is no part of ours is carried there under the name that somebody gave it. */
function partByName({ found, name }: Job, named: Map<string, Part>): Part {
  const called = found.flatMap(({ on }) => on).join(', ') || name;
  const known = named.get(called) ?? part(called, called, ENGINE, {});
  named.set(called, known);
  return known;
}
