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
  means: 'A fastener was stretched less or more than its pass specifies.',
  matters:
    'Stretch shows the clamp load, whatever the friction is. With a wrong stretch the clamp load is wrong, or the bolt or its threads are bad.',
  usually:
    'Too little stretch below the largest torque: tighten further. Too little at the largest torque, or too much stretch: replace the fastener.',
  example:
    'rod bolts, pass 2: 1B stretched by 0.0047 in at 45 lbf ft, specified 0.005 to 0.007 in: too little for this torque, replace it',
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
    const read = torqueOf(reported, logged);
    const at = read === undefined ? '' : ` at ${spanText(exactly(read), view.log.document.joint.torqueUnit)}`;
    const message = `${passName(view, planned.pass)}: ${reported.name ?? 'all'} stretched by ${spanText(exactly(outside), unit)}${at}, specified ${spanText(action.stretch, unit)}: ${adviceOn(outside, read, action)}`;
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

/** The torque at which a stretch was read, of its fastener or of all. */
const torqueOf = ({ name }: Reported, logged: LoggedPass): Fraction | undefined =>
  (name === undefined ? undefined : logged.torques.get(name)?.amount) ?? statedOnce(logged);

/** A bolt that met one window far from the other is not to be tightened further: it is replaced. */
function adviceOn(
  stretched: Fraction,
  read: Fraction | undefined,
  { torque, stretch }: Extract<ResolvedAction, { kind: 'stretch' }>,
): string {
  const how = sideOf(stretched, stretch) === 'below' ? 'too little' : 'too much';
  if (torque === undefined || read === undefined) return how;
  const { verdict } = judgeTorqueAndStretch({ torque, stretch }, { torque: read, stretch: stretched });
  if (verdict === 'replace') return `${how} for this torque, replace it`;
  return verdict === 'not yet' ? `${how}, tighten further` : how;
}

/** The torque of the pass, where it is one figure. */
function statedOnce({ action }: LoggedPass): Fraction | undefined {
  const torque = action.kind === 'stretch' ? action.torque : undefined;
  return torque !== undefined && equals(torque.least, torque.greatest) ? torque.least : undefined;
}
