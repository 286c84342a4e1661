import type { Strength } from './grades.ts';
import type { Thread } from './threadForm.ts';

/** A length of the bolt that shares the load with the others: the shank, then the thread up to the nut. */
export interface Section {
  readonly lengthM: number;
  readonly areaM2: number;
}

/** 30 000 000 psi, which the sources below use for steel. */
export const STEEL_MODULUS_PA = 206.84271879504e9;

/** Metres of stretch for one newton: the sections lie one after the other. */
const complianceMPerN = (sections: readonly Section[], modulusPa: number): number =>
  sections.reduce((total, { lengthM, areaM2 }) => total + lengthM / (areaM2 * modulusPa), 0);

/** F L / (A E), in metres, below yield. */
export const stretchOfLoadM = (
  loadN: number,
  sections: readonly Section[],
  modulusPa = STEEL_MODULUS_PA,
): number => loadN * complianceMPerN(sections, modulusPa);

/** The load in newtons that a measured stretch stands for, below yield. */
export const loadOfStretchN = (
  stretchM: number,
  sections: readonly Section[],
  modulusPa = STEEL_MODULUS_PA,
): number => stretchM / complianceMPerN(sections, modulusPa);

/** The turn in degrees that takes up a stretch when the joint itself does not give. */
export const turnOfStretchDeg = (stretchM: number, pitchM: number): number => (360 * stretchM) / pitchM;

export const stretchOfTurnM = (turnDeg: number, pitchM: number): number => (pitchM * turnDeg) / 360;

/** How much warmer a stud must be, in kelvin, to be longer by the stretch when its nut is run down. */
export const warmingForStretchK = (stretchM: number, lengthM: number, expansionPerK: number): number =>
  stretchM / (lengthM * expansionPerK);

export interface Turn {
  /** The turn after the snug torque. */
  readonly turnDeg: number;
  /** The load the snug torque has already brought. */
  readonly snugLoadN: number;
  readonly sections: readonly Section[];
  readonly modulusPa?: number;
  /** Newtons per metre of the clamped parts; without it they are taken as not giving. */
  readonly jointStiffnessNPerM?: number;
}

export interface TurnedLoad {
  readonly loadN: number;
  /** Of the bolt, by the turn and the snug load together. */
  readonly stretchM: number;
  /** The turn goes on past yield: the load then stays near the yield load, which is what is given. */
  readonly beyondYield: boolean;
  readonly assumptions: readonly string[];
}

/** The clamp load of a turn: the pitch shares itself between the bolt's stretch and the joint's give. */
export function clampLoadOfTurn(turn: Turn, thread: Thread, strength: Strength): TurnedLoad {
  const modulusPa = turn.modulusPa ?? STEEL_MODULUS_PA;
  const bolt = complianceMPerN(turn.sections, modulusPa);
  const joint = turn.jointStiffnessNPerM === undefined ? 0 : 1 / turn.jointStiffnessNPerM;
  const travelM = stretchOfTurnM(turn.turnDeg, thread.pitchM);
  const elasticN = turn.snugLoadN + travelM / (bolt + joint);
  const yieldN = strength.yieldPa * thread.stressAreaM2;
  const beyondYield = elasticN > yieldN;
  // Past yield the load hardly rises, so the joint gives no further and the rest of the travel stretches the bolt.
  const jointGivesM = (Math.min(elasticN, yieldN) - turn.snugLoadN) * joint;
  const stretchM = turn.snugLoadN * bolt + travelM - jointGivesM;
  const assumptions = turnAssumptions(modulusPa, joint, strength, beyondYield);
  return { loadN: Math.min(elasticN, yieldN), stretchM, beyondYield, assumptions };
}

function turnAssumptions(
  modulusPa: number,
  joint: number,
  strength: Strength,
  beyondYield: boolean,
): readonly string[] {
  return [
    `modulus ${(modulusPa / 1e9).toFixed(0)} GPa`,
    joint === 0
      ? 'the clamped parts do not give: the true load is lower'
      : 'stiffness of the clamped parts as stated',
    'the snug torque has closed the joint',
    ...(beyondYield ? [`past yield of ${strength.grade}: the load is taken as the yield load`] : []),
  ];
}
