import type { LoggedPass } from '../../documents/tightening/loggedPass.ts';
import { equals, type Fraction } from '../../quantity/fraction.ts';
import { judgeTorqueAndStretch, sideOf } from '../../torque/fasteners/stretchWindow.ts';
import type { ResolvedAction } from '../../torque/plan.ts';
import { exactly } from '../../torque/sequence.ts';
import type { Finding, FindingKind } from '../finding.ts';
import { aboutPass, passName } from './about.ts';
import type { MatchedPass } from './passes.ts';
import { spanText, type TighteningView } from './view.ts';

const STRETCH: FindingKind = {
  code: 'torque/stretch',
  severity: 'error',
  means: 'The stretch of a fastener lies outside the window of its pass.',
  matters:
    'Stretch shows the clamp load without friction: outside its window the bolt or its threads are wrong.',
  usually:
    'Below, with torque left: go on tightening. With the torque spent, or beyond the window: replace the fastener.',
  example:
    'rod bolts, pass 2: 1B stretched by 0.0047 in, below 0.005 to 0.007 in at 45 lbf ft: torque and stretch contradict each other, replace it',
};

export const stretchKinds: readonly FindingKind[] = [STRETCH];

/** Stretches outside the window of their pass. */
export const stretchFindings = (view: TighteningView): readonly Finding[] =>
  view.matched.flatMap((matched) => stretchesOf(matched, view));

interface Reported {
  /** Undefined where the log does not tell the fasteners apart. */
  readonly name: string | undefined;
  readonly amounts: readonly Fraction[];
  readonly at: LoggedPass['span'];
}

function stretchesOf({ planned, logged }: MatchedPass, view: TighteningView): readonly Finding[] {
  const action = planned?.steps.map((step) => step.action).find(({ kind }) => kind === 'stretch');
  if (planned === undefined || action?.kind !== 'stretch') return [];
  return reportedOf(logged).flatMap((reported) => {
    const outside = reported.amounts.find((amount) => sideOf(amount, action.stretch) !== 'inside');
    if (outside === undefined) return [];
    const unit = view.log.document.joint.lengthUnit;
    const side = sideOf(outside, action.stretch);
    const message = `${passName(view, planned.pass)}: ${reported.name ?? 'all'} stretched by ${spanText(exactly(outside), unit)}, ${side} ${spanText(action.stretch, unit)}${replaceHint(reported, outside, action, logged, view)}`;
    return [
      aboutPass(STRETCH, view.session.placeOf(reported.at), message, view, planned.pass, reported.name),
    ];
  });
}

/** What the log says of single fasteners, else of all. */
function reportedOf({ values, action, span }: LoggedPass): readonly Reported[] {
  if (action.kind !== 'stretch') return [];
  const single = [...values].flatMap(([name, reached]): readonly Reported[] =>
    reached.amount === undefined ? [] : [{ name, amounts: [reached.amount], at: reached.span }],
  );
  const { least, greatest } = action.stretch;
  return single.length > 0 ? single : [{ name: undefined, amounts: [least, greatest], at: span }];
}

/** A bolt that met one window far from the other is not to be tightened further: it is replaced. */
function replaceHint(
  { name }: Reported,
  stretched: Fraction,
  { torque, stretch }: Extract<ResolvedAction, { kind: 'stretch' }>,
  logged: LoggedPass,
  view: TighteningView,
): string {
  const read = (name === undefined ? undefined : logged.torques.get(name)?.amount) ?? statedOnce(logged);
  if (torque === undefined || read === undefined) return '';
  const { verdict } = judgeTorqueAndStretch({ torque, stretch }, { torque: read, stretch: stretched });
  if (verdict !== 'replace') return '';
  const at = spanText(exactly(read), view.log.document.joint.torqueUnit);
  return ` at ${at}: torque and stretch contradict each other, replace it`;
}

/** The torque of the pass, where it is one figure. */
function statedOnce({ action }: LoggedPass): Fraction | undefined {
  const torque = action.kind === 'stretch' ? action.torque : undefined;
  return torque !== undefined && equals(torque.least, torque.greatest) ? torque.least : undefined;
}
