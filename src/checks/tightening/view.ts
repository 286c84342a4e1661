import type { Engine } from '../../documents/assemble.ts';
import { instrumentOn } from '../../documents/engine/instrumentOn.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { LoggedPass } from '../../documents/tightening/loggedPass.ts';
import type { TighteningLog } from '../../documents/tightening/tightened.ts';
import { assumptionFor } from '../../measurement/assumed.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import { formatNumber } from '../../quantity/format.ts';
import { absolute, add, compare, type Fraction, multiply } from '../../quantity/fraction.ts';
import { type Unit, unitNamed } from '../../quantity/units.ts';
import { isTightening } from '../../torque/card.ts';
import type { TightenStep } from '../../torque/plan.ts';
import { type AmountRange, isShare } from '../../torque/sequence.ts';
import { type MatchedPass, matchPasses, type PlannedPass } from './passes.ts';

/** One log of a session with what it is compared with. */
export interface TighteningView {
  readonly engine: Engine;
  readonly session: SessionDocument;
  readonly log: TighteningLog;
  readonly planned: readonly PlannedPass[];
  readonly matched: readonly MatchedPass[];
  /** The registered wrench; undefined where none is named, or none of that name is known. */
  readonly wrench: Instrument | undefined;
}

export function tighteningView(engine: Engine, session: SessionDocument, log: TighteningLog): TighteningView {
  const wrench = log.with && instrumentOn(engine.instruments.get(log.with.name), log.date ?? session.date);
  const planned = plannedPasses(log);
  const matched = log.passes === undefined ? [] : matchPasses(planned, log.passes, wrenchErrorOf(wrench));
  return { engine, session, log, planned, matched, wrench };
}

/** The passes of the sequence, counted from 1, percentages worked out. */
function plannedPasses({ document }: TighteningLog): readonly PlannedPass[] {
  const steps = document.joint.steps.filter(isTightening);
  const numbers = [...new Set(steps.map(({ pass }) => pass))];
  const { runOn } = document.joint;
  return numbers.map((pass) => ({
    pass,
    steps: steps.filter((step) => step.pass === pass).map((step) => withRoomForRunOn(step, runOn)),
  }));
}

/** What turns a locknut may or may not be in the figure that was written down. */
function withRoomForRunOn(step: TightenStep, runOn: Fraction | undefined): TightenStep {
  const { action } = step;
  if (runOn === undefined || !('torque' in action) || action.torque === undefined) return step;
  const torque = { least: action.torque.least, greatest: add(action.torque.greatest, runOn) };
  return { ...step, action: { ...action, torque } };
}

/** The most that a wrench may be wrong by at a torque: its own error, else that of its kind (ISO 6789). */
export function wrenchErrorOf(wrench: Instrument | undefined): (torque: Fraction) => Fraction {
  const stated = wrench?.type === 'torque wrench' ? wrench.maxError : undefined;
  return (torque) => {
    const error = stated ?? assumptionFor('torque wrench', 'torque', torque).maxError;
    return 'share' in error ? multiply(error.share, absolute(torque)) : error.amount;
  };
}

/** The torque that a pass says it went to, where it is written as one. */
export function statedTorque({ action }: LoggedPass): AmountRange | undefined {
  if (action.kind === 'stretch') return action.torque;
  return (action.kind === 'to' || action.kind === 'check') && !isShare(action.torque)
    ? action.torque
    : undefined;
}

const MOST_DECIMALS = 4;
const DEGREE = unitNamed('deg');

/** `40 lbf ft`, or `58 to 69 lbf ft`: every digit that matters. */
export function spanText({ least, greatest }: AmountRange, unit: Unit): string {
  const text = (amount: Fraction): string => {
    const digits = formatNumber(amount, unit, MOST_DECIMALS);
    return digits.replace(/\.?0+$/, '');
  };
  const numbers = compare(least, greatest) === 0 ? text(least) : `${text(least)} to ${text(greatest)}`;
  return `${numbers} ${unit.name}`;
}

export const angleText = (span: AmountRange): string => spanText(span, DEGREE);
