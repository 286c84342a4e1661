import type { Thread } from './threadForm.ts';

/** What a fastener's material stands, in pascals, and where the figures come from. */
export interface Strength {
  /** As printed: `SAE J429 grade 8`, `ISO 898-1 class 10.9`, or what a maker calls its own. */
  readonly grade: string;
  readonly proofPa: number;
  readonly yieldPa: number;
  readonly source: string;
}

export type FoundStrength =
  | { readonly strength: Strength }
  | { readonly problem: string; readonly help: string };

interface SizeRange {
  /** Nominal diameters above `overM` up to and including `upToM`. */
  readonly overM: number;
  readonly upToM: number;
  readonly proofPa: number;
  readonly yieldPa: number;
}

interface Grade {
  readonly mark: string;
  readonly name: string;
  readonly system: Thread['system'];
  readonly source: string;
  readonly ranges: readonly SizeRange[];
}

const PA_IN_A_KSI = 6_894_757.293168;
const M_IN_AN_INCH = 0.0254;

/** Inches and thousands of psi, in the order the standard prints them. */
const inchRange = (over: number, upTo: number, proof: number, yieldAt: number): SizeRange => ({
  overM: over * M_IN_AN_INCH,
  upToM: upTo * M_IN_AN_INCH,
  proofPa: proof * PA_IN_A_KSI,
  yieldPa: yieldAt * PA_IN_A_KSI,
});

/** Millimetres and megapascals. */
const metricRange = (over: number, upTo: number, proof: number, yieldAt: number): SizeRange => ({
  overM: over / 1000,
  upToM: upTo / 1000,
  proofPa: proof * 1e6,
  yieldPa: yieldAt * 1e6,
});

const sae = (mark: string, remembered: string, ranges: readonly SizeRange[]): Grade => ({
  mark,
  name: `SAE J429 grade ${mark}`,
  system: 'unified',
  source: `SAE J429 (fastener makers' tables; ${remembered} from memory)`,
  ranges,
});

const iso = (mark: string, ranges: readonly SizeRange[]): Grade => ({
  mark,
  name: `ISO 898-1 class ${mark}`,
  system: 'metric',
  source: "ISO 898-1 (fastener makers' tables)",
  ranges,
});

/** The standard begins above no. 12 (.216 in) with 1/4. */
const BELOW_A_QUARTER = 0.216;

export const GRADES: readonly Grade[] = [
  sae('2', 'yield', [inchRange(BELOW_A_QUARTER, 0.75, 55, 57), inchRange(0.75, 1.5, 33, 36)]),
  sae('5', 'yield', [inchRange(BELOW_A_QUARTER, 1, 85, 92), inchRange(1, 1.5, 74, 81)]),
  sae('8', 'proof and yield', [inchRange(BELOW_A_QUARTER, 1.5, 120, 130)]),
  iso('8.8', [metricRange(0, 16, 580, 640), metricRange(16, 39, 600, 660)]),
  iso('10.9', [metricRange(0, 39, 830, 940)]),
  iso('12.9', [metricRange(0, 39, 970, 1100)]),
];

/**
 * The strength of a grade or property class at a thread's size: `8`, `grade 5`, `SAE 8`, `10.9`, `class 8.8`.
 * SAE grades are stated for unified threads and ISO classes for metric ones; the other way round is refused,
 * since `8` on a metric bolt is far more often a shortened 8.8.
 */
export function strengthOf(written: string, thread: Thread): FoundStrength {
  const mark = /^(?:SAE |J429 |ISO )*(?:grade |gr\.? ?|class )?(\d+(?:\.\d)?)$/i.exec(written.trim())?.[1];
  const grade = GRADES.find((each) => each.mark === mark);
  if (grade === undefined || grade.system !== thread.system) return unknownGrade(written, thread);
  const range = grade.ranges.find(({ overM, upToM }) => within(thread.diameterM, overM, upToM));
  if (range === undefined) {
    return { problem: `${grade.name} states nothing for ${thread.designation}`, help: STATE_IT };
  }
  const { proofPa, yieldPa } = range;
  return { strength: { grade: grade.name, proofPa, yieldPa, source: grade.source } };
}

const STATE_IT = 'state the proof strength that the fastener maker gives';

function unknownGrade(written: string, thread: Thread): FoundStrength {
  const marks = GRADES.filter((each) => each.system === thread.system).map((each) => each.mark);
  return {
    problem: `${written} is not a known grade for ${thread.designation}`,
    help: `known for ${thread.system} threads: ${marks.join(', ')}; or ${STATE_IT}`,
  };
}

/** A hundredth of a micrometre lets 3/4 in, worked out from inches, be the 3/4 in of the table. */
const SAME_SIZE_M = 1e-8;

const within = (diameterM: number, overM: number, upToM: number): boolean =>
  diameterM > overM + SAME_SIZE_M && diameterM <= upToM + SAME_SIZE_M;
