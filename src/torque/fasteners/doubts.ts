import { compare, type Fraction } from '../../quantity/fraction.ts';
import type { PlanStep, ResolvedAction, TightenStep } from '../plan.ts';

/** A pass that can be carried out as written, but is hardly what was meant. */
export interface Doubt {
  readonly pass: number;
  readonly fastener: string;
  readonly message: string;
}

interface State {
  readonly tightened: boolean;
  /** The last torque since the fastener was loose. */
  readonly torque?: Fraction;
}

const LOOSE: State = { tightened: false };

/** Each fastener followed through the plan; one doubt of a kind for a pass, about the first fastener it meets. */
export function doubtsAbout(steps: readonly PlanStep[]): readonly Doubt[] {
  const states = new Map<string, State>();
  return steps.flatMap((step) => (step.kind === 'confirm' ? [] : doubtsInStep(step, states)));
}

function doubtsInStep(step: TightenStep, states: Map<string, State>): readonly Doubt[] {
  const doubts: Doubt[] = [];
  for (const fastener of step.fasteners) {
    const before = states.get(fastener) ?? LOOSE;
    const message = doubtOf(step.action, before);
    if (message !== undefined) doubts.push({ pass: step.pass, fastener, message: `${fastener} ${message}` });
    states.set(fastener, stateAfter(step.action, before));
  }
  return doubts.slice(0, 1);
}

const TOO_EARLY: Readonly<Partial<Record<ResolvedAction['kind'], string>>> = {
  turn: 'is turned by an angle before any torque has closed the joint',
  loosen: 'is loosened before it was tightened',
  check: 'is checked before it was tightened',
};

function doubtOf(action: ResolvedAction, before: State): string | undefined {
  if (!before.tightened) return TOO_EARLY[action.kind];
  const falls =
    action.kind === 'to' && before.torque !== undefined && compare(action.torque.greatest, before.torque) < 0;
  return falls ? 'goes to less torque than before without being loosened' : undefined;
}

/** Loosening, by however much, lets the next torque be any. */
function stateAfter(action: ResolvedAction, before: State): State {
  if (action.kind === 'loosen') return LOOSE;
  if (action.kind === 'to') return { tightened: true, torque: action.torque.least };
  if (action.kind !== 'stretch') return before;
  return action.torque === undefined
    ? { ...before, tightened: true }
    : { tightened: true, torque: action.torque.least };
}
