/** Which list of sizes and pitches a thread comes from; `special` is a true thread outside those lists. */
export type ThreadSeries = 'coarse' | 'fine' | 'special';

/** A screw thread's basic dimensions, in metres and square metres. */
export interface Thread {
  readonly system: 'metric' | 'unified';
  /** As printed: `M10 x 1.25`, `9/16-12 UNC`. */
  readonly designation: string;
  readonly series: ThreadSeries;
  readonly diameterM: number;
  readonly pitchM: number;
  /** Basic pitch diameter, d2. */
  readonly pitchDiameterM: number;
  /** Root diameter of the external thread, d3. */
  readonly minorDiameterM: number;
  readonly stressAreaM2: number;
}

/** What was read from a designation, or why it could not be. */
export type ParsedThread = { readonly thread: Thread } | { readonly problem: string; readonly help: string };

interface Named {
  readonly system: Thread['system'];
  readonly designation: string;
  readonly series: ThreadSeries;
  readonly diameterM: number;
  readonly pitchM: number;
}

/** Depths of the 60 degree profile as multiples of the pitch (ISO 724 for d2, ISO 898-1 for d3: from memory). */
const PITCH_DIAMETER_DEPTH = 0.649519;
const ROOT_DEPTH = 1.226869;
/** Both formulas from the published tables they reproduce: ISO 898-1, and ASME B1.1. */
const STRESS_DEPTH = { metric: 0.9382, unified: 0.9743 } as const;

export function threadWith(named: Named): Thread {
  const { diameterM, pitchM } = named;
  const stressDiameterM = diameterM - STRESS_DEPTH[named.system] * pitchM;
  return {
    ...named,
    pitchDiameterM: diameterM - PITCH_DIAMETER_DEPTH * pitchM,
    minorDiameterM: diameterM - ROOT_DEPTH * pitchM,
    stressAreaM2: (Math.PI / 4) * stressDiameterM ** 2,
  };
}

/** The diameter of the round bar that has the tensile stress area, in metres. */
export const stressDiameterM = (thread: Thread): number => Math.sqrt((4 * thread.stressAreaM2) / Math.PI);
