import type { Place } from '../../diagnostic/place.ts';
import { type DocumentContext, report } from '../amount.ts';
import type { Engine } from '../assemble.ts';
import { readDate } from '../date.ts';
import type { Measures } from '../measure.ts';
import type { OpenedDocument } from '../opened.ts';
import { readPartChanges } from '../session/partChanges.ts';
import { compareSessions, readSession, type SessionDocument } from '../session/session.ts';
import { readUnits, unitsOver } from '../units.ts';
import { childOf, itemsOf, textAt, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** A part that has a document of its own: kind `part`. */
export interface ShelfPart<Known extends Measures = Measures> {
  readonly name: string;
  readonly mark: string;
  readonly fits: readonly string[];
  readonly bought: string | undefined;
  readonly from: readonly CameOut[];
  readonly lies: string | undefined;
  /** The job or the engine that has it. */
  readonly reserved: string | undefined;
  /** The engine that it fits, as if nothing but this part were there; none where no engine of that name is known. */
  readonly bench: Bench<Known> | undefined;
  readonly place: Place;
}

/** The engine that a part came out of, by its name, and when. */
export interface CameOut {
  readonly engine: string;
  readonly date: string;
  readonly place: Place;
}

export interface Bench<Known extends Measures> {
  readonly registry: Known;
  /** Its sessions are the part's inspections. */
  readonly engine: Engine;
}

/** The engine of one of these names, with the characteristics that serve it. */
export type EngineCalled<Known extends Measures> = (name: string) => Bench<Known> | undefined;

export function readShelfPart<Known extends Measures>(
  { root, source }: OpenedDocument,
  engineCalled: EngineCalled<Known>,
  problems: DocumentContext['problems'],
): ShelfPart<Known> | undefined {
  const [name, mark] = [root && textAt(root, 'part'), root && textAt(root, 'mark')];
  if (root === undefined || name === undefined || mark === undefined) return undefined;
  const plain: DocumentContext = { source, units: new Map(), problems };
  const fits = textsOf(childOf(root, 'fits'));
  const served = fits.flatMap((each) => engineCalled(each) ?? [])[0];
  const units = unitsOver(readUnits(root, plain), served?.engine.units ?? new Map());
  const context = { ...plain, units };
  const inspections = childOf(root, 'inspections');
  if (served === undefined && inspections !== undefined) {
    const help = 'name one in fits: its layout and its limits count';
    report(context, 'value', inspections.span, '`fits:` names no engine of this shop', help);
  }
  return {
    name,
    mark,
    fits,
    bought: textAt(root, 'bought'),
    from: itemsOf(childOf(root, 'from')).map((item) => ({
      engine: textAt(item, 'engine') ?? '',
      date: readDate(childOf(item, 'date'), context) ?? '',
      place: source.place(item.span),
    })),
    lies: textAt(root, 'lies'),
    reserved: textAt(root, 'reserved'),
    bench: served && benchOf(root, served, context),
    place: source.place((childOf(root, 'mark') ?? root).span),
  };
}

function benchOf<Known extends Measures>(
  root: Node,
  { engine, registry: measures }: Bench<Known>,
  context: DocumentContext,
): Bench<Known> {
  const { layout } = engine.document;
  const around = {
    measures,
    layout,
    grids: engine.grids,
    sequences: { documents: [], broken: new Set<string>() },
  };
  const partChanges = readPartChanges(root, { parts: measures.parts, layout }, context);
  const sessions = itemsOf(childOf(root, 'inspections')).map((item, index): SessionDocument => {
    const session = readSession(item, around, context);
    // Errors of readings go by the path of their session: those of two sittings are not shared.
    return {
      ...session,
      path: `${session.path}#/inspections/${index}`,
      name: `${session.name}, ${session.date}`,
    };
  });
  return {
    registry: measures,
    engine: {
      ...engine,
      document: { ...engine.document, fitted: partChanges.flatMap(({ sizes }) => sizes), partChanges },
      sessions: sessions.sort(compareSessions),
      sequences: [],
      notJudged: [],
      broken: [],
    },
  };
}
