import {
  byPerson,
  type GaugeReadings,
  type NoStudy,
  noStudy,
  partMeans,
  type StudySize,
  studySize,
} from './gaugeReadings.ts';
import { type GaugeVariation, summarize } from './gaugeStudy.ts';
import { mean, range } from './sample.ts';

export interface AverageAndRangeStudy extends GaugeVariation {
  readonly kind: 'average and range';
  /** The mean of the ranges of all repeats. */
  readonly meanRange: number;
  /** The range of the people's means. */
  readonly peopleRange: number;
  /** The range of the parts' means. */
  readonly partRange: number;
}

/**
 * A gauge study by average and range (AIAG, Measurement Systems Analysis, 4th ed., chapter III section B, known
 * from documents that quote it): quick to follow by hand, blind to an interaction of people and parts. For two or three
 * repeats, two or three people and two to ten parts, where its factors are tabulated; else says why not.
 */
export function averageAndRange(readings: GaugeReadings): AverageAndRangeStudy | NoStudy {
  const size = studySize(readings);
  if ('kind' in size) return size;
  const factors = factorsFor(size);
  if ('kind' in factors) return factors;
  const meanRange = mean(readings.flat().map(range));
  const peopleRange = range(byPerson(readings, size.people).map(mean));
  const partRange = range(partMeans(readings));
  const repeatability = (meanRange * factors.repeats) ** 2;
  // The people's means carry their share of the repeatability, which is not theirs.
  const carried = repeatability / (size.parts * size.repeats);
  const variation = summarize({
    repeatability,
    reproducibility: (peopleRange * factors.people) ** 2 - carried,
    interaction: 0,
    parts: (partRange * factors.parts) ** 2,
  });
  return { kind: 'average and range', meanRange, peopleRange, partRange, ...variation };
}

/** The factors K1 for the mean range of so many repeats: 1/d2 for many ranges. */
const BY_REPEATS: Readonly<Record<number, number>> = { 2: 0.8862, 3: 0.5908 };

/** The factors K2 and K3 for a single range of so many means: 1/d2*. */
const BY_MEANS: Readonly<Record<number, number>> = {
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: the factor as tabulated, like its neighbours
  2: 0.7071,
  3: 0.5231,
  4: 0.4467,
  5: 0.403,
  6: 0.3742,
  7: 0.3534,
  8: 0.3375,
  9: 0.3249,
  10: 0.3146,
};

interface Factors {
  readonly repeats: number;
  readonly people: number;
  readonly parts: number;
}

function factorsFor(size: StudySize): Factors | NoStudy {
  const repeats = BY_REPEATS[size.repeats];
  const people = size.people <= 3 ? BY_MEANS[size.people] : undefined;
  const parts = BY_MEANS[size.parts];
  if (repeats !== undefined && people !== undefined && parts !== undefined) return { repeats, people, parts };
  return noStudy(
    'average and range has factors for 2 or 3 repeats, 2 or 3 people and 2 to 10 parts, ' +
      `not for ${size.repeats} repeats, ${size.people} people and ${size.parts} parts; ` +
      'analysis of variance takes any size',
  );
}
