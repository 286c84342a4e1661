import type { SessionDocument } from '../../documents/session/session.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Part, Parts } from '../../layout/part.ts';
import type { Position } from '../../layout/position.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { isAt } from '../history/dependsOn.ts';
import type { Row } from '../judge/row.ts';

export interface TestedIn {
  readonly run: readonly SessionDocument[];
  readonly parts: Parts;
  readonly layout: Layout;
}

/** What was done that may have cracked a part: `main journals machined`, which is `grinding`. */
export interface CrackingWork {
  readonly text: string;
  readonly kind: string;
}

/** What was done to a part since it was tested that may have cracked it. */
export function workSinceTest(test: Row, around: TestedIn): string | undefined {
  const { run, parts } = around;
  const [judged] = test.routes;
  const tested = parts.find(test.characteristic.of ?? '');
  // What was read before work of its own session is judged in a copy of that.
  const at = run.findIndex(({ path }) => path === judged?.route.readIn.path);
  if (tested === undefined || at < 0) return undefined;
  const [readIn, ...later] = run.slice(at);
  const block = judged?.route.block?.index ?? -1;
  const workAfter = (readIn?.work ?? []).filter(({ index }) => index > block);
  const done = [{ partChanges: [], work: workAfter }, ...later];
  return crackingWork(done, tested, test.position, around)?.text;
}

/**
 * What sessions say was done to a part since it came that may have cracked it: heat of grinding and welding cracks, straightening
 * does, and a cut may open what was closed. Common practice, no source.
 */
export function crackingWork(
  sessions: readonly Pick<SessionDocument, 'partChanges' | 'work'>[],
  part: Part,
  position: Position,
  { parts, layout }: Omit<TestedIn, 'run'>,
): CrackingWork | undefined {
  const isIt = (each: PartAt): boolean =>
    each.part === part && isAt(part.id, position, each, { parts }, layout);
  const mayCrack = (each: PartAt): boolean => isIt(each) || isOfItsShaft(each.part, part, parts);
  const came = sessions.findLastIndex(({ partChanges }) =>
    partChanges.some((each) => each.how === 'replaced' && each.parts.some(isIt)),
  );
  const since = sessions.slice(came + 1);
  const machined = since
    .flatMap(({ partChanges }) => partChanges)
    .find((each) => each.how === 'machined' && each.parts.some(mayCrack));
  if (machined !== undefined) return { text: `${machined.name} machined`, kind: 'grinding' };
  for (const { work, on, parts: worked } of since.flatMap((each) => each.work)) {
    const kind = kindOfCracking(work);
    if (kind !== undefined && worked.some(mayCrack)) return { text: `${on.name} ${work}`, kind };
  }
  return undefined;
}

/** A journal, and whatever else is ground of the one piece that a shaft is. */
const isOfItsShaft = (part: Part, shaft: Part, parts: Parts): boolean =>
  part !== shaft &&
  parts.within(shaft).includes(part) &&
  parts.within(shaft).some(({ sized }) => sized?.made === 'under') &&
  part.material.some((each) => shaft.material.includes(each));

/** As `work:` says it, in the first or the last word of each thing done: `cold straightened`, `cleaned and reground`. */
const MAY_CRACK: ReadonlyMap<string | undefined, string> = new Map([
  ['straightened', 'straightening'],
  ['ground', 'grinding'],
  ['reground', 'grinding'],
  ['welded', 'welding'],
]);

const kindOfCracking = (work: string): string | undefined =>
  work
    .toLowerCase()
    .split(/ and |, ?|; ?/)
    .map((each) => each.trim().split(/[\s-]+/))
    .map((words) => MAY_CRACK.get(words[0]) ?? MAY_CRACK.get(words.at(-1)))
    .find((kind) => kind !== undefined);
