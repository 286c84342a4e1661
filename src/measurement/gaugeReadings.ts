import { mean, range } from './sample.ts';

/** The readings of a gauge study: by part, then by person, then by repeat, all in one unit. */
export type GaugeReadings = readonly (readonly (readonly number[])[])[];

export interface StudySize {
  readonly parts: number;
  readonly people: number;
  readonly repeats: number;
}

/** A study that cannot be worked, with the reason in plain words. */
export interface NoStudy {
  readonly kind: 'no study';
  readonly reason: string;
}

/** The size of a study in which every person measured every part equally often, at least twice; or why it is none. */
export function studySize(readings: GaugeReadings): StudySize | NoStudy {
  const [firstPart = []] = readings;
  const [firstCell = []] = firstPart;
  const [parts, people, repeats] = [readings.length, firstPart.length, firstCell.length];
  const even = readings.every(
    (part) => part.length === people && part.every((cell) => cell.length === repeats),
  );
  if (!even) return noStudy('every person must measure every part the same number of times');
  if (parts < 2) return noStudy('a study needs two or more parts');
  if (people < 2) return noStudy('a study needs two or more people: one alone shows no reproducibility');
  if (repeats < 2) return noStudy('a study needs two or more repeats: one reading shows no repeatability');
  if (range(allReadings(readings)) === 0) {
    return noStudy('all readings are the same: the gauge is too coarse to tell these parts apart');
  }
  return { parts, people, repeats };
}

export const noStudy = (reason: string): NoStudy => ({ kind: 'no study', reason });

export const allReadings = (readings: GaugeReadings): readonly number[] => readings.flat().flat();

/** The readings of each person over all parts. */
export const byPerson = (readings: GaugeReadings, people: number): readonly (readonly number[])[] =>
  Array.from({ length: people }, (_, person) => readings.flatMap((part) => part[person] ?? []));

export const partMeans = (readings: GaugeReadings): readonly number[] =>
  readings.map((part) => mean(part.flat()));
