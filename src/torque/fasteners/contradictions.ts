import type { Joint } from '../joint.ts';
import { doubtsAbout } from './doubts.ts';
import { nutFactorNeeded } from './stretchWindow.ts';

/** A pass at odds with the passes before it, or with itself. */
export interface Contradiction {
  /** Counted from 1. */
  readonly pass: number;
  readonly message: string;
}

/** Passes that are hardly meant as they are written, and windows of torque and stretch that cannot both be met. */
export function contradictionsIn(joint: Joint): readonly Contradiction[] {
  const windows = joint.steps.flatMap((step) =>
    step.kind === 'confirm' ? [] : (windowsApart(step.pass, step.action, joint) ?? []),
  );
  return [...doubtsAbout(joint.steps), ...windows].sort((a, b) => a.pass - b.pass);
}

function windowsApart(
  pass: number,
  action: Extract<Joint['steps'][number], { kind: 'tighten' }>['action'],
  { thread, sections }: Joint,
): Contradiction | undefined {
  if (action.kind !== 'stretch' || action.torque === undefined) return undefined;
  if (thread === undefined || sections.length === 0) return undefined;
  const { stretch, torque } = action;
  const needed = nutFactorNeeded({ torque, stretch }, { diameterM: thread.diameterM, sections });
  if (!needed.contradicts) return undefined;
  const factors = `${needed.least.toFixed(2)} to ${needed.greatest.toFixed(2)}`;
  return {
    pass,
    message: `torque and stretch contradict each other: together they need a nut factor of ${factors}, which no lubricant gives`,
  };
}
