import {
  allReadings,
  byPerson,
  type GaugeReadings,
  type NoStudy,
  partMeans,
  type StudySize,
  studySize,
} from './gaugeReadings.ts';
import { type GaugeVariation, summarize } from './gaugeStudy.ts';
import { mean, squaresAboutMean, sum, sumOfSquares } from './sample.ts';
import { compareVariances, type VarianceRow, type VarianceTest, varianceRow } from './variance.ts';

export interface GaugeAnovaTable {
  /** Parts and people are tested against the interaction, or against the pooled row where it was pooled. */
  readonly parts: VarianceRow & VarianceTest;
  readonly people: VarianceRow & VarianceTest;
  /** Tested against repeatability. */
  readonly interaction: VarianceRow & VarianceTest;
  readonly repeatability: VarianceRow;
  /** Interaction and repeatability together; null where the interaction was kept. */
  readonly pooled: VarianceRow | null;
  readonly total: Omit<VarianceRow, 'meanSquare'>;
}

export interface GaugeAnovaStudy extends GaugeVariation {
  readonly kind: 'analysis of variance';
  readonly table: GaugeAnovaTable;
}

/**
 * A gauge study by two-way analysis of variance with people and parts as random effects (AIAG, Measurement Systems
 * Analysis, 4th ed., table III-B 7, known from documents that quote it). An interaction whose p is not below `significance`
 * is pooled with the repeatability; a significance above 1 keeps it always.
 */
export function gaugeAnova(readings: GaugeReadings, significance = 0.05): GaugeAnovaStudy | NoStudy {
  const size = studySize(readings);
  if ('kind' in size) return size;
  const table = anovaTable(readings, size, significance);
  const error = table.pooled ?? table.repeatability;
  const mixed = table.pooled ?? table.interaction;
  const variation = summarize({
    repeatability: error.meanSquare,
    reproducibility: (table.people.meanSquare - mixed.meanSquare) / (size.parts * size.repeats),
    interaction: (mixed.meanSquare - error.meanSquare) / size.repeats,
    parts: (table.parts.meanSquare - mixed.meanSquare) / (size.people * size.repeats),
  });
  return { kind: 'analysis of variance', table, ...variation };
}

function anovaTable(readings: GaugeReadings, size: StudySize, significance: number): GaugeAnovaTable {
  const rows = meanSquares(readings, size);
  const interactionTest = compareVariances(rows.interaction, rows.repeatability);
  // No interaction and no scatter at all leave p null: nothing speaks for keeping the interaction.
  const kept = interactionTest.p !== null && interactionTest.p < significance;
  const pooled = kept ? null : pool(rows.interaction, rows.repeatability);
  const against = pooled ?? rows.interaction;
  return {
    parts: { ...rows.parts, ...compareVariances(rows.parts, against) },
    people: { ...rows.people, ...compareVariances(rows.people, against) },
    interaction: { ...rows.interaction, ...interactionTest },
    repeatability: rows.repeatability,
    pooled,
    total: {
      sumOfSquares: squaresAboutMean(allReadings(readings)),
      dof: size.parts * size.people * size.repeats - 1,
    },
  };
}

const pool = (a: VarianceRow, b: VarianceRow): VarianceRow =>
  varianceRow(a.sumOfSquares + b.sumOfSquares, a.dof + b.dof);

function meanSquares(readings: GaugeReadings, { parts, people, repeats }: StudySize) {
  const ofParts = partMeans(readings);
  const ofPeople = byPerson(readings, people).map(mean);
  const grand = mean(allReadings(readings));
  // Each cell less its part and its person: taken directly, as a difference of sums it would lose its digits.
  const mixed = readings.flatMap((part, i) =>
    part.map((cell, j) => mean(cell) - (ofParts[i] ?? Number.NaN) - (ofPeople[j] ?? Number.NaN) + grand),
  );
  return {
    parts: varianceRow(people * repeats * squaresAboutMean(ofParts), parts - 1),
    people: varianceRow(parts * repeats * squaresAboutMean(ofPeople), people - 1),
    interaction: varianceRow(repeats * sumOfSquares(mixed), (parts - 1) * (people - 1)),
    repeatability: varianceRow(sum(readings.flat().map(squaresAboutMean)), parts * people * (repeats - 1)),
  };
}
