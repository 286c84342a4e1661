import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import type { Place } from '../../diagnostic/place.ts';
import { type Grade, gradeText, sameGrade } from '../grades/grade.ts';
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
  const seen = new Map<string, { readonly limits: LimitsDocument; readonly band: StatedBand }[]>();
  for (const { limits } of level.documents) {
    for (const band of bandsOf(limits, placeNameOf)) {
      const alike = seen.get(band.key) ?? [];
      seen.set(band.key, alike);
      const other = alike.find((each) => isSameSize(each.band.grade, band.grade))?.limits;
      if (other === undefined) alike.push({ limits, band });
      else if (other !== limits && other.from === limits.from && !related(level, limits, other)) {
        const message = `${other.path} sets ${band.what} as well, in the same folder`;
        const help = 'keep one of the two, or let one extend the other';
        problems.push(diagnostic('limits-conflict', band.place, message, help));
      }
    }
  }
}

/** However it is written: `0.010 under` and `10 thou under` are one. */
const isSameSize = (a: Grade | undefined, b: Grade | undefined): boolean =>
  a === undefined || b === undefined ? a === b : sameGrade(a, b);

const related = (level: LimitsLevel, a: LimitsDocument, b: LimitsDocument): boolean =>
  level.documents.some(
    ({ limits, chain }) => (limits === a && chain.includes(b)) || (limits === b && chain.includes(a)),
  );

interface StatedBand {
  /** Which band of what, of whatever size. */
  readonly key: string;
  /** Of limits that hold whatever the size, undefined. */
  readonly grade: Grade | undefined;
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
  ...statedBands(what, undefined, entry.bands),
  ...entry.sizes.flatMap(({ grade, bands }) => statedBands(what, grade, bands)),
];

const statedBands = (of: string, grade: Grade | undefined, bands: Bands): readonly StatedBand[] =>
  BAND_NAMES.flatMap((name) => {
    const band = bands[name];
    const place = band?.min?.place ?? band?.max?.place;
    if (place === undefined) return [];
    const sized = grade === undefined ? of : `${of}, ${gradeText(grade)}`;
    return [{ key: `${of} ${name}`, grade, what: `the ${name} band of ${sized}`, place }];
  });
