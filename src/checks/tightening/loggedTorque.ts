import type { LoggedTorque } from '../../documents/tightening/loggedPass.ts';
import { type Fraction, greatest } from '../../quantity/fraction.ts';
import { wrenchRatio, wrenchSetting } from '../../torque/adapter.ts';
import type { TightenStep } from '../../torque/plan.ts';
import { type AmountRange, exactly } from '../../torque/sequence.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { aboutPass, passName } from './about.ts';
import { liesWithin, type MatchedPass } from './passes.ts';
import { passTarget } from './passTarget.ts';
import { spanText, statedTorque, type TighteningView, wrenchErrorOf } from './view.ts';

const OUT: FindingKind = {
  code: 'torque/out',
  severity: 'error',
  means:
    'A fastener was brought to a torque or an angle that is not the one of its pass, by more than the error of the wrench.',
  matters: 'Clamp load follows torque: too little lets a joint move, too much stretches a bolt for good.',
  usually:
    'Loosen the joint and tighten it again from the first pass. Renew fasteners that went too far or must not be used twice.',
  example: 'main caps, pass 3: 2L at 40 lbf ft, specified 45 lbf ft; beam-60: tolerance ±1.6 lbf ft',
};
export const reachedKinds: readonly FindingKind[] = [OUT];

/** What one fastener was brought to, or all of them where the log does not tell them apart. */
interface Reported {
  readonly name: string | undefined;
  readonly span: AmountRange;
  readonly at: LoggedTorque['span'];
}

/** Torques and angles that are not those of their pass. */
export const reachedFindings = (view: TighteningView): readonly Finding[] =>
  view.matched.flatMap((matched) => outOf(matched, view));

/** A percentage of different final torques asks each fastener for its own: each step is reported by itself. */
function outOf(matched: MatchedPass, view: TighteningView): readonly Finding[] {
  const { planned } = matched;
  if (planned === undefined) return beyondFinal(matched, view);
  const stepOf = ({ name }: Reported): TightenStep | undefined =>
    planned.steps.find(({ fasteners }) => name === undefined || fasteners.includes(name));
  const reported = reportedOf(matched);
  return planned.steps.flatMap((step) =>
    outOfStep(
      step,
      reported.filter((each) => stepOf(each) === step),
      matched,
      view,
    ),
  );
}

function outOfStep(
  { action, pass }: TightenStep,
  reported: readonly Reported[],
  { logged }: MatchedPass,
  view: TighteningView,
): readonly Finding[] {
  const asked = passTarget(action, view);
  const wrong = reported.filter(({ span }) => asked !== undefined && asked.outside(span).length > 0);
  const [first] = wrong;
  if (first === undefined || asked === undefined) return [];
  const values = wrong
    .map(({ name, span }) => `${name ?? 'all'} at ${spanText(span, asked.unit)}`)
    .join(', ');
  const allowance = asked.allowance(wrong.flatMap(({ span }) => asked.outside(span)));
  const message = `${passName(view, pass)}: ${values}, specified ${spanText(asked.span, asked.unit)}${allowance}${adapterHint(first.span, asked.span, view)}`;
  const place = view.session.placeOf(first.at ?? logged.span);
  return [aboutPass(OUT, place, message, view, pass, wrong.length === 1 ? first.name : undefined)];
}

/** What the log says of single fasteners, else of all; torques beside stretches count as torques. */
function reportedOf({ logged }: MatchedPass): readonly Reported[] {
  const isStretch = logged.action.kind === 'stretch';
  const values = isStretch ? logged.torques : logged.values;
  const single = [...values].flatMap(([name, { amount, span }]): readonly Reported[] =>
    amount === undefined ? [] : [{ name, span: exactly(amount), at: span }],
  );
  if (single.length > 0) return single;
  const all =
    logged.action.kind === 'turn'
      ? logged.action.angle
      : isStretch && logged.values.size > 0
        ? undefined
        : statedTorque(logged);
  return all === undefined ? [] : [{ name: undefined, span: all, at: logged.span }];
}

/** A pass that the sequence does not have does harm only above its greatest torque. */
function beyondFinal({ logged }: MatchedPass, view: TighteningView): readonly Finding[] {
  const torque = statedTorque(logged);
  const asked = view.planned.flatMap(({ steps }) =>
    steps.flatMap(({ action }) =>
      (action.kind === 'to' || action.kind === 'stretch') && action.torque !== undefined
        ? [action.torque.greatest]
        : [],
    ),
  );
  if (torque === undefined || asked.length === 0) return [];
  const final = exactly(greatest(asked));
  const unit = view.log.document.joint.torqueUnit;
  if (liesWithin(torque, { ...final, least: torque.least }, wrenchErrorOf(view.wrench))) return [];
  const message = `${view.log.document.joint.sequence.joint}: a pass to ${spanText(torque, unit)} goes beyond ${spanText(final, unit)}, the most of the sequence`;
  return [finding(OUT, view.session.placeOf(logged.span), message, { limitPlace: view.log.document.start })];
}

/** Somebody who writes down what the wrench showed learns what the log wants. */
function adapterHint(reached: AmountRange, asked: AmountRange, { log }: TighteningView): string {
  const { adapter, wrenchLength } = log.document.joint;
  if (adapter === undefined || wrenchLength === undefined) return '';
  const found = wrenchRatio(wrenchLength, adapter);
  if ('problem' in found) return '';
  const setting: AmountRange = {
    least: wrenchSetting(asked.least, found.ratio),
    greatest: wrenchSetting(asked.greatest, found.ratio),
  };
  const half = (of: Fraction): Fraction => ({ n: of.n, d: of.d * 100n });
  return liesWithin(reached, setting, half)
    ? ' (that is the setting with the adapter: the log is of the torque at the fastener)'
    : '';
}
