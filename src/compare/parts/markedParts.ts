import type { Registry } from '../../characteristics/registry.ts';
import { compareText } from '../../diagnostic/place.ts';
import type { ShelfPart as AnyShelfPart } from '../../documents/parts/shelfPart.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type PartAt, readPart } from '../../layout/readPart.ts';
import { add, compare, type Fraction, subtract, ZERO } from '../../quantity/fraction.ts';
import type { Judgeable } from '../state.ts';
import { endOf } from './marks.ts';
import { type Stay, staysIn } from './stays.ts';

/** A part with a document of its own. */
export type ShelfPart = AnyShelfPart<Registry>;

/** A part of a shop by the mark that is stamped on it. */
export interface MarkedPart {
  /** In trade words, such as `crankshaft`. */
  readonly name: string;
  readonly mark: string;
  /** By when they began. */
  readonly stays: readonly DatedStay[];
  readonly shelf: ShelfPart | undefined;
  /** Every sitting of which it was part, in engines and outside, by date. */
  readonly sittings: readonly Sitting[];
}

export interface DatedStay extends Stay {
  /** The day from which it was there; of what an engine came with that of its first session. */
  readonly from: string;
  /** The day on which it came out, by a session or by the part's own document. */
  readonly to: string | undefined;
}

/** A session of an engine that the part was in, or an inspection outside. */
export interface Sitting extends Judgeable {
  readonly session: SessionDocument;
  /** What it is there. */
  readonly parts: readonly PartAt[];
  /** Outside of any engine. */
  readonly isBench: boolean;
  /** How long the part itself has run; undefined where a session does not say. */
  readonly hours: Fraction | undefined;
}

/** Every part with a mark, by name and mark. */
export function markedParts(
  engines: readonly Judgeable[],
  shelf: readonly ShelfPart[],
): readonly MarkedPart[] {
  const stays = engines.flatMap(staysIn);
  const keys = new Map<string, { readonly name: string; readonly mark: string }>();
  for (const { name, mark } of [...stays, ...shelf.map(ofShelf)]) keys.set(`${name} ${mark}`, { name, mark });
  return [...keys.values()]
    .sort((a, b) => compareText(a.name, b.name) || compareText(a.mark, b.mark))
    .map(({ name, mark }) => {
      const own = shelf.find((each) => each.mark === mark && ofShelf(each).name === name);
      const dated = stays
        .filter((stay) => stay.name === name && stay.mark === mark)
        .map((stay) => datedStay(stay, own))
        .sort((a, b) => compareText(a.from, b.from));
      return { name, mark, stays: dated, shelf: own, sittings: sittingsOf(dated, own) };
    });
}

/** By the word that engines use for it, where the document's own is another word for the same. */
export function ofShelf({ name, mark, bench }: ShelfPart): { readonly name: string; readonly mark: string } {
  return { name: partsOfShelf(bench, name)[0]?.part.label ?? name, mark };
}

function datedStay(stay: Stay, shelf: ShelfPart | undefined): DatedStay {
  const { engine } = stay.of;
  const from = stay.since?.date ?? engine.sessions[0]?.date ?? '';
  const about = { ...stay, from, to: stay.until?.date, engine: engine.document.name, folder: engine.folder };
  const cameOut = (shelf?.from ?? []).map((each) => ({ ...each, name: stay.name, mark: stay.mark }));
  const to = endOf(about, cameOut);
  const sessions = stay.sessions.filter(({ date }) => to === undefined || date <= to);
  return { ...stay, sessions, from, to };
}

function sittingsOf(stays: readonly DatedStay[], shelf: ShelfPart | undefined): readonly Sitting[] {
  let before: Fraction | undefined = ZERO;
  const inEngines = stays.flatMap((stay) => {
    const counted = countedIn(stay, before);
    before = counted.after;
    return counted.sittings;
  });
  const outside = benchSittings(shelf).map((each) => ({
    ...each,
    hours: hoursBy(each.session.date, inEngines),
  }));
  return [...inEngines, ...outside].sort((a, b) => compareText(a.session.date, b.session.date));
}

/** From the hours of the engine when it went in. */
function countedIn(
  { of, parts, sessions, since }: DatedStay,
  before: Fraction | undefined,
): { readonly sittings: readonly Sitting[]; readonly after: Fraction | undefined } {
  const read = sessions.flatMap(({ hours }) => hours?.amount ?? []);
  // Of what an engine came with nobody knows what it had run.
  const start = since?.hours?.amount ?? (since === undefined ? ZERO : read[0]);
  const own = (hours: Fraction | undefined): Fraction | undefined =>
    hours === undefined || start === undefined || before === undefined
      ? undefined
      : add(before, subtract(hours, start));
  const last = read.reduce<Fraction | undefined>(
    (a, b) => (a === undefined || compare(b, a) > 0 ? b : a),
    undefined,
  );
  return {
    sittings: sessions.map((session) => ({
      ...of,
      session,
      parts,
      isBench: false,
      hours: own(session.hours?.amount),
    })),
    after: own(last),
  };
}

/** It runs in engines alone. */
const hoursBy = (day: string, inEngines: readonly Sitting[]): Fraction | undefined => {
  const earlier = inEngines.filter(({ session }) => session.date <= day);
  return earlier.length === 0 ? ZERO : earlier.findLast(({ hours }) => hours !== undefined)?.hours;
};

function benchSittings(shelf: ShelfPart | undefined): readonly Omit<Sitting, 'hours'>[] {
  if (shelf?.bench === undefined) return [];
  const { engine, registry } = shelf.bench;
  const parts = partsOfShelf(shelf.bench, shelf.name);
  return engine.sessions.map((session) => ({ engine, registry, session, parts, isBench: true }));
}

const partsOfShelf = (bench: ShelfPart['bench'], name: string): readonly PartAt[] => {
  if (bench === undefined) return [];
  const meaning = readPart(name, bench.registry.parts, bench.engine.document.layout);
  return meaning.kind === 'parts' ? meaning.at : [];
};
