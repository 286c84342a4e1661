import type { UsualParts } from '../../measurement/risk.ts';
import type { StatedTemperature } from '../../measurement/temperature.ts';
import type { Fraction } from '../../quantity/fraction.ts';
import type { Entry } from '../yaml/node.ts';
import type { Bands } from './bands.ts';
import type { GradeRow } from './gradeRows.ts';

/** What a document says of one characteristic, in general or at one position. */
export interface LimitEntry {
  readonly bands: Bands;
  /** As the maker prints them for under and oversize parts. */
  readonly sizes: readonly GradeRow[];
  /** A taper's limit may be for a length of the part instead of for all of it. */
  readonly per: Fraction | undefined;
  /** A taper from end to end, or as the range of all stations. */
  readonly by: 'ends' | 'range' | undefined;
  /** The temperature at which its figures hold. */
  readonly temperature: StatedTemperature | undefined;
  /** How such parts measure as a rule. */
  readonly usual: UsualParts | undefined;
  readonly source: string | undefined;
  readonly note: string | undefined;
}

export interface MeasureLimits {
  readonly general: LimitEntry;
  readonly at: readonly PlacedEntry[];
  /** The characteristic, where it stands. */
  readonly key: Entry;
}

/** Limits under `at:`, below the keys that say where; the engine decides which of its positions those name. */
export interface PlacedEntry {
  readonly path: readonly Entry[];
  readonly entry: LimitEntry;
}
