import { compare, type Fraction, fraction, greatest, least } from '../../quantity/fraction.ts';
import { type Unit, unitNamed } from '../../quantity/units.ts';
import { torqueOf } from '../../torque/card.ts';
import type { ResolvedAction } from '../../torque/plan.ts';
import type { AmountRange } from '../../torque/sequence.ts';
import { outsideOf } from './passes.ts';
import { spanText, type TighteningView, wrenchErrorOf } from './view.ts';

/** What a pass asks of a torque or an angle, and what may be beside it. */
export interface PassTarget {
  readonly span: AmountRange;
  readonly unit: Unit;
  /** The ends of what was reached that are not what is asked, whatever the allowance. */
  readonly outside: (reached: AmountRange) => readonly Fraction[];
  /** What was allowed for at those ends, in words: of a share, each end has its own. */
  readonly allowance: (ends: readonly Fraction[]) => string;
}

/** Undefined where a pass asks neither of them. */
export const passTarget = (action: ResolvedAction, view: TighteningView): PassTarget | undefined =>
  action.kind === 'turn' ? askedAngle(action.angle) : askedTorque(action, view);

const DEGREE = unitNamed('deg');
/** An angle is judged by eye or with a disc: five degrees either way (common practice, no source). */
const ANGLE_ALLOWANCE = fraction(5);

function askedAngle(span: AmountRange): PassTarget {
  const room = compare(span.least, span.greatest) === 0 ? ANGLE_ALLOWANCE : fraction(0);
  return {
    span,
    unit: DEGREE,
    outside: (reached) => outsideOf(reached, span, () => room),
    allowance: () => (room.n === 0n ? '' : ' within 5 deg'),
  };
}

function askedTorque(action: ResolvedAction, view: TighteningView): PassTarget | undefined {
  const torque = torqueOf(action);
  if (torque === undefined) return undefined;
  const unit = view.log.document.joint.torqueUnit;
  const error = wrenchErrorOf(view.wrench);
  const most = action.kind === 'check' ? action.atMost : undefined;
  const span = { least: torque.least, greatest: most ?? torque.greatest };
  const openAbove = action.kind === 'check' && most === undefined;
  return {
    span,
    unit,
    outside: (reached) =>
      outsideOf(
        reached,
        openAbove ? { ...span, greatest: greatest([span.greatest, reached.greatest]) } : span,
        error,
      ),
    allowance: (ends) => {
      const errors = ends.map(error);
      const all = { least: least(errors), greatest: greatest(errors) };
      return `; ${view.wrench?.id ?? 'a wrench'}: tolerance ±${spanText(all, unit)}`;
    },
  };
}
