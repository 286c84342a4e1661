import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import type { Place } from '../../diagnostic/place.ts';
import { gradeText } from '../grades/grade.ts';
import { BAND_NAMES, type Bands } from './bands.ts';
import { newestFirst } from './editions.ts';
import type { LimitEntry, PlacedEntry } from './limitEntry.ts';
import type { LimitsDocument } from './limits.ts';

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
