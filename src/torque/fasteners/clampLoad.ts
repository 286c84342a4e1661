import type { Strength } from './grades.ts';
import type { Lubrication } from './lubrication.ts';
import type { Thread } from './threadForm.ts';

/** An estimate of the load that a fastener clamps with, in newtons, and what it takes for granted. */
export interface ClampLoad {
  readonly loadN: number;
  readonly leastN: number;
  readonly greatestN: number;
  readonly assumptions: readonly string[];
}

/** T = K d F, turned round: the clamp load of a torque. */
export function clampLoadOfTorque(torqueNm: number, diameterM: number, lubrication: Lubrication): ClampLoad {
  const loadN = torqueNm / (lubrication.nutFactor * diameterM);
  return {
    loadN,
    leastN: loadN * (1 - lubrication.scatter),
    greatestN: loadN * (1 + lubrication.scatter),
    assumptions: nutFactorAssumptions(lubrication),
  };
}

/** T = K d F, in newton metres. */
export const torqueOfClampLoadNm = (loadN: number, diameterM: number, lubrication: Lubrication): number =>
  lubrication.nutFactor * diameterM * loadN;

/** The load that the fastener must carry without a lasting stretch. */
export const proofLoadN = (thread: Thread, strength: Strength): number =>
  thread.stressAreaM2 * strength.proofPa;

export const percentOfProof = (loadN: number, thread: Thread, strength: Strength): number =>
  (100 * loadN) / proofLoadN(thread, strength);

export interface AtProof {
  readonly clampLoad: ClampLoad;
  /** Of the estimate, and of the most that its scatter allows. */
  readonly percent: number;
  readonly greatestPercent: number;
  /** The estimate itself lies beyond proof; scatter alone never says so. */
  readonly beyondProof: boolean;
}

/** How far a torque loads a fastener, as a share of its proof load. */
export function judgeAgainstProof(
  torqueNm: number,
  thread: Thread,
  strength: Strength,
  lubrication: Lubrication,
): AtProof {
  const clampLoad = clampLoadOfTorque(torqueNm, thread.diameterM, lubrication);
  const percent = percentOfProof(clampLoad.loadN, thread, strength);
  const greatestPercent = percentOfProof(clampLoad.greatestN, thread, strength);
  return { clampLoad, percent, greatestPercent, beyondProof: percent > 100 * (1 + SAME_RATIO) };
}

/** Ratios equal within this share are equal: a torque worked out for 100 % of proof is not beyond it. */
const SAME_RATIO = 1e-12;

export interface TorqueForLoad {
  readonly torqueNm: number;
  readonly loadN: number;
  readonly assumptions: readonly string[];
}

/** The torque that loads a fastener to a share of its proof load. */
export function torqueForPercentOfProof(
  percent: number,
  thread: Thread,
  strength: Strength,
  lubrication: Lubrication,
): TorqueForLoad {
  const loadN = (percent / 100) * proofLoadN(thread, strength);
  const torqueNm = torqueOfClampLoadNm(loadN, thread.diameterM, lubrication);
  const proof = `${strength.grade}, proof strength ${(strength.proofPa / 1e6).toFixed(0)} MPa`;
  return { torqueNm, loadN, assumptions: [proof, ...nutFactorAssumptions(lubrication)] };
}

/** VDI 2230: the least preload when the greatest and the tightening factor alpha_A are known. */
export const leastPreloadN = (greatestN: number, tighteningFactor: number): number =>
  greatestN / tighteningFactor;

const nutFactorAssumptions = (lubrication: Lubrication): readonly string[] => [
  `T = K d F with K = ${lubrication.nutFactor.toFixed(2)} (${lubrication.name})`,
  `one bolt may lie ${(100 * lubrication.scatter).toFixed(0)} % off either way`,
];
