import { add, divide, equals, type Fraction, fraction, multiply } from '../quantity/fraction.ts';
import {
  type Action,
  type AmountRange,
  fastenersOf,
  finalTorques,
  isShare,
  type Pass,
  type Sequence,
  type ShareOfFinal,
} from './sequence.ts';
import { type SequenceProblem, sequenceProblems } from './sequenceProblems.ts';

/** An action with nothing left to work out; `percent` stays beside a torque that was a percentage. */
export type ResolvedAction =
  | { readonly kind: 'to'; readonly torque: AmountRange; readonly percent?: Fraction }
  | { readonly kind: 'turn'; readonly angle: AmountRange }
  | { readonly kind: 'loosen'; readonly angle?: AmountRange }
  | { readonly kind: 'stretch'; readonly stretch: AmountRange; readonly torque?: AmountRange }
  | {
      readonly kind: 'check';
      readonly torque: AmountRange;
      readonly percent?: Fraction;
      readonly atMost?: Fraction;
    };

export interface ConfirmStep {
  readonly kind: 'confirm';
  readonly when: 'before' | 'after';
  readonly text: string;
}

/** One thing done to some fasteners, one after the other. */
export interface TightenStep {
  readonly kind: 'tighten';
  /** Counted from 1 as the passes are written. */
  readonly pass: number;
  readonly action: ResolvedAction;
  readonly fasteners: readonly string[];
  readonly note?: string;
}

export type PlanStep = ConfirmStep | TightenStep;
export type Plan =
  | { readonly steps: readonly PlanStep[] }
  | { readonly problems: readonly SequenceProblem[] };

/**
 * The sequence as a flat list of steps. A pass that asks a percentage of different final torques gives one
 * step for each torque, all with the pass's number. With problems there is no plan.
 */
export function planSequence(sequence: Sequence): Plan {
  const problems = sequenceProblems(sequence);
  if (problems.length > 0) return { problems };
  const confirm =
    (when: ConfirmStep['when']) =>
    (text: string): ConfirmStep => ({ kind: 'confirm', when, text });
  const finals = finalTorques(sequence);
  const passes = sequence.passes.flatMap((pass, index) =>
    stepsOf(pass, index + 1, fastenersOf(pass, sequence), finals),
  );
  const steps = [
    ...sequence.before.map(confirm('before')),
    ...passes,
    ...sequence.after.map(confirm('after')),
  ];
  return { steps };
}

/**
 * The steps with what turns the nuts freely added to every torque (FAA AC 43.13-1B, paragraph 7-40);
 * turns, loosening and stretch stay as they are.
 */
export const planWithRunOn = (steps: readonly PlanStep[], runOn: Fraction): readonly PlanStep[] =>
  steps.map((step) =>
    step.kind === 'confirm' ? step : { ...step, action: actionWithRunOn(step.action, runOn) },
  );

function actionWithRunOn(action: ResolvedAction, runOn: Fraction): ResolvedAction {
  const raise = ({ least, greatest }: AmountRange): AmountRange => ({
    least: add(least, runOn),
    greatest: add(greatest, runOn),
  });
  if (action.kind === 'to') return { ...action, torque: raise(action.torque) };
  if (action.kind === 'stretch' && action.torque !== undefined)
    return { ...action, torque: raise(action.torque) };
  if (action.kind !== 'check') return action;
  const raised = { ...action, torque: raise(action.torque) };
  return action.atMost === undefined ? raised : { ...raised, atMost: add(action.atMost, runOn) };
}

function stepsOf(
  pass: Pass,
  number: number,
  fasteners: readonly string[],
  finals: ReadonlyMap<string, AmountRange>,
): readonly TightenStep[] {
  const note = pass.note === undefined ? {} : { note: pass.note };
  return resolve(pass.action, fasteners, finals).map((part) => ({
    kind: 'tighten',
    pass: number,
    ...part,
    ...note,
  }));
}

interface Part {
  readonly action: ResolvedAction;
  readonly fasteners: readonly string[];
}

function resolve(
  action: Action,
  fasteners: readonly string[],
  finals: ReadonlyMap<string, AmountRange>,
): readonly Part[] {
  if (action.kind !== 'to' && action.kind !== 'check') return [{ action, fasteners }];
  const { torque } = action;
  if (!isShare(torque)) return [{ action: { ...action, torque }, fasteners }];
  return byFinal(fasteners, finals).map(({ final, members }) => ({
    action: { ...action, torque: shareOf(final, torque), percent: torque.percent },
    fasteners: members,
  }));
}

const shareOf = ({ least, greatest }: AmountRange, { percent }: ShareOfFinal): AmountRange => {
  const share = divide(percent, fraction(100));
  return { least: multiply(least, share), greatest: multiply(greatest, share) };
};

interface SameFinal {
  readonly final: AmountRange;
  readonly members: string[];
}

function byFinal(
  fasteners: readonly string[],
  finals: ReadonlyMap<string, AmountRange>,
): readonly SameFinal[] {
  const parts: SameFinal[] = [];
  for (const name of fasteners) {
    const final = finals.get(name);
    if (final === undefined) continue;
    const part = parts.find((each) => sameSpan(each.final, final));
    if (part === undefined) parts.push({ final, members: [name] });
    else part.members.push(name);
  }
  return parts;
}

const sameSpan = (a: AmountRange, b: AmountRange): boolean =>
  equals(a.least, b.least) && equals(a.greatest, b.greatest);
