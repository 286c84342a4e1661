import type { Layout } from '../../layout/layout.ts';
import type { Position } from '../../layout/position.ts';
import type { StatedTemperature } from '../../measurement/temperature.ts';
import type { Grade } from '../grades/grade.ts';
import type { Measure } from '../measure.ts';
import { BAND_NAMES, type Band, type BandName, type Bands } from './bands.ts';
import { type GradeRule, gradedBand, isStandard, type MadeSize, STANDARD_SIZE } from './gradedBands.ts';
import type { LimitEntry } from './limitEntry.ts';
import type { LimitsDocument } from './limits.ts';
import type { BandTemperatures } from './limitTemperature.ts';
import { entriesIn, isAtCoordinates } from './placedEntries.ts';

/** The limits that hold for one characteristic at one position. */
export interface LimitsInForce {
  readonly bands: Bands;
  /** For each band whether it is stated for the size that is fitted, or moved to it. */
  readonly rules: Readonly<Partial<Record<BandName, GradeRule>>>;
  readonly per: LimitEntry['per'];
  readonly by: LimitEntry['by'];
  readonly usual: LimitEntry['usual'];
  /** Where each band comes from: what is said beside it, else of all limits of its document. */
  readonly sources: Readonly<Partial<Record<BandName, string>>>;
  readonly temperatures: BandTemperatures;
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
  usual: undefined,
  note: undefined,
  sources: {},
  temperatures: {},
  isGeneral: true,
};

interface StatedEntry {
  readonly entry: LimitEntry;
  readonly source: string | undefined;
  readonly temperature: StatedTemperature | undefined;
}

function entriesAt(
  document: LimitsDocument,
  layout: Layout,
  measure: Measure,
  position: Position | undefined,
): readonly StatedEntry[] {
  const stated = document.limits.get(measure.id);
  if (stated === undefined) return [];
  const general = within(stated.general, document);
  if (position === undefined || stated.at.length === 0) return [general];
  const here = entriesIn(stated, layout, measure.family).filter(({ coordinates }) =>
    isAtCoordinates(position, coordinates),
  );
  return [...here.map(({ entry }) => within(entry, general)), general];
}

/** What an entry does not say of where its figures come from and hold, what it stands in says. */
const within = (entry: LimitEntry, around: Omit<StatedEntry, 'entry'>): StatedEntry => ({
  entry,
  source: entry.source ?? around.source,
  temperature: entry.temperature ?? around.temperature,
});

/** The sizes for which a document has limits of their own at a position. */
export const gradesPrinted = (
  document: LimitsDocument,
  layout: Layout,
  measure: Measure,
  position: Position,
): readonly Grade[] =>
  entriesAt(document, layout, measure, position).flatMap(({ entry }) =>
    entry.sizes.map(({ grade }) => grade),
  );

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
  const temperatures: Partial<Record<BandName, StatedTemperature>> = {};
  for (const name of BAND_NAMES) {
    const [first] = entries.flatMap(({ entry, source, temperature }) => {
      const found = gradedBand(entry, name, size);
      return found === undefined ? [] : [{ ...found, source: found.source ?? source, temperature }];
    });
    if (first === undefined) continue;
    bands[name] = first.band;
    rules[name] = first.rule;
    if (first.source !== undefined) sources[name] = first.source;
    if (first.temperature !== undefined) temperatures[name] = first.temperature;
  }
  const first = <K extends 'per' | 'by' | 'usual' | 'note'>(key: K): LimitEntry[K] =>
    entries.find(({ entry }) => entry[key] !== undefined)?.entry[key];
  return {
    bands,
    rules,
    sources,
    temperatures,
    isGeneral,
    per: first('per'),
    by: first('by'),
    usual: first('usual'),
    note: first('note'),
  };
}
