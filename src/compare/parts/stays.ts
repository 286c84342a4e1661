import type { Place } from '../../diagnostic/place.ts';
import type { PartChange } from '../../documents/session/partChanges.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Parts } from '../../layout/part.ts';
import type { PartAt } from '../../layout/readPart.ts';
import type { Judgeable } from '../state.ts';

/** A part in one engine, from the session that says it is fitted to the one that has another in its place. */
export interface Stay {
  readonly of: Judgeable;
  /** As the engine names it, such as `crankshaft`. */
  readonly name: string;
  readonly mark: string;
  /** What it is in that engine; none for a part that only the shop knows. */
  readonly parts: readonly PartAt[];
  /** Undefined where the engine came with it. */
  readonly since: SessionDocument | undefined;
  /** Undefined where no session says that it came out. */
  readonly until: SessionDocument | undefined;
  /** Those in which it was there. */
  readonly sessions: readonly SessionDocument[];
  readonly place: Place;
}

type Open = { -readonly [Key in keyof Stay]: Stay[Key] } & { readonly seen: SessionDocument[] };

/** Every part of an engine that has a mark. A mark that is said again goes on; another one ends the stay before it. */
export function staysIn(of: Judgeable): readonly Stay[] {
  const { document, sessions } = of.engine;
  const open = new Map<string, Open>();
  const all: Open[] = [];
  const take = (changes: readonly PartChange[], session: SessionDocument | undefined): void => {
    for (const change of changes) {
      if (change.how === 'replaced') endReplaced(change, session, open, of.registry.parts);
      for (const marked of marksOf(change)) begin(marked, session);
    }
  };
  const begin = ({ key, name, mark, parts, place }: Marked, session: SessionDocument | undefined): void => {
    const before = open.get(key);
    if (before?.mark === mark) return;
    if (before !== undefined) before.until = session;
    const seen: SessionDocument[] = [];
    const stay = { of, name, mark, parts, since: session, until: undefined, sessions: seen, seen, place };
    open.set(key, stay);
    all.push(stay);
  };
  take(document.partChanges, undefined);
  for (const session of sessions) {
    take(session.partChanges, session);
    for (const stay of open.values()) stay.seen.push(session);
  }
  return all;
}

interface Marked {
  /** The part and where: one has one mark at a time. */
  readonly key: string;
  readonly name: string;
  readonly mark: string;
  readonly parts: readonly PartAt[];
  readonly place: Place;
}

function marksOf({ how, name, parts, mark, marksAt, place }: PartChange): readonly Marked[] {
  if (how !== 'fitted') return [];
  const called = parts[0]?.part.label ?? name;
  const whole = mark === undefined ? [] : [{ key: called, name: called, mark, parts, place }];
  return [
    ...whole,
    ...marksAt.map((each) => ({
      key: `${called} ${each.parts.flatMap(({ positions }) => positions.map(({ key }) => key)).join()}`,
      name: each.parts[0]?.part.label ?? called,
      mark: each.mark,
      parts: each.parts,
      place,
    })),
  ];
}

/** A crankshaft that was replaced took its mark with it. */
function endReplaced(
  change: PartChange,
  session: SessionDocument | undefined,
  open: Map<string, Open>,
  parts: Parts,
): void {
  for (const [key, stay] of open) {
    const isIt =
      change.parts.length === 0
        ? change.name === stay.name
        : stay.parts.some((own) => change.parts.some((each) => holds(each, own, parts)));
    if (!isIt) continue;
    stay.until = session;
    open.delete(key);
  }
}

const holds = (replaced: PartAt, own: PartAt, parts: Parts): boolean =>
  parts.within(replaced.part).includes(own.part) &&
  (replaced.positions.length === 0 ||
    (own.positions.length > 0 && own.positions.every((each) => replaced.positions.includes(each))));
