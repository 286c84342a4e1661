import { toNumber } from '../../quantity/fraction.ts';
import type { Joint } from '../joint.ts';
import { judgeAgainstProof } from './clampLoad.ts';
import { type Lubrication, UNSTATED } from './lubrication.ts';

export interface BeyondProof {
  /** Counted from 1. */
  readonly pass: number;
  readonly percent: number;
  readonly message: string;
}

/** Whether a lubrication is known well enough to say of a torque that it is too much. */
export const isPlaced = ({ name }: Lubrication): boolean => name !== UNSTATED.name;

/**
 * The pass whose written torque loads a bolt the farthest beyond its proof load, by the estimate itself: its
 * scatter alone never says so. Undefined where thread, strength or lubrication are not known, and where no pass
 * does. A turn past yield is meant.
 */
export function proofCheck(joint: Joint, lubrication: Lubrication): BeyondProof | undefined {
  const { thread, strength } = joint;
  if (thread === undefined || strength === undefined || !isPlaced(lubrication)) return undefined;
  const beyond = joint.steps.flatMap((step): readonly BeyondProof[] => {
    if (step.kind === 'confirm' || step.action.kind !== 'to') return [];
    const torqueNm = toNumber(step.action.torque.greatest);
    const { beyondProof, percent } = judgeAgainstProof(torqueNm, thread, strength, lubrication);
    if (!beyondProof) return [];
    const message = `${percent.toFixed(0)} % of the proof load of ${thread.designation}, ${strength.grade}, at K ${lubrication.nutFactor.toFixed(2)} (${lubrication.name})`;
    return [{ pass: step.pass, percent, message }];
  });
  return beyond.sort((a, b) => b.percent - a.percent)[0];
}
