import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import { isDecidedReuse, type Observation } from '../../documents/session/observations.ts';
import { isFreshWhere, type PartChange } from '../../documents/session/partChanges.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { isAt } from '../history/dependsOn.ts';
import { isSurfaceOf } from './deepFound.ts';
import { partsCalled, partsMeant } from './partsMeant.ts';

/**
 * What was seen in sessions of an engine and nobody has dealt with since: the part was not worked on, machined, replaced,
 * fitted new, or found fit for use. Of several things that one line names those that are left.
 */
export const openFound = (
  sessions: readonly SessionDocument[],
  engine: Engine,
  registry: Registry,
): readonly Observation[] =>
  sessions.flatMap((session, index) => {
    if (session.observations.length === 0) return [];
    const done = [...doneIn(session), ...sessions.slice(index + 1).flatMap(doneLater)];
    return session.observations
      .filter((each) => !isDecidedReuse(each, session))
      .flatMap((each) => whatIsLeft(each, done, engine, registry) ?? []);
  });

/** Those that a session saw. */
export const seenIn = (
  { observations }: SessionDocument,
  open: readonly Observation[],
): readonly Observation[] => open.filter((each) => observations.some(({ place }) => place === each.place));

/** What was done to a part: by the names that settle it whole, and whether it was done at a place. */
interface Done {
  readonly names: readonly string[];
  readonly isDoneAt: (isHere: IsHere) => boolean;
}

type IsHere = (part: PartAt) => boolean;

/** In the session in which it was seen: what is said to be machined or fitted there was so before. Only of known parts. */
const doneIn = ({ partChanges, work }: SessionDocument): readonly Done[] => [
  ...partChanges.filter(({ how }) => how === 'replaced').map(({ parts }) => doneTo([], parts)),
  ...work.map(({ parts }) => doneTo([], parts)),
];

const doneLater = (session: SessionDocument): readonly Done[] => [
  ...session.partChanges.map((change) => ({
    names: isFreshAllOver(change) ? [change.name] : [],
    isDoneAt: (isHere: IsHere) => isMadeAnew(change, isHere),
  })),
  ...session.work.map(({ on, parts }) => doneTo([on.name], parts)),
  ...session.observations
    .filter((each) => isDecidedReuse(each, session))
    .map(({ on, parts }) => doneTo(on, parts)),
];

/** Whether a change makes the part at a place another one. */
export const isMadeAnew = (change: PartChange, isHere: IsHere): boolean =>
  change.parts.some(isHere) && isFreshWhere(change, isHere);

const doneTo = (names: readonly string[], parts: readonly PartAt[]): Done => ({
  names,
  isDoneAt: (isHere) => parts.some(isHere),
});

const isFreshAllOver = (change: PartChange): boolean =>
  isFreshWhere(change, () => false) && change.conditionAt.every(({ condition }) => condition !== 'used');

/** Each thing that it names has to be dealt with, and of several positions each. */
function whatIsLeft(
  whole: Observation,
  done: readonly Done[],
  engine: Engine,
  registry: Registry,
): Observation | undefined {
  const left = whole.on.filter((name) => !isSettled(name, whole, done, engine, registry));
  if (left.length === 0) return undefined;
  const parts = left.flatMap((name) => partsCalled(name, engine));
  return left.length === whole.on.length ? whole : { ...whole, on: left, parts };
}

function isSettled(
  name: string,
  { remedy }: Observation,
  done: readonly Done[],
  engine: Engine,
  registry: Registry,
): boolean {
  const { layout } = engine.document;
  if (done.some(({ names }) => names.some((each) => plain(each) === plain(name)))) return true;
  const called = partsCalled(name, engine);
  const meant = remedy === 'machine' ? surfacesToCut(called, engine) : partsMeant(called, remedy, engine);
  const places = meant.flatMap(({ part, positions }) =>
    (positions.length > 0 ? positions : layout.positionsOf(part.family)).map((position) => ({
      part,
      position,
    })),
  );
  const isDone = places.every(({ part, position }) =>
    done.some(({ isDoneAt }) => isDoneAt((at) => isAt(part.id, position, at, registry, layout))),
  );
  return places.length > 0 && isDone;
}

/** The journal of `main 3` is what is ground of it, and settles it: its shell and its housing are not machined. */
function surfacesToCut(at: readonly PartAt[], engine: Engine): readonly PartAt[] {
  const { parts } = engine;
  const surfaces = at.flatMap((whole) =>
    whole.part.family.isSingle
      ? []
      : parts
          .within(whole.part)
          .filter((part) => isSurfaceOf(part, whole.part, engine))
          .map((part) => ({ whole: whole.part, at: { ...whole, part } })),
  );
  const others = at.filter(({ part }) => !surfaces.some(({ whole }) => parts.within(whole).includes(part)));
  return [...surfaces.map((each) => each.at), ...others];
}

const plain = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, ' ');
