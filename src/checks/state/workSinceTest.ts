import type { SessionDocument } from '../../documents/session/session.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Part, Parts } from '../../layout/part.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { isAt } from '../history/dependsOn.ts';
import type { Row } from '../judge/row.ts';

export interface TestedIn {
  readonly run: readonly SessionDocument[];
  readonly parts: Parts;
  readonly layout: Layout;
}

/**
 * What was done to a part since it was tested that may have cracked it, as `main journals machined`: heat of grinding and welding
 * cracks, straightening does, and a cut may open what was closed. Common practice, no source. Undefined where it was renewed
 * since, or nothing was done.
 */
export function workSinceTest(test: Row, { run, parts, layout }: TestedIn): string | undefined {
  const [judged] = test.routes;
  const tested = parts.find(test.characteristic.of ?? '');
  // What was read before work of its own session is judged in a copy of that.
  const at = run.findIndex(({ path }) => path === judged?.route.readIn.path);
  if (tested === undefined || at < 0) return undefined;
  const [readIn, ...later] = run.slice(at);
  const changes = later.flatMap(({ partChanges }) => partChanges);
  const isTested = (each: PartAt): boolean =>
    each.part === tested && isAt(tested.id, test.position, each, { parts }, layout);
  const mayCrack = (each: PartAt): boolean => isTested(each) || isOfItsShaft(each.part, tested, parts);
  if (changes.some((each) => each.how === 'replaced' && each.parts.some(isTested))) return undefined;
  const machined = changes.find((each) => each.how === 'machined' && each.parts.some(mayCrack));
  const block = judged?.route.block?.index ?? -1;
  const work = [
    ...(readIn?.work ?? []).filter(({ index }) => index > block),
    ...later.flatMap((each) => each.work),
  ];
  const worked = work.find((each) => isSaidToCrack(each.work) && each.parts.some(mayCrack));
  if (machined !== undefined) return `${machined.name} machined`;
  return worked && `${worked.on.name} ${worked.work}`;
}

/** A journal, and whatever else is ground of the one piece that a shaft is. */
const isOfItsShaft = (part: Part, shaft: Part, parts: Parts): boolean =>
  part !== shaft &&
  parts.within(shaft).includes(part) &&
  parts.within(shaft).some(({ sized }) => sized?.made === 'under') &&
  part.material.some((each) => shaft.material.includes(each));

/** As `work:` says it, in the first or the last word of each thing done: `cold straightened`, `cleaned and reground`. */
const MAY_CRACK: readonly (string | undefined)[] = ['straightened', 'ground', 'reground', 'welded'];

const isSaidToCrack = (work: string): boolean =>
  work
    .toLowerCase()
    .split(/ and |, ?|; ?/)
    .map((each) => each.trim().split(/[\s-]+/))
    .some((words) => MAY_CRACK.includes(words[0]) || MAY_CRACK.includes(words.at(-1)));
