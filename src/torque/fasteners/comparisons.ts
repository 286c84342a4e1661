import { expansionOf } from '../../measurement/expansion.ts';
import { type Fraction, toDecimal, toNumber } from '../../quantity/fraction.ts';
import { fromBase, unitNamed } from '../../quantity/units.ts';
import type { Joint } from '../joint.ts';
import type { ResolvedAction } from '../plan.ts';
import type { AmountRange } from '../sequence.ts';
import { aircraftTorqueOf, judgeAircraftTorque, type NutType } from './aircraftTorques.ts';
import { torqueForPercentOfProof } from './clampLoad.ts';
import { asScrew, nutFactorOfFriction, preloadAtYieldN } from './friction.ts';
import { warmingForStretchK } from './stretch.ts';

export interface ComparedPass {
  readonly action: ResolvedAction;
  /** With the run-on torque, where one is added. */
  readonly atFastener: AmountRange | undefined;
}

/** Figures of others to hold a joint's own against, in words; none where the document does not say enough. */
export const comparisonsFor = (
  joint: Joint,
  passes: readonly ComparedPass[],
  runOn: Fraction | undefined,
): readonly string[] => [
  ...sharesOfProof(joint, passes),
  ...statedFriction(joint),
  ...warming(joint, passes),
  ...aircraftTable(joint, passes, runOn),
];

const isCadmium = ({ lubrication }: Joint): boolean => lubrication.name === 'cadmium plated';

const lastTorque = (passes: readonly ComparedPass[]): AmountRange | undefined =>
  passes.findLast(({ action }) => action.kind === 'to')?.atFastener;

/** What textbooks aim at (Shigley, Mechanical Engineering Design, from memory). Turns and stretches are not made by torque: beside them it would mislead. */
function sharesOfProof(joint: Joint, passes: readonly ComparedPass[]): readonly string[] {
  const { thread, strength, lubrication, torqueUnit } = joint;
  if (thread === undefined || strength === undefined) return [];
  if (passes.some(({ action }) => action.kind !== 'to' && action.kind !== 'check')) return [];
  const torque = (percent: number): string => {
    const { torqueNm } = torqueForPercentOfProof(percent, thread, strength, lubrication);
    return `${threeDigits(torqueNm / toNumber(torqueUnit.factor))} ${torqueUnit.name}`;
  };
  return [
    `75 % of proof, the usual aim for fasteners that are used again, would take about ${torque(75)}, 90 % ${torque(90)}`,
  ];
}

function statedFriction({ thread, friction, strength }: Joint): readonly string[] {
  if (thread === undefined || friction === undefined) return [];
  const nutFactor = nutFactorOfFriction(thread.diameterM, asScrew(thread), friction);
  const kilonewtons = strength && preloadAtYieldN(thread, strength.yieldPa, friction.thread) / 1000;
  return [
    `the stated friction comes to a nut factor of ${nutFactor.toFixed(3)}`,
    ...(kilonewtons === undefined
      ? []
      : [
          `with the twist of tightening, 90 % of yield is reached at ${threeDigits(kilonewtons)} kN (VDI 2230)`,
        ]),
  ];
}

const METRES_IN_A_LENGTH_STEP = 1e-10;

/** Long studs are also put in warm. */
function warming(joint: Joint, passes: readonly ComparedPass[]): readonly string[] {
  const steel = expansionOf('steel');
  const stretch = passes.flatMap(({ action }) => (action.kind === 'stretch' ? [action.stretch] : [])).at(-1);
  const lengthM = joint.sections.reduce((sum, section) => sum + section.lengthM, 0);
  if (steel === undefined || stretch === undefined || lengthM === 0) return [];
  if (!/\bstuds?\b/i.test(`${joint.sequence.joint} ${joint.note ?? ''}`)) return [];
  const middleM = ((toNumber(stretch.least) + toNumber(stretch.greatest)) / 2) * METRES_IN_A_LENGTH_STEP;
  const kelvin = warmingForStretchK(middleM, lengthM, toNumber(steel.coefficient));
  const both = `${kelvin.toFixed(0)} degC (${(kelvin * 1.8).toFixed(0)} degF)`;
  return [
    `a stud put in warm has that stretch when it is ${both} warmer than the joint, and nothing has given`,
  ];
}

const LBF_IN = unitNamed('lbf in');

/** The table is for oil-free cadmium plated steel only. */
function aircraftTable(
  joint: Joint,
  passes: readonly ComparedPass[],
  runOn: Fraction | undefined,
): readonly string[] {
  const reached = lastTorque(passes);
  if (!isCadmium(joint) || joint.thread === undefined || reached === undefined) return [];
  const { thread } = joint;
  const words = (['tension', 'shear'] as const).flatMap((nut: NutType) => {
    const row = aircraftTorqueOf(thread, nut);
    if (row === undefined) return [];
    const figures = [row.recommended.least, row.recommended.greatest, row.maximum].map((each) =>
      toDecimal(fromBase(each, LBF_IN), 0),
    );
    const verdict = judgeAircraftTorque(reached.greatest, row, runOn);
    return [`${verdict} for a ${nut} nut (${figures[0]} to ${figures[1]}, at most ${figures[2]} lbf in)`];
  });
  return words.length === 0 ? [] : [`by FAA AC 43.13-1B, table 7-1, the last torque is ${words.join(', ')}`];
}

const threeDigits = (value: number): string => value.toFixed(value >= 99.95 ? 0 : value >= 9.995 ? 1 : 2);
