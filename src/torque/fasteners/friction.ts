import { stressDiameterM, type Thread } from './threadForm.ts';

/** Coefficients of friction in the thread and under the head, and the mean diameter the head rubs on. */
export interface Friction {
  readonly thread: number;
  readonly head: number;
  readonly headDiameterM: number;
}

/** Where friction in the thread is taken to act; the pitch diameter unless a source says otherwise. */
interface Screw {
  readonly pitchM: number;
  readonly frictionDiameterM: number;
}

/** The mean of the face and the hole under it. */
export const headFrictionDiameterM = (faceDiameterM: number, holeDiameterM: number): number =>
  (faceDiameterM + holeDiameterM) / 2;

/** The flank stands 30 degrees off square, which presses it harder by 1 / cos 30. */
const FLANK = 1 / Math.cos(Math.PI / 6);

/**
 * Torque in newton metres to reach a load with a 60 degree screw (Shigley, from memory):
 * F (d/2) (tan lead + mu sec 30) / (1 - mu sec 30 tan lead) in the thread, F mu D/2 under the head.
 */
export const frictionTorqueNm = (loadN: number, thread: Thread, friction: Friction): number =>
  loadN * torquePerLoadM(asScrew(thread), friction);

/** The load in newtons that a torque reaches against the stated friction. */
export const frictionLoadN = (torqueNm: number, thread: Thread, friction: Friction): number =>
  torqueNm / torquePerLoadM(asScrew(thread), friction);

/** What the stated friction comes to as K of T = K d F. */
export const nutFactorOfFriction = (diameterM: number, screw: Screw, friction: Friction): number =>
  torquePerLoadM(screw, friction) / diameterM;

export const asScrew = (thread: Thread): Screw => ({
  pitchM: thread.pitchM,
  frictionDiameterM: thread.pitchDiameterM,
});

function torquePerLoadM(screw: Screw, friction: Friction): number {
  const lead = screw.pitchM / (Math.PI * screw.frictionDiameterM);
  const flank = friction.thread * FLANK;
  const inThread = (screw.frictionDiameterM / 2) * ((lead + flank) / (1 - flank * lead));
  return inThread + (friction.head * friction.headDiameterM) / 2;
}

export interface FrictionClampLoad {
  readonly loadN: number;
  readonly assumptions: readonly string[];
}

/** The clamp load of a torque by the friction method, with what it takes for granted. */
export function clampLoadOfFriction(torqueNm: number, thread: Thread, friction: Friction): FrictionClampLoad {
  const headMm = (friction.headDiameterM * 1000).toFixed(1);
  return {
    loadN: frictionLoadN(torqueNm, thread, friction),
    assumptions: [
      `friction ${friction.thread} in the thread, acting at its pitch diameter`,
      `friction ${friction.head} under the head, acting at ${headMm} mm diameter`,
      'friction is the same in every bolt: its scatter is not in this figure',
    ],
  };
}

/**
 * VDI 2230 assembly preload in newtons: tension and the torque left in the shank together reach a share
 * (90 %) of yield by von Mises. 1.155 is the friction angle's 1 / cos 30 as the guideline prints it.
 */
export function preloadAtYieldN(
  thread: Thread,
  yieldPa: number,
  threadFriction: number,
  share = 0.9,
): number {
  const d0 = stressDiameterM(thread);
  const d2 = thread.pitchDiameterM;
  const twist = 1.5 * (d2 / d0) * (thread.pitchM / (Math.PI * d2) + 1.155 * threadFriction);
  return (share * yieldPa * thread.stressAreaM2) / Math.sqrt(1 + 3 * twist ** 2);
}
