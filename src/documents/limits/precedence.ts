import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import type { Place } from '../../diagnostic/place.ts';
import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import { gradeText } from '../grades/grade.ts';
import type { Measure } from '../measure.ts';
import { BAND_NAMES, type Band, type BandName, type Bands } from './bands.ts';
import { newestFirst } from './editions.ts';
import { type GradeRule, gradedBand, isStandard, type MadeSize, STANDARD_SIZE } from './gradedBands.ts';
import type { LimitEntry, PlacedEntry } from './limitEntry.ts';
import type { LimitsDocument } from './limits.ts';
import { entriesIn, isAtCoordinates } from './placedEntries.ts';

/** The limits documents of one folder, each with those it extends. */
export interface LimitsLevel {
  readonly documents: readonly {
    readonly limits: LimitsDocument;
    readonly chain: readonly LimitsDocument[];
  }[];
}

/** Where limits hold, by one name: a position's number and its label are one. */
export type PlaceNameOf = (measure: string, placed: PlacedEntry) => string;

/** The order in which a band is looked for: the nearest folder first, a document before what it extends. */
export function orderLimits(
  levels: readonly LimitsLevel[],
  problems: Diagnostic[],
  placeNameOf: PlaceNameOf,
): readonly LimitsDocument[] {
  for (const level of levels) reportConflicts(level, problems, placeNameOf);
  const ordered = levels.flatMap((level) => {
    const inAChain = new Set(level.documents.flatMap((each) => each.chain));
    const heads = level.documents
      .filter((each) => !inAChain.has(each.limits))
      .sort((a, b) => newestFirst(a.limits, b.limits));
    return heads.flatMap((each) => [each.limits, ...each.chain]);
  });
  return [...new Set(ordered)];
}

/** Two documents of a folder that set one band of one thing: neither can be said to win. */
function reportConflicts(level: LimitsLevel, problems: Diagnostic[], placeNameOf: PlaceNameOf): void {
  const seen = new Map<string, LimitsDocument>();
  for (const { limits } of level.documents) {
    for (const { key, what, place } of bandsOf(limits, placeNameOf)) {
      const other = seen.get(key);
      if (other !== undefined && other.from === limits.from && !related(level, limits, other)) {
        const message = `${other.path} sets ${what} as well, in the same folder`;
        problems.push(
          diagnostic('limits-conflict', place, message, 'keep one of the two, or let one extend the other'),
        );
      } else seen.set(key, limits);
    }
  }
}

const related = (level: LimitsLevel, a: LimitsDocument, b: LimitsDocument): boolean =>
  level.documents.some(
    ({ limits, chain }) => (limits === a && chain.includes(b)) || (limits === b && chain.includes(a)),
  );

interface StatedBand {
  readonly key: string;
  readonly what: string;
  readonly place: Place;
}

function bandsOf(limits: LimitsDocument, placeNameOf: PlaceNameOf): readonly StatedBand[] {
  return [...limits.limits].flatMap(([id, { general, at }]) => [
    ...bandsOfEntry(id, general),
    ...at.flatMap((placed) => bandsOfEntry(`${id} at ${placeNameOf(id, placed)}`, placed.entry)),
  ]);
}

const bandsOfEntry = (what: string, entry: LimitEntry): readonly StatedBand[] => [
  ...statedBands(what, entry.bands),
  ...entry.sizes.flatMap(({ grade, bands }) => statedBands(`${what}, ${gradeText(grade)}`, bands)),
];

const statedBands = (what: string, bands: Bands): readonly StatedBand[] =>
  BAND_NAMES.flatMap((name) => {
    const band = bands[name];
    const place = band?.min?.place ?? band?.max?.place;
    return place === undefined
      ? []
      : [{ key: `${what} ${name}`, what: `the ${name} band of ${what}`, place }];
  });

