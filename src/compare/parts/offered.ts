import type { Registry } from '../../characteristics/registry.ts';
import { foundText } from '../../checks/open/found.ts';
import { openFound, seenIn } from '../../checks/open/openFound.ts';
import type { Place } from '../../diagnostic/place.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { SizeStatement } from '../../documents/grades/statements.ts';
import type { NotOffered, OfferedPart, OfferedParts } from '../../documents/parts/offeredPart.ts';
import type { Bench } from '../../documents/parts/shelfPart.ts';
import type { Layout } from '../../layout/layout.ts';
import { readPart } from '../../layout/readPart.ts';
import type { Judgeable } from '../state.ts';
import { conflictsOf, titleOf } from './conflicts.ts';
import type { MarkedPart, ShelfPart } from './markedParts.ts';
import { isCalled } from './marks.ts';
import { measuredPart } from './measuredPart.ts';

/** A part with its document, and the bench that this engine is for it; or what keeps it from being one. */
export interface BenchedPart {
  readonly marked: MarkedPart;
  readonly shelf: ShelfPart;
  readonly bench: Bench<Registry> | string;
}

/** Of parts that fit an engine those that lie ready for it, and why the others do not. What it has itself is neither. */
export function offeredTo(of: Judgeable, parts: readonly BenchedPart[]): OfferedParts {
  const ready = parts.filter(({ marked }) => !isIn(of.engine, marked)).map((each) => offeredOrNot(of, each));
  return {
    offered: ready.flatMap((each) => ('part' in each ? each : [])),
    notOffered: ready.flatMap((each) => ('why' in each ? each : [])),
  };
}

const lastStay = ({ stays }: MarkedPart) => stays.at(-1);

const isIn = ({ folder }: Engine, part: MarkedPart): boolean =>
  part.stays.some(({ of, to }) => to === undefined && of.engine.folder === folder);

function offeredOrNot(of: Judgeable, { marked, shelf, bench }: BenchedPart): OfferedPart | NotOffered {
  const why = hindrance(of.engine, marked, shelf) ?? (typeof bench === 'string' ? bench : undefined);
  const meaning = readPart(shelf.name, of.registry.parts, of.engine.document.layout);
  const [at] = meaning.kind === 'parts' ? meaning.at : [];
  if (why !== undefined || typeof bench === 'string' || at === undefined)
    return { called: titleOf(marked), why: why ?? 'no part that is chosen for an engine' };
  const { layout } = of.engine.document;
  const last = lastStay(marked);
  const since = last?.to ?? '';
  const { engine } = bench;
  const [before, inspections] = [false, true].map((isSince) =>
    engine.sessions.filter(({ date }) => date >= since === isSince),
  );
  return {
    part: at.part,
    mark: marked.mark,
    lies: shelf.lies,
    ranIn: last && { folder: last.of.engine.folder, at: at.positions[0]?.name },
    sizes: [
      ...engine.document.fitted,
      ...marked.stays.flatMap((stay) => sizesIn(stay, layout)),
      ...(before ?? []).flatMap(({ sizes }) => sizes),
    ],
    inspections: inspections ?? [],
    place: shelf.place,
  };
}

/** Another engine has it, another job, nobody can tell, or it is no good as it lies. */
function hindrance({ document, folder }: Engine, marked: MarkedPart, shelf: ShelfPart): string | undefined {
  const conflict = conflictsOf(measuredPart(marked))[0];
  if (conflict !== undefined) return `what documents say of it cannot all be true: ${conflict.message}`;
  const there = marked.stays.find(({ to }) => to === undefined);
  if (there !== undefined) return `in ${there.of.engine.document.name} since ${there.from}`;
  const { reserved } = shelf;
  const ours = { engine: document.name, folder };
  const isOurs = reserved !== undefined && (reserved === document.job.number || isCalled(reserved, ours));
  if (reserved !== undefined && !isOurs) return `reserved for ${reserved}`;
  return notSettled(marked);
}

/** What was found of it, in an engine or outside, and nobody has dealt with: what is to be renewed is scrap. */
function notSettled({ sittings }: MarkedPart): string | undefined {
  const sessions = sittings.map(({ session }) => session);
  for (const { engine, registry, session, parts } of sittings) {
    const within = parts.flatMap(({ part }) => registry.parts.within(part));
    const open = seenIn(session, openFound(sessions, engine, registry)).find((each) =>
      each.parts.some(({ part }) => within.includes(part)),
    );
    if (open !== undefined) return `${foundText(open)} (${placeText(open.place)})`;
  }
  return undefined;
}

const placeText = ({ path, line }: Place): string => `${path}:${line}`;

/** Positions of another engine's layout by their names in this one. */
function sizesIn({ of, parts, sessions, since }: MarkedPart['stays'][number], layout: Layout) {
  const within = parts.flatMap(({ part }) => of.registry.parts.within(part));
  const said = [
    ...(since === undefined ? of.engine.document.fitted : []),
    ...sessions.flatMap(({ sizes }) => sizes),
  ];
  return said.flatMap((each): readonly SizeStatement[] => {
    const { part, positions } = each.at;
    const here = positions.flatMap(
      ({ key }) => layout.positionsOf(part.family).find((position) => position.key === key) ?? [],
    );
    if (!within.includes(part) || here.length < positions.length) return [];
    return [{ ...each, at: { part, positions: here } }];
  });
}
