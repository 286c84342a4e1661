import type { Fraction } from '../quantity/fraction.ts';
import { type Adapter, wrenchRatio, wrenchSetting } from './adapter.ts';
import { type Caution, cautionsFor } from './cautions.ts';
import { comparisonsFor } from './fasteners/comparisons.ts';
import { contradictionsIn } from './fasteners/contradictions.ts';
import { loadsAfter, type PassLoad } from './fasteners/jointLoads.ts';
import { proofCheck } from './fasteners/proofCheck.ts';
import type { Joint } from './joint.ts';
import { type PlanStep, planWithRunOn, type ResolvedAction, type TightenStep } from './plan.ts';
import type { AmountRange } from './sequence.ts';

/** What is used at the bench; each stands over what the document says. */
export interface Tools {
  readonly wrenchLength?: Fraction | undefined;
  readonly adapter?: Adapter | undefined;
  readonly runOn?: Fraction | undefined;
}

export interface CardPass {
  /** Counted from 1. */
  readonly pass: number;
  /** As the document has it. */
  readonly action: ResolvedAction;
  /** With the run-on torque, where one is added. */
  readonly atFastener: AmountRange | undefined;
  /** What the wrench shows, where an adapter changes it. */
  readonly setting: AmountRange | undefined;
  readonly reversed: boolean;
  /** Undefined for all of them. */
  readonly fasteners: readonly string[] | undefined;
  /** The names of fasteners and groups that the document writes for this pass. */
  readonly named: readonly string[] | undefined;
  readonly note: string | undefined;
  readonly load: PassLoad | undefined;
}

/** Everything a tightening card shows, worked out and not yet laid out. */
export interface TighteningCard {
  readonly joint: Joint;
  readonly tools: Tools;
  readonly passes: readonly CardPass[];
  readonly assumptions: readonly string[];
  /** Figures of textbooks and tables to hold these against. */
  readonly comparisons: readonly string[];
  readonly cautions: readonly Caution[];
  /** What is hardly meant as it is written, and torques beyond proof. */
  readonly doubts: readonly string[];
  readonly beyondProof: boolean;
}

export type Carded = { readonly card: TighteningCard } | { readonly problem: string };

/** The card of a joint with these tools, or why the tools cannot be used. */
export function tighteningCard(joint: Joint, chosen: Tools): Carded {
  const tools: Tools = {
    wrenchLength: chosen.wrenchLength ?? joint.wrenchLength,
    adapter: chosen.adapter ?? joint.adapter,
    runOn: chosen.runOn ?? joint.runOn,
  };
  if (tools.wrenchLength !== undefined && tools.wrenchLength.n <= 0n) {
    return { problem: 'the wrench must have a length' };
  }
  const ratio = ratioOf(tools);
  if (ratio !== undefined && 'problem' in ratio) return ratio;
  const steps = joint.steps.filter(isTightening);
  const raised = tools.runOn === undefined ? steps : planWithRunOn(steps, tools.runOn).filter(isTightening);
  const loads = loadsAfter(steps, joint);
  const passes = steps.map((step, index) =>
    cardPass(step, raised[index] ?? step, loads[index], joint, ratio?.ratio),
  );
  const overProof = proofCheck(joint, joint.lubrication);
  return {
    card: {
      joint,
      tools,
      passes,
      assumptions: [...new Set(loads.flatMap((load) => load?.assumptions ?? []))],
      comparisons: comparisonsFor(joint, passes, tools.runOn),
      cautions: cautionsFor({
        joint: joint.sequence.joint,
        ...(joint.lubricant === undefined ? {} : { lubricant: joint.lubricant }),
        reuse: joint.reuse,
        actions: new Set(steps.map(({ action }) => action.kind)),
        // It is said beside the drawing.
        generatedOrder: false,
        unorderedFasteners: joint.orderFrom === 'listed' && joint.sequence.fasteners.length > 1,
        adapter: tools.adapter !== undefined,
        runOn: tools.runOn !== undefined,
        estimate: loads.some((load) => load !== undefined),
      }),
      doubts: [...contradictionsIn(joint), ...(overProof === undefined ? [] : [overProof])].map(
        ({ pass, message }) => `pass ${pass}: ${message}`,
      ),
      beyondProof: overProof !== undefined,
    },
  };
}

export const isTightening = (step: PlanStep): step is TightenStep => step.kind === 'tighten';

function ratioOf({ adapter, wrenchLength }: Tools): ReturnType<typeof wrenchRatio> | undefined {
  if (adapter === undefined) return undefined;
  if (wrenchLength === undefined) {
    return { problem: 'an adapter changes the setting by the length of the wrench, which is not known' };
  }
  return wrenchRatio(wrenchLength, adapter);
}

function cardPass(
  step: TightenStep,
  raised: TightenStep,
  load: PassLoad | undefined,
  { sequence }: Joint,
  ratio: Fraction | undefined,
): CardPass {
  const atFastener = torqueOf(raised.action);
  const isAll = step.fasteners.length === sequence.order.length;
  return {
    pass: step.pass,
    action: step.action,
    atFastener,
    setting:
      ratio === undefined || atFastener === undefined
        ? undefined
        : {
            least: wrenchSetting(atFastener.least, ratio),
            greatest: wrenchSetting(atFastener.greatest, ratio),
          },
    reversed: sequence.passes[step.pass - 1]?.reversed === true,
    fasteners: isAll ? undefined : step.fasteners,
    named: sequence.passes[step.pass - 1]?.fasteners,
    note: step.note,
    load,
  };
}

/** The torque that a fastener is brought to, or must hold. */
export const torqueOf = (action: ResolvedAction): AmountRange | undefined =>
  action.kind === 'turn' || action.kind === 'loosen' ? undefined : action.torque;