/** The limits that hold for one characteristic at one position. */
export interface LimitsInForce {
  readonly bands: Bands;
  /** For each band whether it is stated for the size that is fitted, or moved to it. */
  readonly rules: Readonly<Partial<Record<BandName, GradeRule>>>;
  readonly per: LimitEntry['per'];
  readonly by: LimitEntry['by'];
  /** Where each band comes from: what is said beside it, else of all limits of its document. */
  readonly sources: Readonly<Partial<Record<BandName, string>>>;
  readonly note: string | undefined;
  /** No entry for the position has a part in them. */
  readonly isGeneral: boolean;
}

/**
 * Per band the first that is given, in general or at a position; within a document what
 * says more of where comes before what says less.
 * Positions without an entry of their own have the same object, so that what is worked out from it can be kept.
 */
export function limitsInForce(
  documents: readonly LimitsDocument[],
  layout: Layout,
  measure: Measure,
  position: Position | undefined,
  size: MadeSize = STANDARD_SIZE,
): LimitsInForce {
  const stated = documents.filter(({ limits }) => limits.has(measure.id));
  if (stated.length === 0) return NO_LIMITS;
  const entries = stated.flatMap((document) => entriesAt(document, layout, measure, position));
  return entries.length > stated.length
    ? resolved(entries, false, size)
    : generalOf(documents, measure.id, entries, size);
}

const NO_LIMITS: LimitsInForce = {
  bands: {},
  rules: {},
  per: undefined,
  by: undefined,
  note: undefined,
  sources: {},
  isGeneral: true,
};

interface StatedEntry {
  readonly entry: LimitEntry;
  readonly source: string | undefined;
}

function entriesAt(
  document: LimitsDocument,
  layout: Layout,
  measure: Measure,
  position: Position | undefined,
): readonly StatedEntry[] {
  const stated = document.limits.get(measure.id);
  if (stated === undefined) return [];
  const general = { entry: stated.general, source: stated.general.source ?? document.source };
  if (position === undefined || stated.at.length === 0) return [general];
  const here = entriesIn(stated, layout, measure.family).filter(({ coordinates }) =>
    isAtCoordinates(position, coordinates),
  );
  return [...here.map(({ entry }) => ({ entry, source: entry.source ?? general.source })), general];
}

/** By the documents of an engine, and by characteristic and size. */
const generals = new WeakMap<readonly LimitsDocument[], Map<string, LimitsInForce>>();

function generalOf(
  documents: readonly LimitsDocument[],
  id: string,
  entries: readonly StatedEntry[],
  size: MadeSize,
): LimitsInForce {
  // Nearly everything is of standard size, and is asked for at every position.
  const key = isStandard(size) ? id : `${id} ${size.by.n}/${size.by.d} ${size.grade?.by.n}`;
  const known = generals.get(documents) ?? new Map<string, LimitsInForce>();
  generals.set(documents, known);
  const found = known.get(key) ?? resolved(entries, true, size);
  known.set(key, found);
  return found;
}

function resolved(entries: readonly StatedEntry[], isGeneral: boolean, size: MadeSize): LimitsInForce {
  const bands: Partial<Record<BandName, Band>> = {};
  const rules: Partial<Record<BandName, GradeRule>> = {};
  const sources: Partial<Record<BandName, string>> = {};
  for (const name of BAND_NAMES) {
    const [first] = entries.flatMap(({ entry, source }) => {
      const found = gradedBand(entry, name, size);
      return found === undefined ? [] : [{ ...found, source: found.source ?? source }];
    });
    if (first === undefined) continue;
    bands[name] = first.band;
    rules[name] = first.rule;
    if (first.source !== undefined) sources[name] = first.source;
  }
  const first = <K extends 'per' | 'by' | 'note'>(key: K): LimitEntry[K] =>
    entries.find(({ entry }) => entry[key] !== undefined)?.entry[key];
  return {
    bands,
    rules,
    sources,
    isGeneral,
    per: first('per'),
    by: first('by'),
    note: first('note'),
  };
}
